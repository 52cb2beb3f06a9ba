// The design that lies on the desk: its text and truth (Live), and what is held in every place of the studio: size, row, marker.
import { Live } from "./live.svelte";
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

  constructor(readonly id: string) {
    this.live = new Live(id);
    this.live.open().then((t) => { this.text = t; this.opened = true; }, (e: Error) => { this.problem = e.message; });
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

  /** Walks along the row, down into what a stitch was worked into, up to what is worked on it. */
  walk(way: "before" | "after" | "into" | "on" | "first" | "last"): void {
    const l = this.links;
    if (!l || !l.origin.length) return;
    if (this.stitch === null) { this.markAt(this.at); if (this.stitch === null) this.mark(0); return; }
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
      (d) => { if (this.linked === key) { this.links = d.rows ? d : null; if (this.stitch !== null && this.stitch >= d.origin.length) this.stitch = null; this.takeUp(); } },
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
