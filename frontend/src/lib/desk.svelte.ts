// The design that lies on the desk: its text and truth (Live), and what is held in every place of the studio: size, row, marker.
import { ask } from "./api";
import { Live } from "./live.svelte";
import { Past, type Back } from "./past";
import { voice } from "./say.svelte";
import { tagOf } from "./tag";
import type { Finding, Known, Row, Stitches } from "./wire";

export interface Range { from: number; to: number }
/** `nth`: which of the rows that one written row stands for, from 0; null for all of them. */
export interface Hand { row: Row; label: string; counts: (number | null)[]; nth: number | null }

export class Desk {
  readonly live: Live;
  text = $state("");
  opened = $state(false);
  problem = $state("");
  /** The size that is looked at; until one is chosen, the one that was worked. */
  private wanted = $state<number | null>(null);
  /** Where the caret is, in UTF-16 units of the text. */
  at = $state(0);
  /** The marked stitch of the chosen size, by its number in the order of making; null for none. */
  stitch = $state<number | null>(null);
  /** Characters that are marked without a stitch. */
  private words = $state.raw<Range | null>(null);
  links = $state.raw<Stitches | null>(null);
  known: Known | null = null;
  /** Whether keys write (the caret is in the sheet) or walk. */
  penDown = $state(false);
  private linked = "";
  private readonly past = new Past();
  private steps = $state(0);
  /** Where a step that was taken back or put back stands: the sheet goes there. */
  touched = $state.raw<Range | null>(null);
  private queue: Promise<void> = Promise.resolve();

  constructor(readonly id: string) {
    this.live = new Live(id);
    this.live.follows = (text) => this.follow(text);
    this.live.open().then((t) => { this.text = t; this.opened = true; }, (e: Error) => { this.problem = e.message; });
  }

  get writes(): boolean { return this.live.writer; }
  /** What the next step back, and the next one forth, would do: in words, "" for what was typed, null for nothing. */
  undoable = $derived.by(() => { void this.steps; return this.past.undoable; });
  redoable = $derived.by(() => { void this.steps; return this.past.redoable; });

  /** The text as it is now. `said`: what was done, for the way back; "" for what was typed. Tells whether it was written. */
  write(text: string, said = ""): boolean {
    if (text === this.text) return true;
    if (said && !this.writes) { voice.say(this.live.readOnly ? "This studio is only for reading." : "This window only reads the design."); return false; }
    this.past.add(this.text, text, said, Date.now());
    this.put(text);
    return true;
  }

  /** A text that came from elsewhere: what was done to the one before does not hold of it. */
  follow(text: string): void {
    if (text === this.text) return;
    this.past.forget();
    this.steps += 1;
    this.text = text;
    this.mark(null);
  }

  private put(text: string): void {
    this.steps += 1;
    this.text = text;
    this.mark(null);
    this.live.write(text);
  }

  undo(): void { this.step(this.writes ? this.past.undo(this.text) : null, "Taken back"); }
  redo(): void { this.step(this.writes ? this.past.redo(this.text) : null, "Put back"); }

  private step(to: Back | null, word: string): void {
    if (!to) { this.steps += 1; voice.say(word === "Taken back" ? "Nothing to take back." : "Nothing to put back."); return; }
    this.put(to.text);
    this.touched = { from: to.from, to: to.to };
    voice.say(to.said ? `${word}: ${to.said}` : `${word}.`);
  }

  /** What stands on disk in place of what stands here, which can be taken back; or what stands here over it. */
  async settle(take: "theirs" | "mine"): Promise<void> {
    const before = this.text, after = await this.live.settle(take);
    this.past.add(before, after, "the text on disk was taken", Date.now());
    this.steps += 1;
    this.text = after;
    this.mark(null);
  }

  /** Asks the studio for a changed text and puts it in place of the one that is there; what went wrong in words, "" for nothing. */
  change(path: string, what: Record<string, unknown>, said: string): Promise<string> {
    const done = this.queue.then(async () => {
      if (!this.writes) return "This window only reads the design.";
      const was = this.text;
      try {
        const { text } = await ask<{ text: string }>(path, { text: was, design: this.id, ...what });
        if (this.text !== was) return "The pattern was changed meanwhile. Once more?";
        this.write(text, said);
        return "";
      } catch (e) { return (e as Error).message; }
    });
    this.queue = done.then(() => undefined);
    return done;
  }

  get seen() { return this.live.seen; }
  get sizes(): string[] { return this.seen?.sizes ?? []; }
  get size(): number {
    const chosen = this.wanted ?? this.seen?.sample ?? 0;
    return Math.min(chosen, Math.max(0, this.sizes.length - 1));
  }
  get sizeName(): string { return this.sizes[this.size] ?? ""; }
  /** Another size: the marker stays in its row and on its words, as far as that size has them. */
  choose(size: number): void {
    if (size === this.size) { this.wanted = size; return; }
    const marked = this.marked, hand = this.hand;
    this.resume = this.stitch !== null && marked && hand ? { ...marked, item: hand.row.item, nth: hand.nth ?? 0 } : null;
    this.wanted = size;
    this.stitch = null;
    this.words = marked;
    this.links = null;
  }
  private resume: (Range & { item: number; nth: number }) | null = null;

  private goOn(): void {
    const way = this.waiting;
    this.waiting = null;
    if (way && this.links) this.walk(way);
  }

  private takeUp(): void {
    const l = this.links, was = this.resume;
    this.resume = null;
    if (!l || !was) return;
    const rows = l.rows.filter((r) => r.item === was.item), row = rows[Math.min(was.nth, rows.length - 1)];
    if (!row) return;
    for (let i = row.start; i < row.end; i++) if (l.origin[i] === was.from && l.end[i] === was.to) { this.mark(i); return; }
    this.mark(row.start);
  }

