// The sheet: CodeMirror for her words. What is true of them (marks, counts, findings) comes from the studio and is only shown here.
import { history, historyKeymap, defaultKeymap } from "@codemirror/commands";
import { search, searchKeymap, openSearchPanel } from "@codemirror/search";
import { Compartment, EditorState, RangeSetBuilder, StateEffect, StateField, type Extension, type Range } from "@codemirror/state";
import { Decoration, EditorView, GutterMarker, drawSelection, gutter, keymap, type DecorationSet } from "@codemirror/view";
import type { Finding, Row, Seen } from "../lib/wire";

export interface Truth { seen: Seen | null; size: number; marked: { from: number; to: number } | null; line: number | null }

export const setTruth = StateEffect.define<Truth>();

const truthField = StateField.define<Truth>({
  create: () => ({ seen: null, size: 0, marked: null, line: null }),
  update: (value, tr) => { for (const e of tr.effects) if (e.is(setTruth)) return e.value; return value; },
});

const CLASSES: Record<string, string> = {
  section: "w-section", name: "w-name", fit: "w-fit", special: "w-special", label: "w-label", count: "w-count", stitch: "w-stitch",
};

const marks = StateField.define<DecorationSet>({
  create: () => Decoration.none,
  update(value, tr) {
    let found = value.map(tr.changes);
    for (const e of tr.effects) if (e.is(setTruth)) found = decorate(e.value, tr.state);
    return found;
  },
  provide: (f) => EditorView.decorations.from(f),
});

function decorate(truth: Truth, state: EditorState): DecorationSet {
  const { seen, marked } = truth;
  if (!seen) return Decoration.none;
  const length = state.doc.length;
  const ranges: Range<Decoration>[] = [];
  const add = (from: number, to: number, deco: Decoration) => { if (from < to && to <= length) ranges.push(deco.range(from, to)); };
  for (const [from, to, what] of seen.marks) add(from, to, Decoration.mark({ class: CLASSES[what] ?? "" }));
  for (const f of seen.findings) add(f.from, Math.max(f.to, f.from + 1), Decoration.mark({ class: `f-${f.word}` }));
  for (const b of seen.blanks) {
    const value = b.values?.[truth.size];
    add(b.from, b.to, Decoration.mark({ class: "w-blank", attributes: value == null ? {} : { "data-value": String(value) } }));
  }
  for (const s of seen.sections) if (s.from <= length) ranges.push(Decoration.line({ class: "l-section" }).range(state.doc.lineAt(s.from).from));
  for (const r of seen.rows) if (r.from <= length) ranges.push(Decoration.line({ class: "l-row" }).range(state.doc.lineAt(r.from).from));
  if (marked) add(marked.from, marked.to, Decoration.mark({ class: "w-marker", attributes: { "data-marker": "" } }));
  if (truth.line && truth.line <= state.doc.lines) ranges.push(Decoration.line({ class: "l-here" }).range(state.doc.line(truth.line).from));
  return Decoration.set(ranges, true);
}

class Count extends GutterMarker {
  constructor(readonly said: string, readonly lead: string, readonly claim: string, readonly here: boolean) { super(); }
  override eq(other: Count): boolean {
    return other.said === this.said && other.lead === this.lead && other.claim === this.claim && other.here === this.here;
  }
  override toDOM(): HTMLElement {
    const cell = document.createElement("div");
    cell.className = `count has${this.here ? " here" : ""}`;
    const figure = document.createElement("span");
    figure.className = "fig";
    if (this.lead) {
      const many = document.createElement("span");
      many.className = "many";
      many.textContent = this.lead;
      figure.append(many);
    }
    figure.append(this.said);
    cell.append(figure);
    if (this.claim) {
      const claim = document.createElement("span");
      claim.className = "claim";
      claim.textContent = this.claim;
      cell.append(claim);
    }
    return cell;
  }
}

/** What the tape says beside a row: "40", "48 to 80", "10 × 84", "–". */
export function tapeOf(row: Row, size: number): { said: string; lead: string; claim: string } {
  const last = row.counts[size] ?? null, first = row.first[size] ?? null, times = row.times[size] ?? 0;
  const printed = row.printed?.[size] ?? null;
  const claim = row.agrees === false && printed !== null ? `said ${printed}` : "";
  if (!row.read) return { said: "–", lead: "", claim: "" };
  if (last === null) return { said: "–", lead: "", claim };
  if (times > 1 && first !== null && first !== last) return { said: String(last), lead: `${first} to `, claim };
  if (times > 1) return { said: String(last), lead: `${times} × `, claim };
  return { said: String(last), lead: "", claim };
}

const tape = gutter({
  class: "tape", side: "after",
  markers: (view) => {
    const { seen, size, line } = view.state.field(truthField);
    const builder = new RangeSetBuilder<GutterMarker>();
    if (!seen) return builder.finish();
    const byLine = new Map<number, Row>();
    for (const r of seen.rows) if (r.from <= view.state.doc.length) byLine.set(view.state.doc.lineAt(r.from).from, r);
    for (const [from, row] of [...byLine].sort((a, b) => a[0] - b[0])) {
      const { said, lead, claim } = tapeOf(row, size);
      builder.add(from, from, new Count(said, lead, claim, row.line === line));
    }
    return builder.finish();
  },
});

export interface SheetEvents {
  changed: (text: string) => void;
  at: (offset: number) => void;
  penUp: () => void;
}

export const readOnly = new Compartment();
export const extra = new Compartment();

export function sheet(parent: HTMLElement, text: string, nonce: string, events: SheetEvents, more: Extension = []): EditorView {
  return new EditorView({
    parent,
    state: EditorState.create({
      doc: text,
      extensions: [
        EditorView.cspNonce.of(nonce), truthField, marks, tape, history(), drawSelection(), search({ top: true }), EditorView.lineWrapping,
        readOnly.of([]), extra.of(more),
        keymap.of([{ key: "Escape", run: () => { events.penUp(); return true; } }, ...searchKeymap, ...historyKeymap, ...defaultKeymap]),
        EditorView.contentAttributes.of({ "aria-label": "The pattern, as written", spellcheck: "false", autocorrect: "off" }),
        EditorView.updateListener.of((u) => {
          if (u.docChanged) events.changed(u.state.doc.toString());
          if (u.selectionSet || u.docChanged) events.at(u.state.selection.main.head);
        }),
      ],
    }),
  });
}

export function show(view: EditorView, truth: Truth): void { view.dispatch({ effects: setTruth.of(truth) }); }

/** A mend as one change, so that one undo takes it back. Places that the text has outrun are left alone. */
export function mend(view: EditorView, finding: Finding): boolean {
  if (!finding.fix || finding.fix.edits.some((e) => e.to > view.state.doc.length)) return false;
  view.dispatch({ changes: finding.fix.edits.map((e) => ({ from: e.from, to: e.to, insert: e.text })), userEvent: "input.mend" });
  return true;
}

export { openSearchPanel };
