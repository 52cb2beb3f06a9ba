// Photographs of a design, on the wire (studio/routes/photographs.py).
import { ask, Refused } from "./api";

/** `where`: "cover", a section, or "" for the first one; `alt`: what it shows. */
export interface NamedPhotograph { file: string; where: string; alt: string; there: boolean }
/** `others`: what lies in the folder and is not named in this pattern. */
export interface PhotographList { named: NamedPhotograph[]; sections: string[]; others: string[]; read_only: boolean; most_bytes: number }

const at = (id: string) => `/api/publishing/${encodeURIComponent(id)}/photographs`;
export const listPhotographs = (id: string, text: string) => ask<PhotographList>(`${at(id)}/list`, { text });
export const lineAt = (id: string) => `${at(id)}/line`;
export const shownAt = (id: string, file: string) => `${at(id)}/shown?file=${encodeURIComponent(file)}`;
export const layAside = (id: string, file: string) => ask<{ to: string }>(`${at(id)}/aside`, { file });

/** Puts a file into the folder; gives the name that it got there. */
export async function bringPhotograph(id: string, file: File): Promise<string> {
  let answer: Response;
  try {
    answer = await fetch(`${at(id)}?called=${encodeURIComponent(file.name.slice(0, 200))}`, { method: "POST", headers: { "content-type": "application/octet-stream" }, body: file });
  } catch { throw new Refused("The studio does not answer. Is it still running?", 0, null); }
  const body = (await answer.json().catch(() => null)) as { file?: string; error?: string } | null;
  if (!answer.ok || !body?.file) throw new Refused(body?.error ?? `The studio said ${answer.status}.`, answer.status, body);
  return body.file;
}
