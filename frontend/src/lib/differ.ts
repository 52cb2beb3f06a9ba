// Two texts line by line: what stands in both, in the one, in the other.
export interface Stretch { only: "both" | "here" | "there"; lines: string[]; at: number }

const MOST = 1500; // lines on either side that are matched one by one; beyond it they are one stretch

/** `here` and `there` as stretches, in order; `at`: the line, from 1, in the text that has it. */
export function differ(here: string, there: string): Stretch[] {
  const a = here.split("\n"), b = there.split("\n"), made: Stretch[] = [];
  let head = 0, tail = 0;
  while (head < Math.min(a.length, b.length) && a[head] === b[head]) head += 1;
  while (tail < Math.min(a.length, b.length) - head && a[a.length - 1 - tail] === b[b.length - 1 - tail]) tail += 1;
  const add = (only: Stretch["only"], line: string, at: number) => {
    const last = made.at(-1);
    if (last?.only === only) last.lines.push(line); else made.push({ only, lines: [line], at });
  };
  for (let i = 0; i < head; i++) add("both", a[i] ?? "", i + 1);
  between(a.slice(head, a.length - tail), b.slice(head, b.length - tail)).forEach(([only, line, at]) => add(only, line, at + head));
  for (let i = a.length - tail; i < a.length; i++) add("both", a[i] ?? "", i + 1);
  return made;
}

function between(a: string[], b: string[]): [Stretch["only"], string, number][] {
  if (a.length > MOST || b.length > MOST) return [...a.map((l, i): [Stretch["only"], string, number] => ["here", l, i + 1]), ...b.map((l, i): [Stretch["only"], string, number] => ["there", l, i + 1])];
  const wide = b.length + 1, long = new Uint16Array((a.length + 1) * wide);
  for (let i = a.length - 1; i >= 0; i--) for (let j = b.length - 1; j >= 0; j--) {
    long[i * wide + j] = a[i] === b[j] ? (long[(i + 1) * wide + j + 1] ?? 0) + 1 : Math.max(long[(i + 1) * wide + j] ?? 0, long[i * wide + j + 1] ?? 0);
  }
  const made: [Stretch["only"], string, number][] = [];
  let i = 0, j = 0;
  while (i < a.length || j < b.length) {
    if (i < a.length && j < b.length && a[i] === b[j]) { made.push(["both", a[i] ?? "", i + 1]); i += 1; j += 1; }
    else if (j >= b.length || i < a.length && (long[(i + 1) * wide + j] ?? 0) >= (long[i * wide + j + 1] ?? 0)) { made.push(["here", a[i] ?? "", i + 1]); i += 1; }
    else { made.push(["there", b[j] ?? "", j + 1]); j += 1; }
  }
  return made;
}
