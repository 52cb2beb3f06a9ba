// The pattern's own words in another language, on the wire (studio/routes/translations.py).
import { ask } from "./api";

/** `text`: without its numbers, "{1}" stands for the first of `numbers`; `lost`: what its translation leaves out. */
export interface Phrase { text: string; where: string; numbers: string[]; said: string; lost: string[] }
/** `left`: translations of words that have left the pattern; they stay in the file. */
export interface OwnWords { code: string; name: string; file: string; there: boolean; read_only: boolean; phrases: Phrase[]; left: number }
export interface BroughtIn extends OwnWords { taken: number; replaced: number; strange: number }

const at = (id: string, code: string) => `/api/publishing/${encodeURIComponent(id)}/words/${code}`;
export const ownWords = (id: string, code: string) => ask<OwnWords>(at(id, code));
export const putWords = (id: string, code: string, said: Record<string, string>) => ask<OwnWords>(at(id, code), { said }, "PUT");
export const bringWords = (id: string, code: string, table: string) => ask<BroughtIn>(`${at(id, code)}/table`, { table });
export const listAt = (id: string, code: string) => `${at(id, code)}/table`;
