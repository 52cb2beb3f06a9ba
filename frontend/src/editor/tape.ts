// The down arm beside the words: what every row makes in the chosen size; unrolled, what it makes in every size.
import { StateField, type EditorState, type Extension, type Range, RangeSet } from "@codemirror/state";
import { Decoration, EditorView, GutterMarker, WidgetType, gutter, gutterLineClass, type DecorationSet } from "@codemirror/view";
import type { Row } from "../lib/wire";
import { marked, setMarked, setTruth, truth } from "./truth";

export interface Told { said: string; lead: string; claim: string }

/** What the tape says beside a row: "40", "48 to 80", "10 × 84", "–". */
export function tapeOf(row: Row, size: number): Told {
  const last = row.counts[size] ?? null, first = row.first[size] ?? null, times = row.times[size] ?? 0, printed = row.printed?.[size] ?? null;
  const claim = row.agrees === false && printed !== null && printed !== last ? `said ${printed}` : "";
  if (!row.read || last === null) return { said: "–", lead: "", claim: row.read ? claim : "" };
  if (times > 1 && first !== null && first !== last) return { said: String(last), lead: `${first} to `, claim };
  return { said: String(last), lead: times > 1 ? `${times} × ` : "", claim };
}

function piece(tag: string, name: string, ...inside: (Node | string)[]): HTMLElement {
  const made = document.createElement(tag);
  made.className = name;
  made.append(...inside);
  return made;
}

class Count extends GutterMarker {
  constructor(readonly told: Told[]) { super(); }
  override eq(other: Count): boolean {
    return other.told.length === this.told.length && this.told.every((t, i) => { const o = other.told[i]; return o?.said === t.said && o.lead === t.lead && o.claim === t.claim; });
  }
  override toDOM(): HTMLElement {
    const cell = piece("div", "count has");
    for (const t of this.told) {
      cell.append(piece("span", "fig", ...(t.lead ? [piece("span", "many", t.lead)] : []), t.said));
      if (t.claim) cell.append(piece("span", "claim", t.claim));
    }
    return cell;
  }
}

/** The rows by the beginning of their line: a line may hold several. */
function byLine(state: EditorState): [number, Row[]][] {
  const { seen } = state.field(truth), found = new Map<number, Row[]>();
  for (const r of seen?.rows ?? []) {
    if (r.from > state.doc.length) continue;
    const at = state.doc.lineAt(r.from).from, rows = found.get(at);
    if (rows) rows.push(r); else found.set(at, [r]);
  }
  return [...found].sort((a, b) => a[0] - b[0]);
}

function field(make: (rows: Row[], state: EditorState) => GutterMarker): StateField<RangeSet<GutterMarker>> {
  const build = (state: EditorState) => RangeSet.of(byLine(state).map(([at, rows]) => make(rows, state).range(at)));
  return StateField.define<RangeSet<GutterMarker>>({
    create: build,
    update: (value, tr) => (tr.effects.some((e) => e.is(setTruth)) ? build(tr.state) : tr.docChanged ? value.map(tr.changes) : value),
  });
}

const counts = field((rows, state) => new Count(rows.map((r) => tapeOf(r, state.field(truth).size))));

class Here extends GutterMarker { override elementClass = "here"; }
const HERE = new Here();
const here = StateField.define<RangeSet<GutterMarker>>({
  create: () => RangeSet.empty,
  update(value, tr) {
    if (!tr.effects.some((e) => e.is(setMarked))) return tr.docChanged ? value.map(tr.changes) : value;
    const { line } = tr.state.field(marked);
    return line && line <= tr.state.doc.lines ? RangeSet.of([HERE.range(tr.state.doc.line(line).from)]) : RangeSet.empty;
  },
  provide: (f) => gutterLineClass.from(f),
});

export const tape: Extension = [counts, here, gutter({ class: "tape", side: "after", markers: (view) => view.state.field(counts) })];

/** All sizes of one row: a cell for each, or one dimension line where every size is the same. */
export function rolled(row: Row, size: number, names: readonly string[], named: boolean): HTMLElement {
  const counts = row.counts, times = row.times, same = counts.length > 1 && counts[0] != null && new Set(counts).size === 1 && new Set(times).size === 1;
  const roll = piece("div", `roll${same ? " one" : ""}`);
  roll.dataset["n"] = String(counts.length);
  if (same) { roll.append(piece("span", "same fig", tapeOf(row, 0).said)); return roll; }
  const end = (i: number) => (row.labels[i] ?? "").split(" ").at(-1)?.split("-").at(-1) ?? "", word = (row.labels[0] ?? "").split(" ")[0]?.replace(/s$/, "") ?? "";
  const uneven = new Set(times).size > 1;
  counts.forEach((c, i) => {
    const cell = piece("span", `cell fig${i === size ? " on" : ""}`);
    if (named) cell.append(piece("span", "to", names[i] ?? ""));
    cell.append(c == null ? "–" : String(c));
    if (uneven && c != null) cell.append(piece("span", "to", row.series && word ? `to ${word} ${end(i)}` : `${times[i]} ${times[i] === 1 ? "row" : "rows"}`));
    roll.append(cell);
  });
  return roll;
}

class Cells extends GutterMarker {
  constructor(readonly row: Row, readonly size: number, readonly names: readonly string[]) { super(); }
  override eq(other: Cells): boolean { return other.row === this.row && other.size === this.size; }
  override toDOM(): HTMLElement { return rolled(this.row, this.size, this.names, false); }
}

const cells = field((rows, state) => { const { seen, size } = state.field(truth); return new Cells(rows.at(-1) as Row, size, seen?.sizes ?? []); });

class Room extends WidgetType {
  override eq(): boolean { return true; }
  override toDOM(): HTMLElement { return piece("div", "room"); }
}

/** A line of room under rows that end differently in different sizes: what is said about it stands there. */
const room = blocks((row) => (new Set(row.times).size > 1 ? new Room() : null));

/** Beside the tape, at desk width. */
export const unrolled: Extension = [cells, room, gutter({ class: "sizes", side: "after", markers: (view) => view.state.field(cells) })];

class Below extends WidgetType {
  constructor(readonly row: Row, readonly size: number, readonly names: readonly string[]) { super(); }
  override eq(other: Below): boolean { return other.row === this.row && other.size === this.size; }
  override toDOM(): HTMLElement { const roll = rolled(this.row, this.size, this.names, true); roll.classList.add("below"); return roll; }
}

/** Under the rows, where there is no room beside the tape. */
export const unrolledBelow = blocks((row, state) => { const { seen, size } = state.field(truth); return new Below(row, size, seen?.sizes ?? []); });

/** A block under every row that gets one. */
function blocks(make: (row: Row, state: EditorState) => WidgetType | null): StateField<DecorationSet> {
  const under = (state: EditorState) => Decoration.set(byLine(state).flatMap(([at, rows]): Range<Decoration>[] => {
    const row = rows.at(-1), widget = row ? make(row, state) : null;
    return widget ? [Decoration.widget({ widget, block: true, side: 2 }).range(state.doc.lineAt(at).to)] : [];
  }), true);
  return StateField.define<DecorationSet>({
    create: under,
    update: (value, tr) => (tr.effects.some((e) => e.is(setTruth)) ? under(tr.state) : tr.docChanged ? value.map(tr.changes) : value),
    provide: (f) => EditorView.decorations.from(f),
  });
}
