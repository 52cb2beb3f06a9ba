// What the reader took the words for, findings as pencil lines, blanks with their numbers, the marker. Only the lines in sight are dressed.
import { RangeSetBuilder, StateField, type EditorState, type Range } from "@codemirror/state";
import { Decoration, EditorView, ViewPlugin, type DecorationSet, type ViewUpdate } from "@codemirror/view";
import { marked, setMarked, setTruth, truth } from "./truth";

const CLASSES: Record<string, string> = {
  section: "w-section", name: "w-name", fit: "w-fit", special: "w-special", label: "w-label", count: "w-count", stitch: "w-stitch",
};
const OF = Object.fromEntries(Object.entries(CLASSES).map(([k, c]) => [k, Decoration.mark({ class: c })]));
const FINDING = { stops: Decoration.mark({ class: "f-stops" }), look: Decoration.mark({ class: "f-look" }), thought: Decoration.mark({ class: "f-thought" }) };
const LINE = { section: Decoration.line({ class: "l-section" }), row: Decoration.line({ class: "l-row" }), title: Decoration.line({ class: "l-title" }) };
const AHEAD = 2000; // characters above and below what is in sight

/** The first index whose place ends after `at`, in a list sorted by its beginnings. */
function firstAfter<T>(list: readonly T[], at: number, end: (x: T) => number): number {
  let low = 0, high = list.length;
  while (low < high) { const mid = (low + high) >> 1; if (end(list[mid] as T) < at) low = mid + 1; else high = mid; }
  return low;
}

function dress(view: EditorView): DecorationSet {
  const { seen, size, since } = view.state.field(truth);
  if (!seen) return Decoration.none;
  const length = view.state.doc.length, ranges: Range<Decoration>[] = [];
  const now = (at: number, side: -1 | 1) => (since ? (at > since.length ? -1 : since.mapPos(at, side)) : at);
  const was = since ? since.invertedDesc : null;
  const [first, last] = [view.visibleRanges[0]?.from ?? 0, view.visibleRanges.at(-1)?.to ?? 0];
  const from = Math.max(0, (was ? was.mapPos(Math.min(first, was.length)) : first) - AHEAD);
  const to = (was ? was.mapPos(Math.min(last, was.length)) : last) + AHEAD;
  const add = (a: number, b: number, deco: Decoration) => { const x = now(a, 1), y = now(b, -1); if (x >= 0 && x < y && y <= length) ranges.push(deco.range(x, y)); };
  const line = (a: number, deco: Decoration) => { const x = now(a, -1); if (x >= 0 && x <= length) ranges.push(deco.range(view.state.doc.lineAt(x).from)); };
  for (let i = firstAfter(seen.marks, from, (m) => m[0]); i < seen.marks.length; i++) {
    const [a, b, what] = seen.marks[i] as (typeof seen.marks)[number];
    if (a > to) break;
    const deco = OF[what];
    if (deco) add(a, b, deco);
    if (what === "section") line(a, LINE.section);
  }
  for (const f of seen.findings) if (f.to >= from && f.from <= to) add(f.from, Math.max(f.to, f.from + 1), FINDING[f.word]);
  for (const b of seen.blanks) {
    if (b.to < from || b.from > to) continue;
    const value = b.values?.[size];
    add(b.from, b.to, Decoration.mark({ class: "w-blank", attributes: value == null ? {} : { "data-value": String(value) } }));
  }
  for (let i = firstAfter(seen.rows, from, (r) => r.from); i < seen.rows.length; i++) {
    const r = seen.rows[i];
    if (!r || r.from > to) break;
    line(r.from, LINE.row);
  }
  if (seen.title && view.state.doc.line(1).text.trim() === seen.title.trim()) ranges.push(LINE.title.range(0));
  return Decoration.set(ranges, true);
}

const words = ViewPlugin.fromClass(class {
  decorations: DecorationSet;
  constructor(view: EditorView) { this.decorations = dress(view); }
  update(u: ViewUpdate): void {
    if (u.docChanged || u.viewportChanged || u.transactions.some((t) => t.effects.some((e) => e.is(setTruth)))) this.decorations = dress(u.view);
  }
}, { decorations: (v) => v.decorations });

const FIRM = Decoration.mark({ class: "w-marker", attributes: { "data-marker": "" } });
const HERE = Decoration.line({ class: "l-here" });

function ring(state: EditorState): DecorationSet {
  const { marked: at, line } = state.field(marked), builder = new RangeSetBuilder<Decoration>(), length = state.doc.length;
  const ranges: Range<Decoration>[] = [];
  if (line && line <= state.doc.lines) ranges.push(HERE.range(state.doc.line(line).from));
  if (at && at.from < at.to && at.to <= length) ranges.push(FIRM.range(at.from, at.to));
  for (const r of ranges.sort((a, b) => a.from - b.from)) builder.add(r.from, r.to, r.value);
  return builder.finish();
}

const marker = StateField.define<DecorationSet>({
  create: ring,
  update: (value, tr) => (tr.effects.some((e) => e.is(setMarked)) ? ring(tr.state) : tr.docChanged ? value.map(tr.changes) : value),
  provide: (f) => EditorView.decorations.from(f),
});

export const marks = [words, marker];
