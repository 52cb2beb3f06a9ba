// Findings as pencil notes under their row: one is open in each row, the others are shapes to press. What is new on the line that is
// being written waits until the keys rest, so that nothing moves under the hand.
import { StateEffect, StateField, type EditorState, type Extension, type Range } from "@codemirror/state";
import { Decoration, EditorView, ViewPlugin, WidgetType, type DecorationSet, type ViewUpdate } from "@codemirror/view";
import type { Finding, Word } from "../lib/wire";
import { setTruth, truth } from "./truth";

export interface NoteEvents { mend: (f: Finding) => void; leave: (f: Finding, why: string) => void }

export const openNote = StateEffect.define<{ line: number; key: string | null }>();
const rested = StateEffect.define<null>();
const REST_MS = 600;
export const SHAPES: Record<Word, string> = { stops: "M10 2.2 17.8 10 10 17.8 2.2 10Z", look: "M3 15.5 10 4 17 15.5", thought: "M10 3a7 7 0 1 0 .01 0Z" };
export const saidOf = (f: Finding): string => (f.code.startsWith("N") ? "Not read." : { stops: "Stops here.", look: "Look again.", thought: "A thought." }[f.word]);
export const sentence = (s: string): string => { const t = s.charAt(0).toUpperCase() + s.slice(1); return /[.!?]$/.test(t) ? t : `${t}.`; };
/** A mend as a button: it states the edit. */
export const wayOut = (title: string): string => title.replace(/^print (.+)$/, "Write ($1)").replace(/^./, (c) => c.toUpperCase());
export const keyOf = (f: Finding): string => `${f.code} ${f.message}`;
const RANK: Record<Word, number> = { stops: 0, look: 1, thought: 2 };

function shape(word: Word): SVGElement {
  const svg = document.createElementNS("http://www.w3.org/2000/svg", "svg"), path = document.createElementNS("http://www.w3.org/2000/svg", "path");
  svg.setAttribute("viewBox", "0 0 20 20");
  svg.setAttribute("class", "sign");
  svg.setAttribute("aria-hidden", "true");
  path.setAttribute("d", SHAPES[word]);
  svg.append(path);
  return svg;
}

function button(name: string, said: string | Node, press: () => void, label?: string): HTMLButtonElement {
  const made = document.createElement("button");
  made.type = "button";
  made.className = name;
  made.append(said);
  if (label) made.setAttribute("aria-label", label);
  made.addEventListener("click", (e) => { e.preventDefault(); press(); });
  return made;
}

class Note extends WidgetType {
  constructor(readonly found: Finding[], readonly open: string | null, readonly line: number, readonly events: NoteEvents) { super(); }
  override eq(o: Note): boolean {
    return o.open === this.open && o.line === this.line && o.found.length === this.found.length
      && this.found.every((f, i) => { const g = o.found[i]; return !!g && keyOf(g) === keyOf(f) && g.fix?.title === f.fix?.title && g.from === f.from && g.to === f.to; });
  }
  override ignoreEvent(): boolean { return true; }
  override toDOM(view: EditorView): HTMLElement {
    const note = document.createElement("div");
    note.className = "note";
    note.contentEditable = "false";
    note.dataset["line"] = String(this.line);
    const kinds = document.createElement("div");
    kinds.className = "kinds";
    for (const f of this.found) {
      const key = keyOf(f), on = key === this.open;
      const sign = button("kind", shape(f.word), () => view.dispatch({ effects: openNote.of({ line: this.line, key: on ? null : key }) }), `${saidOf(f)} ${sentence(f.message)}`);
      sign.setAttribute("aria-expanded", String(on));
      kinds.append(sign);
    }
    note.append(kinds);
    const f = this.found.find((x) => keyOf(x) === this.open);
    if (f) note.append(this.paper(f));
    return note;
  }

  private paper(f: Finding): HTMLElement {
    const paper = document.createElement("div"), p = document.createElement("p"), say = document.createElement("span");
    paper.className = "paper";
    paper.setAttribute("role", "group");
    paper.setAttribute("aria-label", `${f.place}: ${saidOf(f)}`);
    say.className = "say";
    say.textContent = saidOf(f);
    p.append(say, ` ${sentence(f.message)}`);
    if (f.sizes) p.append(` In ${f.sizes.join(", ")}.`);
    paper.append(p);
    for (const h of f.hints) { const q = document.createElement("p"); q.className = "quiet"; q.textContent = sentence(h); paper.append(q); }
    const acts = document.createElement("div");
    acts.className = "acts";
    const { fix } = f;
    if (fix) acts.append(button("act main", wayOut(fix.title), () => this.events.mend(f)));
    if (f.word !== "stops") acts.append(button("act leave", "Leave it, because …", () => { acts.replaceWith(this.because(f, acts)); }));
    if (acts.childElementCount) paper.append(acts);
    return paper;
  }

