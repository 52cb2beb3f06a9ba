// What the marker holds, in words: what it is, where it stands, what it was worked into, what is worked on it.
import type { Stitches } from "./wire";

const NUMBERS = ["none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];
const ORDINALS = ["", "first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"];
export const ordinal = (n: number): string => ORDINALS[n] ?? `${n}${["th", "st", "nd", "rd"][n % 10 > 3 || Math.floor((n % 100) / 10) === 1 ? 0 : n % 10]}`;
const many = (n: number): string => NUMBERS[n] ?? String(n);

/** "an hdc", "a dc", "a sl st": letters are said one by one, words are not. */
export function article(word: string): string {
  const letters = !/[aeiouy]/i.test(word) && !word.includes(" ");
  return `${/^[aeiou]/i.test(word) || letters && /^[fhlmnrsx]/i.test(word) ? "an" : "a"} ${word}`;
}

export function capital(words: string): string { return words.charAt(0).toUpperCase() + words.slice(1); }

/** Whether a stitch is one that the row counts: no chain, no join, no turning chain. */
function counts(l: Stitches, s: number): boolean {
  const role = l.roles[l.role[s] ?? 0];
  return role === "counts" || (role === "edge" || role === "assumed") && l.kinds[l.kind[s] ?? 0]?.key !== "ch";
}

/** A stitch's number in its row, of all that are counted; 0 for one that is not counted. */
export function numberOf(l: Stitches, s: number): number {
  const row = l.rows[l.row[s] ?? -1];
  if (!row || !counts(l, s)) return 0;
  let n = 0;
  for (let i = row.start; i <= s; i++) if (counts(l, i)) n += 1;
  return n;
}

const named = (row: { label: string; section: string | null } | undefined): string => row?.label || row?.section || "the row below";

function place(l: Stitches, s: number): string {
  const into = l.into[s] ?? -1, below = l.rows[l.row[into] ?? -1];
  if (into < 0 || !below) return "";
  const sisters: number[] = [];
  const row = l.rows[l.row[s] ?? -1];
  if (row) for (let i = row.start; i < row.end; i++) if (l.into[i] === into && counts(l, i)) sisters.push(i);
  const where = l.row[into] === l.row[s] ? "the same row" : named(below), n = numberOf(l, into);
  const at = n ? `stitch ${n} of ${where}` : `${article(l.kinds[l.kind[into] ?? 0]?.short ?? "chain")} of ${where}`;
  return sisters.length > 1 && sisters.includes(s) ? `, the ${ordinal(sisters.indexOf(s) + 1)} of ${many(sisters.length)} in ${at}` : `, in ${at}`;
}

function above(l: Stitches, s: number): string {
  const on = l.into.flatMap((i, n) => (i === s && counts(l, n) ? [n] : [])), first = on[0];
  if (first === undefined) return " Nothing is worked into it.";
  const row = named(l.rows[l.row[first] ?? -1]), n = numberOf(l, first);
  if (on.length === 1) return n ? ` In ${row}, stitch ${n} is worked into it.` : ` In ${row}, ${article(l.kinds[l.kind[first] ?? 0]?.short ?? "stitch")} is worked into it.`;
  return ` In ${row}, ${many(on.length)} stitches are worked into it.`;
}

function repeat(l: Stitches, s: number): string {
  const round = l.round?.[s] ?? 0, row = l.rows[l.row[s] ?? -1];
  if (!round || !row) return "";
  let most = 0;
  for (let i = row.start; i < row.end; i++) most = Math.max(most, l.round?.[i] ?? 0);
  return most > 1 ? `; ${ordinal(round)} of ${most} repeats` : "";
}

export function tagOf(l: Stitches | null, s: number | null): { at: string; is: string } | null {
  if (!l || s === null) return null;
  const row = l.rows[l.row[s] ?? -1], kind = l.kinds[l.kind[s] ?? -1];
  if (!row || !kind) return null;
  const n = numberOf(l, s), role = l.roles[l.role[s] ?? 0];
  const what = role === "join" ? "The join, a sl st; not counted" : n ? capital(article(kind.short)) : `${capital(article(kind.short))}; not counted`;
  return { at: `${named(row)}${n ? `, stitch ${n} of ${row.counted}` : ""}.`, is: `${what}${n ? place(l, s) : ""}${repeat(l, s)}.${above(l, s)}` };
}
