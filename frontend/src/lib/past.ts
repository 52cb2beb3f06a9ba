// What was changed in a design, wherever it was changed: one history for the sheet and all other places, taken back step by step.
/** One change: at `from`, `out` was replaced by `in`. `said`: what was done, in words; "" for what was typed. `at_ms`: when. */
interface Step { from: number; out: string; in: string; said: string; at_ms: number }
export interface Back { text: string; from: number; to: number; said: string }

const JOIN_MS = 600, MOST = 500;
const low = (s: string, i: number) => { const c = s.charCodeAt(i); return c >= 0xdc00 && c < 0xe000; };

/** The one stretch in which two texts differ; never between the halves of a character. */
export function stretch(before: string, after: string): { from: number; out: string; in: string } {
  let from = 0, end = 0;
  const most = Math.min(before.length, after.length);
  while (from < most && before.charCodeAt(from) === after.charCodeAt(from)) from += 1;
  while (from > 0 && (low(before, from) || low(after, from))) from -= 1;
  while (end < most - from && before.charCodeAt(before.length - 1 - end) === after.charCodeAt(after.length - 1 - end)) end += 1;
  while (end > 0 && (low(before, before.length - end) || low(after, after.length - end))) end -= 1;
  return { from, out: before.slice(from, before.length - end), in: after.slice(from, after.length - end) };
}

export class Past {
  private back: Step[] = [];
  private forth: Step[] = [];

  /** Keeps a change. What is typed on at the same place within a moment is one step. */
  add(before: string, after: string, said: string, now_ms: number): void {
    if (before === after) return;
    const step = { ...stretch(before, after), said, at_ms: now_ms }, last = this.back.at(-1);
    this.forth = [];
    if (last && !said && !last.said && now_ms - last.at_ms < JOIN_MS) {
      const joined = join(last, step);
      if (joined) { this.back[this.back.length - 1] = joined; return; }
    }
    this.back.push(step);
    if (this.back.length > MOST) this.back.shift();
  }

  /** What would be taken back, in words; null for nothing. */
  get undoable(): string | null { return this.back.at(-1)?.said ?? null; }
  get redoable(): string | null { return this.forth.at(-1)?.said ?? null; }

  undo(text: string): Back | null { return move(text, this.back, this.forth, (s) => [s.in, s.out]); }
  redo(text: string): Back | null { return move(text, this.forth, this.back, (s) => [s.out, s.in]); }
  forget(): void { this.back = []; this.forth = []; }
}

function join(a: Step, b: Step): Step | null {
  if (!b.out && b.from === a.from + a.in.length && !/\n/.test(b.in)) return { ...a, in: a.in + b.in, at_ms: b.at_ms };
  if (!b.in && !a.in && b.from + b.out.length === a.from) return { ...a, from: b.from, out: b.out + a.out, at_ms: b.at_ms };
  if (!b.in && !a.in && b.from === a.from) return { ...a, out: a.out + b.out, at_ms: b.at_ms };
  if (!b.in && b.from >= a.from && b.from + b.out.length === a.from + a.in.length) return { ...a, in: a.in.slice(0, b.from - a.from), at_ms: b.at_ms };
  return null;
}

function move(text: string, from: Step[], to: Step[], way: (s: Step) => [string, string]): Back | null {
  const step = from.pop();
  if (!step) return null;
  const [there, instead] = way(step);
  if (text.slice(step.from, step.from + there.length) !== there) { from.length = 0; to.length = 0; return null; } // another's text: none of it holds any more
  to.push({ ...step, at_ms: 0 });
  return { text: text.slice(0, step.from) + instead + text.slice(step.from + there.length), from: step.from, to: step.from + instead.length, said: step.said };
}
