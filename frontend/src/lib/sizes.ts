// The table of sizes as the studio sends it (workshop/sizes.py), and how its numbers are said.
export interface Cell {
  value: number; unit: string; way: string; measure: string; target_mm: number | null; achieved_mm: number | null; error_mm: number | null;
  step_mm: number | null; reason: string; kept: boolean; held: string; equal: number | null; neighbours: { value: number; achieved_mm: number | null }[];
}
export interface BlankRow {
  name: string; sentence: string; plain: string; figures: [number, number][]; measure: string; way: string; multiple: number; sizes: (Cell | null)[];
}
export interface BodyRow { name: string; mm: (number | null)[]; weak: boolean[]; sources: { name: string; addresses: string[] }[] }
export interface GaugeSaid { text: string; written: string | null; stitch: string; row: string; stitches: number | null; rows: number | null; repeats: boolean }
export interface Thought { what: "same" | "falls" | "held"; sizes: string[]; blank?: string; text: string }
export interface SizesTable { sizes: string[]; blanks: BlankRow[]; bodies: BodyRow[]; own_chart: boolean; gauge: GaugeSaid | null; thoughts: Thought[] }
export interface NestFigure {
  name: string; box_mm: [number, number, number, number]; sizes: ({ path: string; folds: string; width_mm: number; height_mm: number } | null)[];
}

export const cm = (mm: number | null | undefined): string => (mm === null || mm === undefined ? "–" : (mm / 10).toFixed(1).replace(/\.0$/, ""));
export const off = (mm: number | null): string => {
  if (mm === null) return "";
  const n = Math.round(Math.abs(mm));
  return n === 0 ? "exact" : `${n} mm ${mm > 0 ? "over" : "under"}`;
};
export const capital = (s: string): string => s.charAt(0).toUpperCase() + s.slice(1);

/** What a change of the table did, in words, for the way back. */
export function changed(what: Record<string, unknown>): string {
  const of = (key: string) => String(what[key] ?? "");
  switch (what["do"]) {
    case "number": return `${of("blank")} in ${of("size")}`;
    case "gauge": return "the gauge";
    case "own chart": return "the chart made the pattern's own";
    case "measurement": return `${of("measure")} of ${of("size")}`;
    case "without size": return `${of("size")} left out`;
    default: return `the sentence of ${of("blank")}`;
  }
}

/** How a cell is read aloud: "child: 84, 49.4 cm, 4 mm over; given here". */
export const heard = (size: string, c: Cell | null): string =>
  !c ? `${size}: none` : `${size}: ${c.value}${c.target_mm === null ? "" : `, ${cm(c.achieved_mm)} cm, ${off(c.error_mm)}`}${c.kept ? "; given here" : ""}`;

/** The columns that there is room for, with the chosen size among them. */
export function around(sizes: number, chosen: number, room: number): number[] {
  const many = Math.max(1, Math.min(sizes, room)), from = Math.max(0, Math.min(sizes - many, chosen - Math.floor(many / 2)));
  return Array.from({ length: many }, (_, i) => from + i);
}
