// Makers' questions on the wire (workshop/asked.py, studio/routes/questions.py), and what they come to in words.
import { ask } from "./api";

export type Kind = "count" | "gauge" | "yarn" | "measure" | "looks" | "chain" | "turning" | "balls";
/** `chained`: how many chains it is worked into; `turning`: with how many it begins. */
export interface AskRow { row: number; section: string | null; label: string; count: number; line: number; chained: number; turning: number }
export interface AskMeasure { section: string | null; name: string; mm: number }
export interface Cause { title: string; see: string; mend: string; mark: string; svg?: string; description?: string }
export interface Answer {
  heading: string; facts: string[]; text: string; causes: Cause[]; size: string; version: string; section: string; label: string;
}
export interface Kept {
  id: number; version: string; kind: Kind; size: string; section: string; label: string; asked: Record<string, unknown>; heading: string; sent: string; at: number;
}
export interface Listing { rows: AskRow[]; kept: Kept[]; sum: string }
export interface Blanks {
  kind: Kind; row: number; have: string; before: string; stitches: string; rows: string; amount: string; unit: string; measure: number; want: string; length: string;
  chains: string; look: string; section: string; ball: string; ballUnit: string;
}

export const blank = (): Blanks => ({
  kind: "count", row: -1, have: "", before: "", stitches: "", rows: "", amount: "", unit: "m", measure: 0, want: "", length: "cm", chains: "", look: "", section: "", ball: "", ballUnit: "m",
});

const at = (id: string) => `/api/questions/${encodeURIComponent(id)}`;
const INCH_MM = 25.4, YARD_M = 0.9144;
const number = (s: string): number | null => { const t = s.trim().replace(",", "."); return /^\d+(\.\d+)?$/.test(t) ? Number(t) : null; };
const whole = (s: string): number | null => (/^\d{1,6}$/.test(s.trim()) ? Number(s) : null);

export const listing = (id: string, size: number) => ask<Listing>(`${at(id)}?size=${size}`);
export const measuresOf = (id: string, size: number) => ask<{ measures: AskMeasure[] }>(`${at(id)}/measures?size=${size}`);

/** What is sent for these blanks; null while one that is needed is empty. */
export function question(b: Blanks, size: number, terms: string, measures: AskMeasure[]): Record<string, unknown> | null {
  const base = { kind: b.kind, size, terms };
  if (b.kind === "count") {
    const have = whole(b.have), before = b.before.trim() ? whole(b.before) : null;
    return have === null || b.row < 0 ? null : { ...base, row: b.row, have, before };
  }
  if (b.kind === "gauge") {
    const stitches = number(b.stitches), rows = number(b.rows);
    return stitches && rows ? { ...base, stitches, rows } : null;
  }
  if (b.kind === "looks") return b.look ? { ...base, section: b.section, look: b.look } : null;
  if (b.kind === "chain") { const have = whole(b.chains); return have === null || b.row < 0 ? null : { ...base, row: b.row, have }; }
  if (b.kind === "turning") return b.row < 0 ? null : { ...base, row: b.row };
  if (b.kind === "balls") { const n = number(b.ball); return n ? { ...base, ball_m: n * (b.ballUnit === "yd" ? YARD_M : 1) } : null; }
  if (b.kind === "yarn") return number(b.amount) ? { ...base, amount: `${number(b.amount)} ${b.unit}` } : null;
  const want = number(b.want), m = measures[b.measure];
  return want && m ? { ...base, section: m.section, measure: m.name, want_mm: want * (b.length === "in" ? INCH_MM : 10) } : null;
}

export const answer = (id: string, asked: Record<string, unknown>) => ask<Answer>(`${at(id)}/answer`, asked);
export const keep = (id: string, given: Record<string, unknown>) => ask<Kept>(`${at(id)}/kept`, given);
export const letGo = (id: string, number: number) => ask<{ gone: boolean }>(`${at(id)}/kept/${number}`, undefined, "DELETE");
export const noted = (id: string, row: number, words: string) => ask<{ text: string; sum: string }>(`${at(id)}/note`, { row, words });

const some = (v: unknown): string => (typeof v === "string" || typeof v === "number" ? String(v) : "");

/** A question in short: "57, not 56", "16 sts and 12 rows", "600 m". */
export function inShort(k: Pick<Kept, "kind" | "asked">): string {
  const a = k.asked;
  if (k.kind === "count") return `${some(a["have"])}, not ${some(a["want"])}`;
  if (k.kind === "gauge") return `her gauge is ${some(a["stitches"])} sts and ${some(a["rows"])} rows`;
  if (k.kind === "looks") return `it ${some(a["look"])}`;
  if (k.kind === "chain") return `${some(a["have"])} chains`;
  if (k.kind === "turning") return "does the chain count?";
  if (k.kind === "balls") return `her yarn has ${some(a["ball"])} a ball`;
  if (k.kind === "yarn") return `she has ${some(a["amount"])}`;
  return `she wants ${some(a["want"])} ${some(a["measure"])}`;
}

/** How it can look, as she says it; the keys are those of the studio (answering/phrases.toml). */
export const LOOKS: [string, string][] = [
  ["ruffles", "ruffles"], ["cups", "cups or curls up"], ["narrows", "gets narrower"], ["slants", "slants"], ["travels", "has a seam that travels"],
  ["corners", "has corners, like a hexagon"], ["waves", "has a border that waves"], ["ripple", "ripples and is narrower than it should be"],
];
/** The questions, as a maker begins them. */
export const ASKED: [Kind, string][] = [
  ["count", "I have … stitches"], ["gauge", "my gauge is …"], ["yarn", "I have … m of yarn"], ["measure", "I want it … around"], ["looks", "it looks wrong"],
  ["chain", "I chained …"], ["turning", "does the chain count?"], ["balls", "how many balls of my yarn?"],
];
/** The rows that a question can be of. */
export const rowsFor = (kind: Kind, rows: AskRow[]): AskRow[] => (kind === "chain" ? rows.filter((r) => r.chained) : kind === "turning" ? rows.filter((r) => r.turning) : rows);
export const OF_A_ROW: Kind[] = ["count", "chain", "turning"];

export interface Group { name: string; short: string; of: Kept[]; said: string }
const TIMES = ["", "once", "twice"];

/** Kept questions that ask the same of the same place are one entry. */
export function groups(kept: Kept[]): Group[] {
  const found = new Map<string, Group>();
  for (const k of kept) {
    const name = k.label || k.section || "The whole", short = inShort(k), key = `${k.section} ${name} ${k.kind} ${short}`;
    const g = found.get(key) ?? { name, short, of: [], said: "" };
    g.of.push(k);
    found.set(key, g);
  }
  for (const g of found.values()) {
    const sizes = [...new Set(g.of.map((k) => k.size))].join(" and "), versions = [...new Set(g.of.map((k) => k.version).filter(Boolean))];
    g.said = `Asked ${TIMES[g.of.length] ?? `${g.of.length} times`}, ${sizes}${versions.length ? `, version ${versions.join(" and ")}` : ""}.`;
  }
  return [...found.values()].reverse();
}

export const NOTES: Record<string, string> = {
  join: "Join into the first st of the round, not into the slip stitch.", first: "The first st of the row goes where the turning chain stands.",
  last: "The last st goes into the top of the turning chain.", chain: "The chain at the beginning is told in the notes: count as it says.",
};
