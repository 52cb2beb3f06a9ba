// When counts and findings are said: a count when the caret leaves a row or the keys rest for a second, a finding once.
import { tapeOf } from "../editor/tape";
import { keyOf, saidOf, sentence } from "../editor/notes";
import type { Desk } from "./desk.svelte";
import { voice } from "./say.svelte";
import type { Row, Seen } from "./wire";

const REST_MS = 1000;
const number = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`;

/** What stands open, counted: "1 stops here, 2 to look at again". */
export function openOnes(open: { error: number; warning: number; advice: number }): string {
  return [
    open.error ? `${number(open.error, "stops", "stop")} here` : "", open.warning ? `${open.warning} to look at again` : "",
    open.advice ? number(open.advice, "thought", "thoughts") : "",
  ].filter(Boolean).join(", ");
}

export function summary(seen: Seen): string {
  const of = (s: string) => seen.findings.filter((f) => f.severity === s).length;
  const open = openOnes({ error: of("error"), warning: of("warning"), advice: of("advice") });
  return `${number(seen.rows.length, "row", "rows")} read. ${number(seen.sizes.length, "size", "sizes")}. ${open || "Nothing open"}.`;
}

export class Told {
  private known = new Set<string>();
  private line = 0;
  private touched: number | null = null;
  private first = true;
  private timer: ReturnType<typeof setTimeout> | undefined;

  constructor(private readonly desk: Desk) {}

  /** The text was seen: the first time in short, later only what is new once the keys rest. */
  seen(seen: Seen): void {
    if (this.first) {
      this.first = false;
      for (const f of seen.findings) this.known.add(keyOf(f));
      voice.say(summary(seen));
    }
  }

  typed(line: number): void {
    this.touched = line;
    this.line = line;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.rest(), REST_MS);
  }

  moved(line: number): void {
    if (line === this.line) return;
    const was = this.line;
    this.line = line;
    if (this.touched === was) { clearTimeout(this.timer); setTimeout(() => this.rest(was), 150); return; }
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.arrived(), REST_MS);
  }

  /** In a row by the arrow keys: what it makes and what is open there, once the caret rests; walking past says nothing. */
  private arrived(): void {
    const { seen, size } = this.desk, row = seen?.rows.find((r) => r.line === this.line), notes = seen?.findings.filter((f) => f.line === this.line) ?? [];
    if (!this.desk.penDown || !seen || !row && !notes.length) return;
    voice.say([row ? counted(row, size) : "", ...notes.slice(0, 2).map((f) => `${saidOf(f)} ${sentence(f.message)}`)].filter(Boolean).join(" "));
  }

  private rest(line: number = this.line): void {
    this.touched = null;
    const { seen, size } = this.desk;
    if (!seen) return;
    const row = seen.rows.find((r) => r.line === line), fresh = seen.findings.filter((f) => !this.known.has(keyOf(f)));
    for (const f of fresh) this.known.add(keyOf(f));
    const said = [row ? counted(row, size) : "", ...fresh.slice(0, 2).map((f) => `${f.place}. ${saidOf(f)} ${sentence(f.message)}`)].filter(Boolean);
    if (said.length) voice.say(said.join(" "));
  }

  stop(): void { clearTimeout(this.timer); }
}

export function counted(row: Row, size: number): string {
  const t = tapeOf(row, size), name = row.labels[size] || row.label || row.section || "This row";
  return t.said === "–" ? `${name}: not counted.` : `${name}: ${t.lead.replace("×", "rows of")}${t.said}${t.claim ? `, ${t.claim}` : ""}.`;
}
