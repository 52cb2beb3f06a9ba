// Numbers for every size in brackets, "9 (9, 10)": which size the number at the caret is for; its brackets are not deleted by a slip.
import { StateField, type EditorState } from "@codemirror/state";
import { Decoration, EditorView, keymap, showTooltip, type Command, type DecorationSet, type Tooltip } from "@codemirror/view";
import { setTruth, truth } from "./truth";

interface List { from: number; to: number; numbers: { from: number; to: number }[] }

const LIST = /(\d+(?:\.\d+)?|-|–)\s*((?:[([][^()[\]\n]*[)\]]\s*)+)/g;

/** The size list that a place stands in: as many numbers as there are sizes, the first outside the brackets. */
export function listAt(state: EditorState, at: number): List | null {
  const { seen } = state.field(truth), sizes = seen?.sizes.length ?? 0;
  if (sizes < 2) return null;
  const line = state.doc.lineAt(at);
  for (const m of line.text.matchAll(LIST)) {
    const from = line.from + m.index, first = m[1] ?? "", rest = m[2] ?? "", to = from + m[0].trimEnd().length;
    if (at < from || at > to) continue;
    const inner = from + m[0].length - rest.length, numbers = [{ from, to: from + first.length }];
    for (const n of rest.matchAll(/[^\s,;:()[\]]+(?:\s+[^\s,;:()[\]]+)*/g)) numbers.push({ from: inner + n.index, to: inner + n.index + n[0].length });
    if (numbers.length > 2 || numbers.length === sizes) return { from, to, numbers };
  }
  return null;
}

const chosen = Decoration.mark({ class: "w-chosen" });

function lit(state: EditorState): DecorationSet {
  const list = listAt(state, state.selection.main.head), { seen, size } = state.field(truth), number = list?.numbers[size];
  return list && number && list.numbers.length === seen?.sizes.length ? Decoration.set([chosen.range(number.from, number.to)]) : Decoration.none;
}

function tip(state: EditorState): Tooltip | null {
  const at = state.selection.main.head, list = listAt(state, at), { seen } = state.field(truth);
  if (!list || !seen) return null;
  const fits = list.numbers.length === seen.sizes.length, i = list.numbers.findIndex((n) => at >= n.from && at <= n.to);
  if (fits && i < 0) return null;
  const said = fits ? seen.sizes[i] ?? "" : `${list.numbers.length} numbers, ${seen.sizes.length} sizes`;
  return { pos: list.numbers[Math.max(0, i)]?.from ?? at, above: true, strictSide: true, create: () => { const dom = document.createElement("div"); dom.className = "tip-size"; dom.textContent = said; return { dom }; } };
}

const watched = (tr: { docChanged: boolean; selection: unknown; effects: readonly { is: (t: typeof setTruth) => boolean }[] }) =>
  tr.docChanged || !!tr.selection || tr.effects.some((e) => e.is(setTruth));
const litField = StateField.define<DecorationSet>({ create: lit, update: (v, tr) => (watched(tr) ? lit(tr.state) : v), provide: (f) => EditorView.decorations.from(f) });
const tipField = StateField.define<Tooltip | null>({ create: () => null, update: (v, tr) => (watched(tr) ? tip(tr.state) : v), provide: (f) => showTooltip.from(f) });

/** A bracket or comma of a whole list is stepped over instead of deleted. */
const over = (step: -1 | 1): Command => (view) => {
  const { main } = view.state.selection, list = main.empty ? listAt(view.state, main.head) : null;
  if (!list || list.numbers.length !== view.state.field(truth).seen?.sizes.length) return false;
  const at = step < 0 ? main.head - 1 : main.head;
  if (at < list.from || at >= list.to || !/[()[\],]/.test(view.state.sliceDoc(at, at + 1))) return false;
  view.dispatch({ selection: { anchor: main.head + step }, userEvent: "select" });
  return true;
};

export const lists = [litField, tipField, keymap.of([{ key: "Backspace", run: over(-1) }, { key: "Delete", run: over(1) }])];
