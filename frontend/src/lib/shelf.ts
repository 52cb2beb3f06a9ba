// The shelf of yarns and swatches (studio/routes/swatches.py).
import { ask } from "./api";

export interface Used { id: string; title: string; yarn?: boolean }
export interface Yarn { id: number; name: string; weight: number | null; fibre: string; ball_g: number | null; ball_m: number | null; colours: string[]; used_in: Used[] }
export interface Swatch {
  id: number; yarn: number; hook_mm: number; stitch: string; stitches: number; width_mm: number; rows: number; height_mm: number; rounds: boolean; washed: boolean;
  mass_g: number | null; note: string; made_at_s: number; stitch_mm: number; row_mm: number; m_per_100: number | null; gauge: string; hook: string; used_in: Used[];
}
export interface Shelf {
  yarns: Yarn[]; swatches: Swatch[]; weights: { number: number; name: string; also: string[] }[]; hooks: { mm: number; us: string }[]; read_only: boolean;
}
export type Kind = "yarns" | "swatches";

export const shelf = {
  all: () => ask<Shelf>("/api/shelf"),
  put: (kind: Kind, thing: Record<string, unknown>, id = 0) => ask<{ id: number }>(`/api/shelf/${kind}${id ? `/${id}` : ""}`, thing, id ? "PUT" : "POST"),
  take: (kind: Kind, id: number) => ask<object>(`/api/shelf/${kind}/${id}`, undefined, "DELETE"),
  back: (kind: Kind, id: number) => ask<object>(`/api/shelf/${kind}/${id}/back`, {}),
};

/** A number as it is typed; null for nothing, NaN for what is none. */
export const number = (said: string): number | null => (said.trim() ? Number(said.trim().replace(",", ".")) : null);
export const plain = (n: number | null | undefined): string => (n === null || n === undefined ? "" : String(Math.round(n * 100) / 100));
export const per10 = (mm: number): string => plain(100 / mm);
