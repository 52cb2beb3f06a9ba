// The design that lies on the desk: its text and truth (Live), and what is held in every place of the studio: size, row, marker.
import { Live } from "./live.svelte";
import type { Finding, Row, Stitches } from "./wire";

export interface Range { from: number; to: number }

export class Desk {
  readonly live: Live;
  text = $state("");
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
  private linked = "";

  constructor(readonly id: string) {
    this.live = new Live(id);
    this.live.open().then((t) => { this.text = t; }, (e: Error) => { this.problem = e.message; });
  }

  get seen() { return this.live.seen; }
  get sizes(): string[] { return this.seen?.sizes ?? []; }
  get size(): number {
    const chosen = this.wanted ?? this.seen?.sample ?? 0;
    return Math.min(chosen, Math.max(0, this.sizes.length - 1));
  }
  get sizeName(): string { return this.sizes[this.size] ?? ""; }
  choose(size: number): void { this.wanted = size; this.stitch = null; this.words = null; }

  /** The row at hand: that of the marked stitch, else the one that the caret is in or after. */
  get row(): Row | null {
    const rows = this.seen?.rows ?? [];
    const at = this.marked?.from ?? this.at;
    return rows.findLast((r) => r.from <= at) ?? rows[0] ?? null;
  }
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

  /** Marks the first stitch that these characters made. */
  markAt(offset: number): void {
    const l = this.links;
    if (!l) return;
    let best = -1;
    for (let i = 0; i < l.origin.length; i++) {
      const from = l.origin[i] ?? -1, to = l.end[i] ?? -1;
      if (from >= 0 && from <= offset && offset < to && (best < 0 || to - from < (l.end[best] ?? 0) - (l.origin[best] ?? 0))) best = i;
    }
    this.mark(best < 0 ? null : best);
  }

  /** All stitches that the marked characters made. */
  get alike(): number[] {
    const l = this.links, m = this.marked;
    if (!l || !m) return [];
    return l.origin.flatMap((from, i) => (from === m.from && l.end[i] === m.to ? [i] : []));
  }

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
      (d) => { if (this.linked === key) { this.links = d; if (this.stitch !== null && this.stitch >= d.origin.length) this.stitch = null; } },
      () => { if (this.linked === key) { this.links = null; this.linked = ""; } },
    );
  }

  /** What the marker holds, in words: also what a screen reader reads at each step. */
  get tag(): string {
    const l = this.links, s = this.stitch;
    if (!l || s === null) return "";
    const at = l.row[s] ?? -1, row = l.rows[at], kind = l.kinds[l.kind[s] ?? -1];
    if (!row || !kind) return "";
    const into = l.into[s] ?? -1, below = into >= 0 ? l.rows[l.row[into] ?? -1] : undefined;
    const on = l.into.reduce((n, i) => n + (i === s ? 1 : 0), 0);
    const said = [`${row.label || row.section || "This row"}, stitch ${s - row.start + 1} of ${row.end - row.start}. ${capital(article(kind.long))}`];
    if (below && into >= 0) said.push(`, worked into stitch ${into - below.start + 1} of ${below.label || below.section || "the row below"}`);
    said.push(on === 0 ? "; nothing is worked on it." : on === 1 ? "; one stitch is worked on it." : `; ${on} stitches are worked on it.`);
    return said.join("");
  }

  close(): void { this.live.close(); }
}

function article(words: string): string { return `${/^[aeiou]|^[fhlmnrsx][a-z]?\b/i.test(words) && words.length < 4 || /^[aeiou]/i.test(words) ? "an" : "a"} ${words}`; }
function capital(words: string): string { return words.charAt(0).toUpperCase() + words.slice(1); }

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
