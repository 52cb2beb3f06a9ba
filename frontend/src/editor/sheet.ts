// The sheet: CodeMirror for her words. What is true of them (marks, counts, findings) comes from the studio and is only shown here.
import { closeCompletion, currentCompletions } from "@codemirror/autocomplete";
import { defaultKeymap } from "@codemirror/commands";
import { search, searchKeymap } from "@codemirror/search";
import { Annotation, Compartment, EditorSelection, EditorState, Prec, type Extension } from "@codemirror/state";
import { EditorView, drawSelection, keymap } from "@codemirror/view";
import { stretch } from "../lib/past";
import type { Known } from "../lib/wire";
import { fold } from "./fold";
import { lists } from "./lists";
import { marks } from "./marks";
import { notes, type NoteEvents } from "./notes";
import { tape, tapeOf, unrolled, unrolledBelow } from "./tape";
import { marked, setMarked, setTruth, truth, type Marked, type Truth } from "./truth";
import { words } from "./words";

export interface SheetEvents extends NoteEvents {
  changed: (text: string) => void;
  at: (offset: number, line: number) => void;
  pen: (down: boolean) => void;
  penUp: () => void;
  /** A click while the pen is up: whether it marked a stitch. */
  pick: (offset: number) => boolean;
  known: () => Promise<Known | null>;
  rename: () => void;
  undo: () => void;
  redo: () => void;
}

const readOnly = new Compartment(), roll = new Compartment();
/** What comes from the desk need not be told to it. */
const given = Annotation.define<boolean>();
export const NARROW = 600, DESK = 1100;

export function sheet(parent: HTMLElement, text: string, nonce: string, events: SheetEvents): EditorView {
  return new EditorView({
    parent,
    state: EditorState.create({
      doc: text,
      extensions: [
        Prec.highest(keymap.of([{ key: "Escape", run: (view) => leaveSheet(view, events) }])), // before the list's own key, which a list still asked for takes too
        EditorView.cspNonce.of(nonce), truth, marked, marks, tape, roll.of([]), notes(events), lists, words(events.known), fold(innerWidth <= NARROW),
        drawSelection(), search({ top: true }), EditorView.lineWrapping, readOnly.of([]),
        keymap.of([
          { key: "F2", run: () => { events.rename(); return true; } },
          { key: "Mod-z", run: () => { events.undo(); return true; }, preventDefault: true },
          { key: "Mod-Shift-z", run: () => { events.redo(); return true; }, preventDefault: true }, { key: "Mod-y", run: () => { events.redo(); return true; }, preventDefault: true },
          ...searchKeymap, ...defaultKeymap,
        ]),
        EditorView.contentAttributes.of({ "aria-label": "The pattern, as written", tabindex: "0", spellcheck: "false", autocorrect: "off", autocapitalize: "off" }),
        EditorView.domEventHandlers({ mousedown: (e, view) => pressed(e, view, events), focus: () => { events.pen(true); }, blur: (_, view) => { queueMicrotask(() => events.pen(view.hasFocus)); } }), // a sheet that is taken away is left while the page changes
        EditorView.updateListener.of((u) => {
          if (u.docChanged && !u.transactions.some((t) => t.annotation(given))) events.changed(u.state.doc.toString());
          if (u.selectionSet || u.docChanged) { const head = u.state.selection.main.head; events.at(head, u.state.doc.lineAt(head).number); }
        }),
      ],
    }),
  });
}

/** A list in sight is closed first; one that is still being asked for is not waited for. */
function leaveSheet(view: EditorView, events: SheetEvents): boolean {
  if (currentCompletions(view.state).length) return closeCompletion(view);
  closeCompletion(view);
  events.penUp();
  return true;
}

function pressed(e: MouseEvent, view: EditorView, events: SheetEvents): boolean {
  if (view.hasFocus || e.button || e.detail > 1 || (e.target as HTMLElement).closest(".note, .folded")) return false;
  const at = view.posAtCoords({ x: e.clientX, y: e.clientY });
  if (at === null || !events.pick(at)) return false;
  e.preventDefault();
  return true;
}

export const show = (view: EditorView, now: Truth): void => view.dispatch({ effects: setTruth.of(now) });
export const mark = (view: EditorView, now: Marked): void => view.dispatch({ effects: setMarked.of(now) });
export const allow = (view: EditorView, writes: boolean): void => view.dispatch({ effects: readOnly.reconfigure(writes ? [] : EditorState.readOnly.of(true)) });
export const reveal = (view: EditorView, from: number, y: "nearest" | "center" = "nearest"): void => {
  view.dispatch({ effects: EditorView.scrollIntoView(Math.min(from, view.state.doc.length), { y, yMargin: 80 }) });
};

export function unroll(view: EditorView, all: boolean): void {
  const wide = innerWidth > DESK;
  const how: Extension = !all ? [] : wide ? unrolled : unrolledBelow;
  view.dispatch({ effects: roll.reconfigure(how) });
}

/** The text that lies on the desk, where the sheet has another: only what differs is put in, so that the caret stays. */
export function replace(view: EditorView, text: string): void {
  const before = view.state.doc.toString();
  if (before === text) return;
  const made = stretch(before, text);
  view.dispatch({ changes: { from: made.from, to: made.from + made.out.length, insert: made.in }, annotations: given.of(true) });
}

/** Everything where a name stands as a word of its own, also as several ("bean sts") and at the beginning of a sentence (`capital`). */
export function placesOf(text: string, name: string): { from: number; to: number; capital: boolean }[] {
  if (!name.trim()) return [];
  const first = name.charAt(0), upper = first.toUpperCase(), either = first === upper ? first : `${first}${upper}`;
  const found = new RegExp(`(?<![\\w{])[${either.replace(/[\]\\^-]/g, "\\$&")}]${name.slice(1).replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}(?=s?(?![\\w}]))`, "g");
  return [...text.matchAll(found)].map((m) => ({ from: m.index, to: m.index + m[0].length, capital: first !== upper && m[0].startsWith(upper) }));
}

export const caret = (view: EditorView, at: number): void => view.dispatch({ selection: EditorSelection.cursor(Math.min(at, view.state.doc.length)), scrollIntoView: true });

export { tapeOf };
