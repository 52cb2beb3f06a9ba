// The heading, folded into one line: on a phone the rows come first.
import { StateEffect, StateField, type EditorState, type Extension } from "@codemirror/state";
import { Decoration, EditorView, WidgetType, type DecorationSet } from "@codemirror/view";
import { setTruth, truth } from "./truth";

export const setFolded = StateEffect.define<boolean>();

class Folded extends WidgetType {
  constructor(readonly said: string) { super(); }
  override eq(other: Folded): boolean { return other.said === this.said; }
  override ignoreEvent(): boolean { return true; }
  override toDOM(view: EditorView): HTMLElement {
    const made = document.createElement("button");
    made.type = "button";
    made.className = "folded";
    made.textContent = this.said;
    made.setAttribute("aria-expanded", "false");
    made.addEventListener("click", () => view.dispatch({ effects: setFolded.of(false) }));
    return made;
  }
}

interface Fold { folded: boolean; shown: DecorationSet }

/** Where the heading ends: before the first section that has rows. */
export function headingEnd(state: EditorState): number {
  const { seen } = state.field(truth), row = seen?.rows[0];
  if (!seen || !row) return 0;
  const section = seen.sections.findLast((s) => s.from < row.from && s.title === row.section);
  const line = state.doc.lineAt(Math.min(state.doc.length, section?.from ?? row.from));
  return Math.max(0, line.from - 1);
}

function shown(state: EditorState, folded: boolean): DecorationSet {
  const end = folded ? headingEnd(state) : 0, { seen, since } = state.field(truth);
  if (!seen || since || end < 2) return Decoration.none;
  const said = [seen.sizes.length > 1 ? `${seen.sizes.length} sizes, ${seen.sizes[0]} to ${seen.sizes.at(-1)}` : "", seen.gauge ?? ""].filter(Boolean).join(" · ") || "The heading";
  return Decoration.set([Decoration.replace({ widget: new Folded(said), block: true }).range(0, end)]);
}

export const fold = (folded: boolean): Extension => StateField.define<Fold>({
  create: (state) => ({ folded, shown: shown(state, folded) }),
  update(value, tr) {
    let now = value;
    if (tr.docChanged) now = { ...now, shown: now.shown.map(tr.changes) };
    for (const e of tr.effects) {
      if (e.is(setFolded)) now = { folded: e.value, shown: shown(tr.state, e.value) };
      else if (e.is(setTruth) && now.folded) now = { ...now, shown: shown(tr.state, true) };
    }
    const head = tr.state.selection.main.head;
    if (now.folded && tr.selection && now.shown.size && head > 0 && head < headingEnd(tr.state)) now = { folded: false, shown: Decoration.none };
    return now;
  },
  provide: (f) => EditorView.decorations.from(f, (v) => v.shown),
});
