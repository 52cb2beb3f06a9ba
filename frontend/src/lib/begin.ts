// The guided beginning (workshop/begin.py): what a plain pattern tells, and the design proposed for it.
import { ask } from "./api";
import type { Word } from "./wire";

export const KEEP = "keep";
export interface Looked {
  title: string; worked_in: string; gauge: string; item: string; scaled: boolean; usual_sizes: string[]; known_sizes: string[]; sizes: string[]; graded: boolean;
}
export interface Way { sentence: string; evidence: string; target_mm: number | null; achieved_mm: number | null }
export interface ProposedBlank { name: string; unit: string; value: number; graded_back: number | null; facts: string[]; reasons: Way[] }
export interface Proposed {
  problem?: string; title: string; item: string; worked_in: string; sizes: string[]; blanks: ProposedBlank[]; source_of_habits: string; text: string; kept: string[];
  now: Record<string, string>; gauge: string; table: { sizes: string[]; blanks: Record<string, number[]> }; own: Record<string, number>;
  findings: { word: Word; message: string; hints: string[]; sizes: string[] | null }[]; problems: Record<string, string>;
}
export interface Wanted { worked_in: string; gauge: string; sizes: string[]; choices: Record<string, string> }

export const look = (text: string) => ask<Looked>("/api/begin/look", { text });
export const propose = (text: string, wanted: Wanted) => ask<Proposed>("/api/begin", { text, ...wanted });