  private because(f: Finding, acts: HTMLElement): HTMLElement {
    const form = document.createElement("form"), label = document.createElement("label"), why = document.createElement("input");
    form.className = "acts because";
    why.className = "slot word";
    why.autocomplete = "off";
    why.maxLength = 200;
    label.append("Left as it is, because ", why);
    const keep = button("act main", "Keep it so", () => form.requestSubmit());
    form.append(label, keep, button("act plain", "Back", () => form.replaceWith(acts)));
    form.addEventListener("submit", (e) => { e.preventDefault(); if (why.value.trim()) this.events.leave(f, why.value); else why.focus(); });
    form.addEventListener("keydown", (e) => { if (e.key === "Escape") { e.stopPropagation(); form.replaceWith(acts); acts.querySelector<HTMLElement>(".leave")?.focus(); } });
    queueMicrotask(() => why.focus());
    return form;
  }
}

interface Notes { shown: DecorationSet; chosen: Map<number, string | null>; keys: Map<number, string>; writing: number }

function build(state: EditorState, before: Notes, events: NoteEvents, hold: boolean): Notes {
  const { seen } = state.field(truth), rows = new Map<number, Finding[]>();
  for (const f of seen?.findings ?? []) {
    if (f.from > state.doc.length) continue;
    const line = state.doc.lineAt(f.from).number, found = rows.get(line);
    if (found) found.push(f); else rows.set(line, [f]);
  }
  const ranges: Range<Decoration>[] = [], keys = new Map<number, string>();
  for (const [line, found] of [...rows].sort((a, b) => a[0] - b[0])) {
    found.sort((a, b) => RANK[a.word] - RANK[b.word]);
    const all = found.map(keyOf).join("|");
    if (hold && line === before.writing && !before.keys.has(line)) continue;
    keys.set(line, all);
    const chosen = before.chosen.get(line), first = found[0] as Finding;
    const open = chosen === null ? null : chosen !== undefined && found.some((f) => keyOf(f) === chosen) ? chosen : first.word === "thought" ? null : keyOf(first);
    ranges.push(Decoration.widget({ widget: new Note(found, open, line, events), block: true, side: 1 }).range(state.doc.line(line).to));
  }
  return { ...before, shown: Decoration.set(ranges, true), keys };
}

export function notes(events: NoteEvents): Extension {
  const field = StateField.define<Notes>({
    create: () => ({ shown: Decoration.none, chosen: new Map(), keys: new Map(), writing: 0 }),
    update(value, tr) {
      let now = value;
      if (tr.docChanged) {
        const typed = tr.isUserEvent("input.type") || tr.isUserEvent("delete");
        now = { ...now, shown: now.shown.map(tr.changes), writing: typed ? tr.state.doc.lineAt(tr.state.selection.main.head).number : 0 };
        if (tr.startState.doc.lines !== tr.state.doc.lines) now = { ...now, chosen: new Map(), keys: new Map([...now.keys].filter(([l]) => l < now.writing)) };
      }
      for (const e of tr.effects) {
        if (e.is(openNote)) now = build(tr.state, { ...now, chosen: new Map(now.chosen).set(e.value.line, e.value.key) }, events, false);
        else if (e.is(setTruth)) now = build(tr.state, now, events, true);
        else if (e.is(rested)) now = build(tr.state, { ...now, writing: 0 }, events, false);
      }
      return now;
    },
    provide: (f) => EditorView.decorations.from(f, (n) => n.shown),
  });
  const rest = ViewPlugin.fromClass(class {
    timer: ReturnType<typeof setTimeout> | undefined;
    update(u: ViewUpdate): void {
      if (!u.docChanged) return;
      clearTimeout(this.timer);
      this.timer = setTimeout(() => u.view.dispatch({ effects: rested.of(null) }), REST_MS);
    }
    destroy(): void { clearTimeout(this.timer); }
  });
  return [field, rest];
}
