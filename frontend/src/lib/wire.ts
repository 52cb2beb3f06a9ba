// What the server says: the same names as in the Python that makes it (workshop/live.py, workshop/views.py, studio/routes).

export interface Place { from: number; to: number; line: number }
export interface Edit { from: number; to: number; text: string }
export interface Fix { title: string; safe: boolean; edits: Edit[] }
export type Word = "stops" | "look" | "thought";
export interface Finding extends Place {
  code: string; name: string; severity: "error" | "warning" | "advice"; word: Word; message: string; hints: string[];
  sizes: string[] | null; fix: Fix | null;
  /** What its place is called; on those that are left as they are, the reason. */
  place: string; because?: string;
}
export interface Row extends Place {
  section: string | null; label: string; first: (number | null)[]; counts: (number | null)[]; times: number[];
  /** What it is called in each size ("Rnds 4-9"); the counts of each row that it stands for, where they differ. */
  item: number; labels: string[]; series: (number | null)[][] | null;
  printed: (number | null)[] | null; agrees: boolean | null; read: boolean; why: string | null; made: Record<string, (number | null)[]>;
}
export interface Blank extends Place { name: string; values: (number | null)[] | null }
export type Mark = [number, number, "section" | "name" | "fit" | "special" | "label" | "count" | "stitch", string?];
export interface Seen {
  t: "seen"; seq: number; revision: number; title: string | null; terms: string; sizes: string[]; sample: number; gauge: string | null;
  version: string | null; sections: (Place & { title: string; copies: number })[]; rows: Row[]; blanks: Blank[]; marks: Mark[];
  findings: Finding[]; left: Finding[]; assumptions: (Place & { message: string })[];
  cautions: { text: string; told: boolean; hidden: boolean; sizes: string[] }[];
}
export interface Chart { svg: string; section: string | null; part: string; description: string; notes: string[]; rows: [number, number] }
export interface Stitches {
  origin: number[]; end: number[]; row: number[]; into: number[]; kind: number[]; role: number[]; place: number[];
  kinds: { key: string; short: string; long: string }[]; roles: string[]; places: string[]; round?: number[];
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
/** `place`: the mark of the folder, under which a window keeps what is not saved yet. */
export interface Opened { id: string; text: string; sum: string; saved_at: number; place?: string; read_only?: boolean }
/** An older text of a design that is kept; the newest stands first. */
export interface KeptText { id: string; at: number; why: "work" | "another window" | "changed elsewhere" }
export interface Known {
  stitches: { key: string; short: string; long: string; used: boolean; says: string }[]; sections: string[];
  specials: { name: string; abbreviation: string | null; says: string }[]; blanks: { name: string; sentence: string; values: (number | null)[] }[];
}
export interface HandRow {
  label: string; section: string | null; count: number; unit: string; words: string; again: [number, number] | null; lead: string; repeats: number[]; made: string | null; times: number;
  start: number; end: number; nth: number; of: number; joined: boolean; right_side: boolean | null; line: number | null;
}
export interface InHandRows { rows: HandRow[]; why?: string; title?: string | null; sizes?: string[] }
