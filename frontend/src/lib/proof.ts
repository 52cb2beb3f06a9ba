// The pattern as proof: its lines with what they make, and the notes that stand in the margin of each.
import { tapeOf, type Told } from "../editor/tape";
import type { Desk } from "./desk.svelte";
import type { Finding, Row, Seen, Word } from "./wire";

export interface Piece { text: string; word?: Word; kind?: "label" }
export interface Line { number: number; kind: "section" | "row" | "head" | "words"; pieces: Piece[]; told: Told | null; notes: Finding[]; first: boolean }
export interface Checked { right: number; counts: number; agree: number; rows: number; of_rows: number; rules: number; quiet: number; stitches: number; sizes: number; left: number; safe: number }
export interface FolderDesign { id: string; title: string; error?: string; sum?: string; findings?: Finding[]; left?: Finding[]; checked?: Checked }
export type Shown = "all" | "left" | `word ${Word}` | `kind ${string}`;

export const SAID: Record<Word, string> = { stops: "Stops here.", look: "Look again.", thought: "A thought." };
export const OPEN: [Shown, string][] = [
  ["all", "all that is open"], ["word stops", "what stops"], ["word look", "what to look at again"], ["word thought", "the thoughts"], ["left", "what is left as it is"],
];

/** Names of kinds, for people: "count disagrees (2)". */
export function kinds(found: Finding[]): [Shown, string][] {
  const many = new Map<string, number>();
  for (const f of found) many.set(f.name, (many.get(f.name) ?? 0) + 1);
  return [...many].sort().map(([name, n]) => [`kind ${name}`, `${name.replaceAll("-", " ")} (${n})`]);
}

export function pick(open: Finding[], left: Finding[], shown: Shown): Finding[] {
  if (shown === "all") return open;
  if (shown === "left") return left;
  const [what = "", ...rest] = shown.split(" "), name = rest.join(" ");
  return open.filter((f) => (what === "word" ? f.word === name : f.name === name));
}

function pieces(text: string, from: number, notes: Finding[], label: number): Piece[] {
  const cuts = new Set([0, text.length, label]), marks = notes.map((f) => ({ a: Math.max(0, f.from - from), b: Math.min(text.length, f.to - from), word: f.word }));
  for (const m of marks) if (m.a < m.b) { cuts.add(m.a); cuts.add(m.b); }
  const at = [...cuts].filter((c) => c >= 0 && c <= text.length).sort((a, b) => a - b), found: Piece[] = [];
  for (let i = 0; i + 1 < at.length; i++) {
    const a = at[i] ?? 0, b = at[i + 1] ?? 0, mark = marks.filter((m) => m.a <= a && b <= m.b).sort((x, y) => (x.b - x.a) - (y.b - y.a))[0];
    found.push({ text: text.slice(a, b), ...(b <= label ? { kind: "label" as const } : {}), ...(mark ? { word: mark.word } : {}) });
  }
  return found;
}

/** The lines of a text, without the empty ones; `notes`: those that are shown. */
export function lines(text: string, seen: Seen, size: number, notes: Finding[]): Line[] {
  const rows = new Map<number, Row>(), sections = new Set(seen.sections.map((s) => s.line)), made: Line[] = [];
  for (const r of seen.rows) rows.set(r.line, r);
  const heads = new Set<number>(), labels = new Map<number, number>();
  const starts = [0];
  for (let i = text.indexOf("\n"); i >= 0; i = text.indexOf("\n", i + 1)) starts.push(i + 1);
  const lineAt = (at: number): number => { let a = 0, b = starts.length - 1; while (a < b) { const m = (a + b + 1) >> 1; if ((starts[m] ?? 0) <= at) a = m; else b = m - 1; } return a + 1; };
  for (const [from, to, kind] of seen.marks) {
    if (kind === "section") sections.add(lineAt(from));
    else if (kind === "name" || kind === "fit") heads.add(lineAt(from));
    else if (kind === "label") labels.set(lineAt(from), to);
  }
  text.split("\n").forEach((words, i) => {
    const number = i + 1, from = starts[i] ?? 0, mine = notes.filter((f) => lineAt(f.from) === number);
    if (!words.trim() && !mine.length) return;
    const row = rows.get(number), kind = sections.has(number) ? "section" : row ? "row" : heads.has(number) ? "head" : "words";
    const label = labels.get(number), cut = label === undefined ? 0 : label - from + (words[label - from] === ":" ? 1 : 0);
    made.push({ number, kind, pieces: pieces(words, from, mine, cut), told: row ? tapeOf(row, size) : null, notes: mine, first: !made.length });
  });
  return made;
}

/** Leaves a finding as it is, with her reason, in the design's own text; what went wrong in words, "" for nothing. */
export const leaveIt = (desk: Desk, f: Finding, why: string): Promise<string> =>
  desk.change(`/api/editing/${encodeURIComponent(desk.id)}/left`, { code: f.code, place: f.place, why }, `${f.place}: left as it is`);

/** Writes a finding's mend, where the text is still the one it was found in; tells whether it was. */
export const mend = (desk: Desk, f: Finding): boolean =>
  !!f.fix && desk.text === desk.live.seenText && desk.write(edited(desk.text, f.fix.edits), `${f.place}: ${f.fix.title}`);

/** The text with some edits in it, the last ones first. */
export function edited(text: string, edits: { from: number; to: number; text: string }[]): string {
  return [...edits].sort((a, b) => b.from - a.from).reduce((t, e) => t.slice(0, e.from) + e.text + t.slice(e.to), text);
}
