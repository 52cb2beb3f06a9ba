// Plain keys while the pen is up: the sheet, the chart or the shape has the focus, and nothing that takes letters.
import type { Desk } from "./desk.svelte";

export interface Doing {
  desk: Desk; show: (view: number) => void; penDown: () => void; nextNote: (step: number) => void; mend: () => void; leave: () => void; row: (step: number) => void;
  find: () => void; versions: () => void; help: () => void; unroll: () => void; hand: () => void;
}

export const KEYS: [string, string][] = [
  ["← →", "stitch before, after"], ["↓ ↑", "worked into, worked on it"], ["PgUp PgDn", "row before, after"], ["Home End", "first, last stitch of the row"],
  [", .", "smaller size, larger size"], ["0", "the size worked in"], ["N B", "next finding, the one before"], ["M", "mend with the first way out"],
  ["Y", "leave it, because …"], ["1 to 5", "Chart, Shape, Schematic, Words, Measures"], ["T", "unroll or roll up all sizes"], ["H", "In hand"],
  ["F, a number", "find row"], ["V", "older texts"], ["Z R", "take back, put back: whatever was done last, in any place"], ["Enter", "set the marker, then pen down there"], ["Esc", "pen up"], ["?", "keys"],
];
export const ALWAYS: [string, string][] = [
  ["F6, Shift F6", "from part to part"], ["F8", "next finding"], ["F2", "rename a section or a special stitch everywhere"], ["Ctrl Z, Ctrl Y", "take back, put back"], ["Ctrl F", "find words"],
];

export function penIsUp(target: EventTarget | null): boolean {
  return !(target instanceof HTMLElement && (target.isContentEditable || /^(?:INPUT|TEXTAREA|SELECT)$/.test(target.tagName)));
}

/** Does what a key says; tells whether it was one of ours. */
export function press(e: KeyboardEvent, d: Doing): boolean {
  if (e.ctrlKey || e.metaKey || e.altKey || e.defaultPrevented || !penIsUp(e.target)) return false;
  if (e.target instanceof HTMLElement && e.target.closest("[role=radiogroup], [role=separator]") && (e.key.startsWith("Arrow") || e.key === "Home" || e.key === "End")) return false;
  const button = e.target instanceof HTMLElement && /^(?:BUTTON|A|SUMMARY)$/.test(e.target.tagName);
  if (button && (e.key === "Enter" || e.key === " ")) return false;
  const size = (step: number) => d.desk.choose((d.desk.size + step + d.desk.sizes.length) % Math.max(1, d.desk.sizes.length));
  const does: Record<string, () => void> = {
    ArrowLeft: () => d.desk.walk("before"), ArrowRight: () => d.desk.walk("after"), ArrowDown: () => d.desk.walk("into"), ArrowUp: () => d.desk.walk("on"),
    Home: () => d.desk.walk("first"), End: () => d.desk.walk("last"), PageUp: () => d.row(-1), PageDown: () => d.row(1), " ": () => d.row(1),
    ",": () => size(-1), ".": () => size(1), "0": () => d.desk.choose(d.desk.seen?.sample ?? 0), n: () => d.nextNote(1), b: () => d.nextNote(-1), m: d.mend, y: d.leave,
    f: d.find, v: d.versions, t: d.unroll, h: d.hand, Enter: d.penDown, "?": d.help,
    "1": () => d.show(0), "2": () => d.show(1), "3": () => d.show(2), "4": () => d.show(3), "5": () => d.show(4),
  };
  const run = does[e.key] ?? does[e.key.toLowerCase()];
  if (!run) return false;
  e.preventDefault();
  run();
  return true;
}
