// Completing and explaining: stitches in the pattern's own terms, her sections, special stitches and blanks. Enter stays a new line.
import { autocompletion, type Completion, type CompletionContext, type CompletionResult } from "@codemirror/autocomplete";
import { EditorView, hoverTooltip, type Tooltip } from "@codemirror/view";
import type { Known } from "../lib/wire";
import { truth } from "./truth";

type Ask = () => Promise<Known | null>;

function completing(ask: Ask) {
  return async (context: CompletionContext): Promise<CompletionResult | null> => {
    const typed = context.matchBefore(/\{[^{}\n]*|[A-Za-z][\w-]*/);
    if (!typed || (typed.to - typed.from < 2 && !context.explicit && !typed.text.startsWith("{"))) return null;
    const known = await ask();
    if (!known || context.aborted) return null;
    const options: Completion[] = [];
    if (typed.text.startsWith("{")) {
      for (const b of known.blanks) options.push({ label: `{${b.name}}`, detail: b.sentence, type: "blank" });
    } else {
      const low = typed.text.toLowerCase(), starts = (s: string) => s.toLowerCase().startsWith(low) && s.toLowerCase() !== low;
      const line = context.state.doc.lineAt(typed.from), first = line.text.slice(0, typed.from - line.from).trim() === "";
      for (const s of known.stitches) {
        if (starts(s.short)) options.push({ label: s.short, detail: s.long, boost: s.used ? 10 : 0 });
        else if (starts(s.long)) options.push({ label: s.long, apply: s.short, detail: s.short, boost: s.used ? 5 : -5 });
      }
      for (const s of known.specials) for (const n of [s.name, s.abbreviation]) if (n && starts(n)) options.push({ label: n, detail: s.says, boost: 20 });
      if (first) for (const s of known.sections) if (starts(s)) options.push({ label: s, detail: "a section" });
    }
    return options.length ? { from: typed.from, options, filter: false } : null;
  };
}

function hovering(ask: Ask) {
  return async (view: EditorView, at: number): Promise<Tooltip | null> => {
    const { seen, since } = view.state.field(truth);
    if (!seen || since) return null;
    const mark = seen.marks.find(([from, to, what]) => (what === "stitch" || what === "special") && from <= at && at < to);
    const blank = seen.blanks.find((b) => b.from <= at && at < b.to);
    if (!mark && !blank) return null;
    const known = await ask();
    if (!known) return null;
    let name = "", says = "", from = at, to = at;
    if (blank) {
      [from, to, name] = [blank.from, blank.to, blank.name];
      says = `${blank.values ? seen.sizes.map((s, i) => `${s} ${blank.values?.[i] ?? "–"}`).join(", ") : "No sentence under Fit says what it must reach"}.`;
    } else if (mark) {
      [from, to] = mark;
      const word = view.state.sliceDoc(from, to), own = known.specials.find((s) => new RegExp(`\\b${s.name.replace(/[^\w ]/g, ".")}`, "i").test(word));
      const stitch = known.stitches.find((s) => s.key === mark[3]);
      if (own) { name = own.name; says = own.says; } else if (stitch) { name = stitch.short === stitch.long ? stitch.short : `${stitch.short}, ${stitch.long}`; says = stitch.says; } else return null;
    }
    return { pos: from, end: to, above: true, create: () => {
      const dom = document.createElement("div"), b = document.createElement("b"), p = document.createElement("p");
      dom.className = "tip-word";
      b.textContent = name;
      p.textContent = says;
      dom.append(b, p);
      return { dom };
    } };
  };
}

export const words = (ask: Ask) => [
  autocompletion({ override: [completing(ask)], selectOnOpen: false, icons: false, maxRenderedOptions: 12 }), hoverTooltip(hovering(ask), { hoverTime: 400 }),
];
