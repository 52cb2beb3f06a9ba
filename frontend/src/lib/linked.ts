// Words of an edition and the characters of the pattern that they come from: the thing that is marked in one is lit in the other.
/** From and to in the words, from and to in the pattern. */
export type Link = [number, number, number, number];
export interface Said { kind: string; text: string; line: number | null; links: Link[] }
export interface Piece { text: string; link: Link | null; lit: boolean }

/** The words of a row in pieces: each with the innermost link that it stands in; `marked`: what is marked in the pattern. */
export function pieces(row: Said, marked: { from: number; to: number } | null): Piece[] {
  const cuts = new Set([0, row.text.length]);
  for (const [a, b] of row.links) { cuts.add(a); cuts.add(b); }
  const at = [...cuts].sort((a, b) => a - b), lit = marked ? best(row.links, marked) : null, made: Piece[] = [];
  for (let i = 0; i + 1 < at.length; i++) {
    const a = at[i] ?? 0, b = at[i + 1] ?? 0;
    const link = row.links.filter((l) => l[0] <= a && b <= l[1]).sort((x, y) => x[1] - x[0] - (y[1] - y[0]))[0] ?? null;
    made.push({ text: row.text.slice(a, b), link, lit: !!lit && lit[0] <= a && b <= lit[1] });
  }
  return made;
}

/** The link of what is marked: the very one, else the smallest that holds it. */
function best(links: Link[], m: { from: number; to: number }): Link | null {
  return links.find((l) => l[2] === m.from && l[3] === m.to) ?? links.filter((l) => l[2] <= m.from && m.to <= l[3]).sort((x, y) => x[3] - x[2] - (y[3] - y[2]))[0] ?? null;
}
