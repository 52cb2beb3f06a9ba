// What the server says: the same names as in the Python that makes it (workshop/live.py, workshop/views.py, studio/routes).

export interface Place { from: number; to: number; line: number }
export interface Edit { from: number; to: number; text: string }
export interface Fix { title: string; safe: boolean; edits: Edit[] }
export type Word = "stops" | "look" | "thought";
export interface Finding extends Place {
  code: string; name: string; severity: "error" | "warning" | "advice"; word: Word; message: string; hints: string[];
  sizes: string[] | null; fix: Fix | null;
}
export interface Row extends Place {
  section: string | null; label: string; first: (number | null)[]; counts: (number | null)[]; times: number[];
  printed: (number | null)[] | null; agrees: boolean | null; read: boolean; why: string | null; made: Record<string, (number | null)[]>;
}
export interface Blank extends Place { name: string; values: (number | null)[] | null }
export type Mark = [number, number, "section" | "name" | "fit" | "special" | "label" | "count" | "stitch", string?];
export interface Seen {
  t: "seen"; seq: number; revision: number; title: string | null; terms: string; sizes: string[]; sample: number; gauge: string | null;
  version: string | null; sections: (Place & { title: string; copies: number })[]; rows: Row[]; blanks: Blank[]; marks: Mark[];
  findings: Finding[]; assumptions: (Place & { message: string })[];
  cautions: { text: string; told: boolean; hidden: boolean; sizes: string[] }[];
}
export interface Chart { svg: string; section: string | null; part: string; description: string; notes: string[]; rows: [number, number] }
export interface Stitches {
  origin: number[]; end: number[]; row: number[]; into: number[]; kind: number[]; role: number[]; place: number[];
  kinds: { key: string; short: string; long: string }[]; roles: string[]; places: string[];
  rows: { label: string; section: string | null; start: number; end: number; item: number; right_side: boolean; joined: boolean; turned: boolean; counted: number }[];
  why?: string;
}
export interface DesignCard {
  id: string; title: string; saved_at?: number; sizes?: string[]; rows?: number; unread?: number; terms?: string; error?: string;
  open?: { error: number; warning: number; advice: number };
}
export interface FolderListing {
  folder: string; read_only: boolean; designs: DesignCard[]; starting_points: { name: string; title: string; about: string }[];
}
export interface Opened { id: string; text: string; sum: string; saved_at: number }
