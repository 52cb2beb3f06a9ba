// What is true of the text on the sheet, as the studio said it last, and what is marked. Places are moved along with what is typed since.
import { StateEffect, StateField, type ChangeDesc } from "@codemirror/state";
import type { Seen } from "../lib/wire";

export interface Truth { seen: Seen | null; size: number }
export interface Marked { marked: { from: number; to: number } | null; line: number | null; firm: boolean }

export const setTruth = StateEffect.define<Truth>();
export const setMarked = StateEffect.define<Marked>();

/** `since`: what was typed after the text that this is true of. */
export const truth = StateField.define<Truth & { since: ChangeDesc | null }>({
  create: () => ({ seen: null, size: 0, since: null }),
  update(value, tr) {
    for (const e of tr.effects) if (e.is(setTruth)) return { ...e.value, since: null };
    if (!tr.docChanged) return value;
    return { ...value, since: value.since ? value.since.composeDesc(tr.changes.desc) : tr.changes.desc };
  },
});

export const marked = StateField.define<Marked>({
  create: () => ({ marked: null, line: null, firm: false }),
  update(value, tr) {
    for (const e of tr.effects) if (e.is(setMarked)) return e.value;
    return tr.docChanged ? { marked: null, line: value.line, firm: false } : value;
  },
});
