// Films on the wire (studio/routes/film.py): the plan of a design for the size on camera, its cards, what a log gives, the kit.
import { ask } from "./api";
import type { Run } from "./publishing";

export interface Choice { size: string; terms: string; language: string; left_handed: boolean }
export interface FilmShot {
  number: number; kind: string; section: number; row: number; label: string; say: string; show: string; screen: string; count: number | null; length_s: number; at_s: number; log: string;
}
export interface FilmRow { label: string; words: string; count: number | null; others: (number | null)[]; line: number; log: string }
export interface FilmPlan {
  title: string; size: string; sizes: string[]; terms: string; language: string; languages: string[]; left_handed: boolean; length_s: number; shots: FilmShot[];
  sections: { title: string; rows: FilmRow[] }[]; pieces: { section: string; label: string; count: number | null; work_s: number }[]; notes: string[];
}
export interface FilmCard { name: string; kind: string; section: number; row: number; description: string; whole: boolean }
export interface FilmCards { key: string; cards: FilmCard[] }
export interface FilmTimes {
  why: string; shots: { number: number; section: number; row: number; at_s: number; line: number; alone: boolean }[]; rows: { section: number; row: number; at_s: number }[];
  notes: string[]; chapters: { at: string; title: string }[]; captions: { called: string; tag: string; cues: { start_s: number; end_s: number; lines: string[] }[] }[];
  files: { name: string; text: string; description: string }[]; length_s: number;
}
export interface KeptFilmLog { text: string; sum: string; older: number; read_only: boolean; place: string }
export type Doing = { add: string } | { take_back: string } | { put: string };

/** Null where another one was asked for meanwhile. */
type Made<T> = T & { why?: string; dropped?: true };
async function made<T>(path: string, given: unknown): Promise<T | null> {
  const found = await ask<Made<T>>(path, given);
  if (found.dropped) return null;
  if (found.why) throw new Error(found.why);
  return found;
}

/** What one window asks anew stops what it asked before. */
const mine = Math.random().toString(36).slice(2, 12);
const at = (id: string) => `/api/film/${encodeURIComponent(id)}`;
export const planOf = (id: string, c: Choice) => made<FilmPlan>(`${at(id)}/plan`, { ...c, window: mine });
export const cardsOf = (id: string, c: Choice, shape: string) => made<FilmCards>(`${at(id)}/cards`, { ...c, shape, window: mine });
export const cardAt = (id: string, key: string, n: number) => `${at(id)}/cards/${key}/${n}`;
export const timesOf = (id: string, c: Choice, log: string) => made<FilmTimes>(`${at(id)}/times`, { ...c, log, window: mine });
export const readLog = (id: string, size: string) => ask<KeptFilmLog>(`${at(id)}/log?size=${encodeURIComponent(size)}`);
export const changeLog = (id: string, size: string, doing: Doing[]) => ask<KeptFilmLog>(`${at(id)}/log`, { size, doing });
/** A log that another one took the place of, at a time in seconds; `taps`: how many beginnings it holds. */
export interface OlderFilmLog { number: number; at: number; taps: number }
export const olderLogs = async (id: string, size: string) => (await ask<{ older: OlderFilmLog[] }>(`${at(id)}/log/older?size=${encodeURIComponent(size)}`)).older;
export const olderLog = async (id: string, size: string, number: number) => (await ask<{ text: string }>(`${at(id)}/log/older/${number}?size=${encodeURIComponent(size)}`)).text;
export const beginKit = (id: string, c: Choice, log: string, into: string) => ask<Run>(`${at(id)}/runs`, { ...c, log, into });
export const kitProgress = (id: string, run: string) => ask<Run>(`${at(id)}/runs/${run}`);
export const stopKit = (id: string, run: string) => ask<unknown>(`${at(id)}/runs/${run}`, undefined, "DELETE");
export const kitAt = (id: string, run: string) => `${at(id)}/runs/${run}/files.zip`;

const KINDS: Record<string, string> = {
  start: "the first stitches", same: "in short", repeat: "one repeat", end: "its end", count: "the count", wrong: "what wrong looks like", meet: "we meet again", swap: "the next piece",
  remark: "a remark", measure: "the tape", goal: "what it will be", title: "Title", materials: "Materials", gauge: "Gauge", done: "Done",
};
export const kindOf = (s: FilmShot): string => KINDS[s.kind] ?? s.kind;
/** "Rnd 5, the count"; "Crown, what it will be"; "Title". */
export const nameOf = (s: FilmShot): string => (s.section < 0 ? kindOf(s) : [s.label, kindOf(s)].filter(Boolean).join(", "));
export const LANGUAGES: Record<string, string> = { en: "English", de: "German", fr: "French", es: "Spanish", nl: "Dutch", sv: "Swedish", da: "Danish", pt: "Portuguese", it: "Italian" };

const two = (n: number) => String(n).padStart(2, "0");
/** 72 is "1:12", 3723 is "1:02:03". */
export function clock(s: number): string {
  const w = Math.max(0, Math.floor(s + 1e-6)), h = Math.floor(w / 3600);
  return h ? `${h}:${two(Math.floor(w / 60) % 60)}:${two(w % 60)}` : `${Math.floor(w / 60)}:${two(w % 60)}`;
}
/** To a tenth, as the log has it. */
export const exact = (s: number): string => `${clock(s)}.${Math.floor(s * 10 + 1e-6) % 10}`;
export function seconds(said: string): number | null {
  const m = /^(?:(\d{1,2}):)?(\d{1,3}):(\d{1,2})(?:[.,](\d{1,3}))?$/.exec(said);
  return m ? Number(m[1] ?? 0) * 3600 + Number(m[2]) * 60 + Number(m[3]) + (m[4] ? Number(m[4]) / 10 ** m[4].length : 0) : null;
}
export function minutes(s: number): string {
  const m = Math.max(1, Math.round(s / 60));
  return m < 60 ? `${m} min` : `${Math.floor(m / 60)} h ${two(m % 60)} min`;
}

/** What is filmed of a design, but for the size, which is on the desk: kept in this browser. */
const key = (id: string) => `loopwright film ${id}`;
export function keptChoice(id: string): Choice {
  const plain: Choice = { size: "", terms: "", language: "en", left_handed: false };
  try {
    const kept = JSON.parse(localStorage.getItem(key(id)) ?? "null") as Partial<Choice> | null;
    return kept && typeof kept === "object" ? { size: String(kept.size ?? ""), terms: kept.terms === "us" || kept.terms === "uk" ? kept.terms : "", language: /^[a-z]{2}$/.test(kept.language ?? "") ? String(kept.language) : "en", left_handed: kept.left_handed === true } : plain;
  } catch { return plain; }
}
export function keepChoice(id: string, c: Choice): void { try { localStorage.setItem(key(id), JSON.stringify(c)); } catch { /* no room: it lasts as long as the window */ } }

/** A text as a file of the browser's. */
export function save(name: string, text: string, kind = "text/plain"): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([text], { type: `${kind};charset=utf-8` }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 1000);
}
