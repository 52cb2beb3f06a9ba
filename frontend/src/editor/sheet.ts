// The sheet: CodeMirror for her words. What is true of them (marks, counts, findings) comes from the studio and is only shown here.
import { defaultKeymap, history, historyKeymap, isolateHistory } from "@codemirror/commands";
import { openSearchPanel, search, searchKeymap } from "@codemirror/search";
import { Compartment, EditorSelection, EditorState, type Extension } from "@codemirror/state";
import { EditorView, drawSelection, keymap } from "@codemirror/view";
import type { Finding, Known } from "../lib/wire";
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
}

const readOnly = new Compartment(), roll = new Compartment();
export const NARROW = 600, DESK = 1100;

export function sheet(parent: HTMLElement, text: string, nonce: string, events: SheetEvents): EditorView {
  return new EditorView({
    parent,
    state: EditorState.create({
      doc: text,
      extensions: [
        EditorView.cspNonce.of(nonce), truth, marked, marks, tape, roll.of([]), notes(events), lists, words(events.known), fold(innerWidth <= NARROW),
        history(), drawSelection(), search({ top: true }), EditorView.lineWrapping, readOnly.of([]),
        keymap.of([
          { key: "Escape", run: () => { events.penUp(); return true; } }, { key: "F2", run: () => { events.rename(); return true; } },
          ...searchKeymap, ...historyKeymap, ...defaultKeymap,
        ]),
        EditorView.contentAttributes.of({ "aria-label": "The pattern, as written", tabindex: "0", spellcheck: "false", autocorrect: "off", autocapitalize: "off" }),
        EditorView.domEventHandlers({ mousedown: (e, view) => pressed(e, view, events), focus: () => { events.pen(true); }, blur: () => { events.pen(false); } }),
        EditorView.updateListener.of((u) => {
          if (u.docChanged) events.changed(u.state.doc.toString());
          if (u.selectionSet || u.docChanged) { const head = u.state.selection.main.head; events.at(head, u.state.doc.lineAt(head).number); }
        }),
      ],
    }),
  });
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

/** Changes as one step, so that one undo takes them back. Places that the text has outrun are left alone. */
export function change(view: EditorView, edits: { from: number; to: number; text: string }[], what: string): boolean {
  if (edits.some((e) => e.to > view.state.doc.length)) return false;
  view.dispatch({ changes: edits.map((e) => ({ from: e.from, to: e.to, insert: e.text })), userEvent: `input.${what}`, annotations: isolateHistory.of("full") });
  return true;
}

export const mend = (view: EditorView, finding: Finding): boolean => !!finding.fix && change(view, finding.fix.edits, "mend");

/** Everything where a name stands as a word of its own, written as it is written here. */
export function placesOf(view: EditorView, name: string): { from: number; to: number }[] {
  if (!name.trim()) return [];
  const found = new RegExp(`(?<![\\w{])${name.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}(?![\\w}])`, "g");
  return [...view.state.doc.toString().matchAll(found)].map((m) => ({ from: m.index, to: m.index + m[0].length }));
}

export const caret = (view: EditorView, at: number): void => view.dispatch({ selection: EditorSelection.cursor(Math.min(at, view.state.doc.length)), scrollIntoView: true });

export { openSearchPanel, tapeOf };
