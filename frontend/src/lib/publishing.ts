// Publishing on the wire (studio/routes/publishing.py), and editions as a sentence.
import { ask } from "./api";

export interface PlanFile { name: string; format: string; size: string; description: string }
export interface Plan { files: PlanFile[]; many: number; missing: string[]; kept: string[]; languages: string[]; folder: string; read_only: boolean }
export interface Run {
  id: string; what: string; share: number; done: boolean; why_not: string; faults: string[]; files: { name: string; description: string }[]; notes: string[]; into: string; packed: boolean;
}
export interface Change { severity: string; what: string; section: string | null; label: string | null; erratum: { where: string; what: string; concerned: string; unconcerned: string; follows: string } }
export interface Changes {
  kept: string; identical: boolean; wording_only: boolean; none: boolean; changes: Change[]; change_list: { heading: string; lines: string[] }; text: string;
  old: { edition: { name: string } | null }; new: { edition: { name: string } | null }; warnings: string[];
}
export interface Asked {
  sizes: number[]; formats: string[]; papers: string[]; terms: string[]; languages: string[]; large_print: boolean; left_handed: boolean; ink_saving: boolean; words_only: boolean; package: boolean;
}

const at = (id: string) => `/api/publishing/${encodeURIComponent(id)}`;
export const plan = (id: string, asked: Asked) => ask<Plan>(`${at(id)}/plan`, asked);
export const look = (id: string, asked: Asked, file: string) => ask<{ key: string; pages: number }>(`${at(id)}/pages`, { ...asked, file });
export const looking = (id: string) => ask<{ what: string; share: number }>(`${at(id)}/looking`);
export const stopLooking = (id: string) => ask<unknown>(`${at(id)}/looking`, undefined, "DELETE");
export const pageAt = (id: string, key: string, n: number) => `${at(id)}/pages/${key}/${n}`;
export const begin = (id: string, asked: Asked, into: string, draft: boolean) => ask<Run>(`${at(id)}/runs`, { ...asked, into, draft });
export const progress = (id: string, run: string) => ask<Run>(`${at(id)}/runs/${run}`);
export const stop = (id: string, run: string) => ask<unknown>(`${at(id)}/runs/${run}`, undefined, "DELETE");
export const packedAt = (id: string, run: string) => `${at(id)}/runs/${run}/files.zip`;
export const changes = (id: string) => ask<{ changes: Changes | null }>(`${at(id)}/changes`);
export const keepVersion = (id: string) => ask<{ kept: string }>(`${at(id)}/keep`, {});

export const FORMATS: [string, string][] = [["pdf", "pages"], ["html", "a web page"], ["epub", "a book"], ["text", "plain text"], ["markdown", "Markdown"], ["data", "data"]];
export const PAPERS: [string, string][] = [["a4", "A4"], ["letter", "Letter"], ["phone", "a phone"]];
export const TERMS: [string, string][] = [["us", "US terms"], ["uk", "UK terms"]];
const LANGUAGES: Record<string, string> = { en: "English", de: "German", fr: "French", es: "Spanish", nl: "Dutch", sv: "Swedish", da: "Danish", pt: "Portuguese", it: "Italian" };
export const languageName = (code: string): string => LANGUAGES[code] ?? code;
export const PRINTS: [keyof Asked, string][] = [["large_print", "large print"], ["left_handed", "for the left hand"], ["ink_saving", "saving ink"], ["words_only", "words only"]];

/** "A4 and Letter", "pages, a web page and a book". */
export function list(words: string[]): string {
  return words.length < 2 ? words[0] ?? "" : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