  /** The written row at hand: the one that asked for the marked stitch, else the one that the caret is in or after. */
  get row(): Row | null {
    const rows = this.seen?.rows ?? [], item = this.made?.item;
    if (item !== undefined) { const asked = rows.find((r) => r.item === item); if (asked) return asked; }
    const at = this.words?.from ?? this.at;
    return rows.findLast((r) => r.from <= at) ?? rows[0] ?? null;
  }

  /** The worked row that the marked stitch stands in. */
  private get made() { return this.stitch === null ? undefined : this.links?.rows[this.links.row[this.stitch] ?? -1]; }

  /** What corner, across arm and tape say: the very row of the marked stitch with its own count, else the written row. */
  hand = $derived.by((): Hand | null => {
    const row = this.row, made = this.made, l = this.links;
    if (!row) return null;
    const of = row.times[this.size] ?? 1;
    if (!made || !l || made.item !== row.item || of < 2) return { row, label: row.labels[this.size] || row.section || "", counts: row.counts, nth: null };
    const nth = l.rows.slice(0, l.rows.indexOf(made)).filter((r) => r.item === row.item).length;
    const counts = row.series?.[nth] ?? row.counts.map((c, i) => ((row.times[i] ?? 0) > nth ? c : null));
    return { row, label: made.label || `${row.section ?? "Row"} ${nth + 1} of ${of}`, counts: counts.map((c, i) => (i === this.size ? made.counted : c)), nth };
  });
  get notes(): Finding[] {
    const row = this.row;
    return row ? (this.seen?.findings ?? []).filter((f) => f.line === row.line || (f.from >= row.from && f.to <= row.to)) : [];
  }

  /** The characters that are marked: those that made the marked stitch. */
  get marked(): Range | null {
    if (this.stitch === null || !this.links) return this.words;
    const from = this.links.origin[this.stitch], to = this.links.end[this.stitch];
    return from === undefined || to === undefined || from < 0 ? null : { from, to };
  }

  mark(stitch: number | null): void { this.stitch = stitch; this.words = null; }

  /** Marks the first stitch that these characters made; tells whether there is one. */
  markAt(offset: number): boolean {
    const l = this.links;
    if (!l) return false;
    let best = -1;
    for (let i = 0; i < l.origin.length; i++) {
      const from = l.origin[i] ?? -1, to = l.end[i] ?? -1;
      if (from >= 0 && from <= offset && offset < to && (best < 0 || to - from < (l.end[best] ?? 0) - (l.origin[best] ?? 0))) best = i;
    }
    this.mark(best < 0 ? null : best);
    return best >= 0;
  }

  /** All stitches that the marked characters made. */
  alike = $derived.by((): number[] => {
    const l = this.links, m = this.marked;
    if (!l || !m) return [];
    return l.origin.flatMap((from, i) => (from === m.from && l.end[i] === m.to ? [i] : []));
  });

  /** A step that was asked for before the stitches were there. */
  private waiting: "before" | "after" | "into" | "on" | "first" | "last" | null = null;

  /** Walks along the row, down into what a stitch was worked into, up to what is worked on it. */
  walk(way: "before" | "after" | "into" | "on" | "first" | "last"): void {
    const l = this.links;
    if (!l) { this.waiting = way; return; }
    if (!l.origin.length) return;
    if (this.stitch === null) {
      const item = this.row?.item;
      if (!this.markAt(this.at)) this.mark(l.rows.find((r) => r.item === item)?.start ?? 0);
      return;
    }
    const row = l.rows[l.row[this.stitch] ?? -1];
    let next: number | undefined;
    if (way === "before") next = this.stitch - 1;
    else if (way === "after") next = this.stitch + 1;
    else if (way === "into") next = l.into[this.stitch];
    else if (way === "on") next = l.into.indexOf(this.stitch);
    else if (row) next = way === "first" ? row.start : row.end - 1;
    if (next !== undefined && next >= 0 && next < l.origin.length) this.mark(next);
  }

  /** The stitches of the chosen size; asked for once for each text. */
  link(): void {
    const key = `${this.seen?.revision}:${this.size}`;
    if (!this.seen || key === this.linked) return;
    this.linked = key;
    this.live.view<Stitches>("stitches", this.size).then(
      (d) => { if (this.linked === key) { this.links = d.rows ? d : null; if (this.stitch !== null && this.stitch >= d.origin.length) this.stitch = null; this.takeUp(); this.goOn(); } },
      () => { if (this.linked === key) { this.links = null; this.linked = ""; } },
    );
  }

  /** What the marker holds, in words: also what a screen reader reads at each step. */
  tagged = $derived.by(() => tagOf(this.links, this.stitch));
  get tag(): string { return this.tagged ? `${this.tagged.at} ${this.tagged.is}` : ""; }

  /** What can be written here, for completing and explaining: what is known at once, while it is asked for anew. */
  private asked = "";
  private asking: Promise<Known | null> = Promise.resolve(null);
  async know(): Promise<Known | null> {
    const key = String(this.seen?.revision ?? "");
    if (key && key !== this.asked) {
      this.asked = key;
      this.asking = this.live.view<Known>("known", null).then((k) => (this.known = k), () => { this.asked = ""; return this.known; });
    }
    return this.known ?? this.asking;
  }

  close(): void { this.live.close(); }
}

class OnTheDesk {
  current = $state.raw<Desk | null>(null);

  /** Opens a design, unless it lies there already. */
  lay(id: string | null): void {
    if (this.current?.id === id) return;
    this.current?.close();
    this.current = id === null ? null : new Desk(id);
  }
}

export const onTheDesk = new OnTheDesk();
