// The log of a film as it is tapped: shown at once, kept in this window until the studio has it, sent again until it does.
import { changeLog, exact, readLog, seconds, type Doing } from "./film";
import { Refused } from "./api";

const RETRY_MS = [300, 1000, 2000, 5000];
const TAKEN_BACK = "# taken back: ";
const UNDOABLE = /^(?:\d|# camera )/;
const began = Date.now() - performance.now();
/** A clock that nobody sets back while the window is open. */
const now = (): number => began + performance.now();

function done(text: string, one: Doing): string {
  const lines = text ? text.replace(/\n$/, "").split("\n") : [];
  if ("put" in one) return one.put && !one.put.endsWith("\n") ? `${one.put}\n` : one.put;
  if ("add" in one) return lines.includes(one.add) || lines.includes(TAKEN_BACK + one.add) ? text : [...lines, one.add, ""].join("\n");
  const at = lines.lastIndexOf(one.take_back);
  return at < 0 ? text : [...lines.map((l, i) => (i === at ? TAKEN_BACK + l : l)), ""].join("\n");
}

/** Whether the camera is on, and since when: as the log itself says, so that a window that is opened again goes on. */
function cameraIn(lines: string[]): { on: boolean; base: number; since: number } | null {
  const m = /^# camera (on|off) (\S+)(?: at (\S+))?$/.exec(lines.findLast((l) => l.startsWith("# camera ")) ?? ""), base = m?.[2] ? seconds(m[2]) : null;
  if (!m || base === null) return null;
  const since = Date.parse(m[3] ?? "");
  return { on: m[1] === "on" && !Number.isNaN(since), base, since };
}

/** What a window before this one held back. */
function heldIn(key: string): Doing[] {
  try { const read: unknown = JSON.parse(localStorage.getItem(key) ?? "[]"); return Array.isArray(read) ? read as Doing[] : []; } catch { return []; }
}

export interface Tap { at_s: number; what: string; line: string }

export class FilmLog {
  /** The text as it stands, with what the studio has not heard of yet; its lines, and those in which something begins. Plain state: it
   *  outlives whatever made it. */
  text = $state("");
  lines = $state.raw<string[]>([]);
  taps = $state.raw<Tap[]>([]);
  private camera = $state.raw<{ on: boolean; base: number; since: number } | null>(null);
  private kept = "";
  private waiting: Doing[] = [];
  unsent = $state(0);
  older = $state(0);
  loaded = $state(false);
  readOnly = $state(false);
  problem = $state("");
  /** The studio answers, and does not take it: `problem` says why. */
  refused = $state(false);
  lostSince = $state<number | null>(null);
  private place = "";
  private sending = false;
  private tries = 0;
  private over = false;

  constructor(readonly design: string, readonly size: string) { void this.load(); }

  private stand(kept: string, waiting: Doing[]): void {
    this.kept = kept;
    this.waiting = waiting;
    this.unsent = this.readOnly ? 0 : waiting.length;
    const text = waiting.reduce(done, kept);
    if (text === this.text) return;
    this.text = text;
    this.lines = text ? text.replace(/\n$/, "").split("\n") : [];
    this.taps = this.lines.flatMap((line): Tap[] => {
      const m = /^(\S+)\s+(?!#)(.+)$/.exec(line), at = m?.[1] ? seconds(m[1]) : null;
      return at === null || !m?.[2] ? [] : [{ at_s: at, what: m[2], line }];
    });
    this.camera = cameraIn(this.lines);
  }

  private get key(): string { return `loopwright film log ${this.place} ${this.design} ${this.size}`; }

  private async load(): Promise<void> {
    try {
      const found = await readLog(this.design, this.size);
      if (this.over) return;
      const early = this.key;
      this.place = found.place;
      this.older = found.older;
      this.readOnly = found.read_only;
      this.stand(found.text, [...heldIn(this.key), ...(this.waiting.length ? [] : heldIn(early)), ...this.waiting]);
      localStorage.removeItem(early);
      this.hold();
      this.loaded = true;
      void this.send();
    } catch (e) {
      this.problem = (e as Error).message;
      if (!this.over && (!(e instanceof Refused) || e.status === 0)) setTimeout(() => void this.load(), 2000);
    }
  }

  private do(...doing: Doing[]): void {
    this.stand(this.kept, [...this.waiting, ...doing]);
    this.hold();
    void this.send();
  }

  private hold(): void {
    try { if (this.waiting.length) localStorage.setItem(this.key, JSON.stringify(this.waiting)); else localStorage.removeItem(this.key); } catch { /* no room: the studio keeps it */ }
  }

  private async send(): Promise<void> {
    if (this.sending || this.readOnly || !this.loaded || !this.waiting.length) return;
    this.sending = true;
    const going = this.waiting.slice(0, 200);
    try {
      const found = await changeLog(this.design, this.size, going);
      this.older = found.older;
      this.stand(found.text, this.waiting.slice(going.length));
      this.hold();
      this.tries = 0;
      this.problem = "";
      this.refused = false;
      this.lostSince = null;
    } catch (e) {
      this.problem = (e as Error).message;
      this.refused = e instanceof Refused && e.status === 422;
      this.lostSince ??= Date.now();
      await new Promise((r) => setTimeout(r, RETRY_MS[Math.min(this.tries++, RETRY_MS.length - 1)]));
    }
    this.sending = false;
    if (!this.over && this.waiting.length) void this.send();
  }

  get on(): boolean { return this.camera?.on ?? false; }
  get begun(): boolean { return this.camera !== null; }
  /** Seconds of film so far. */
  elapsed(): number {
    const last = this.taps.reduce((m, t) => Math.max(m, t.at_s), 0), c = this.camera;
    return Math.max(last, c ? c.base + (c.on ? (now() - c.since) / 1000 : 0) : last);
  }

  /** Something begins now. The first tap turns the clock on. Gives the second. */
  tap(what: string, title: string): number {
    const doing: Doing[] = [];
    if (!this.lines.length) doing.push({ add: `# ${title}` });
    let at = this.elapsed();
    while (this.lines.some((l) => l === `${exact(at)} ${what}` || l === `${TAKEN_BACK}${exact(at)} ${what}`)) at += 0.1;
    if (!this.on) doing.push({ add: `# camera on ${exact(at)} at ${new Date(now()).toISOString()}` });
    this.do(...doing, { add: `${exact(at)} ${what}` });
    return at;
  }
  /** A word for whoever cuts the film: no part of the plan. */
  remark(words: string): void { this.do({ add: `${exact(this.elapsed())} # ${words}` }); }
  turn(): void { const at = exact(this.elapsed()); this.do({ add: this.on ? `# camera off ${at}` : `# camera on ${at} at ${new Date(now()).toISOString()}` }); }
  /** Takes the last tap back; it stays in the log as a remark. Gives its line. */
  undo(): string {
    const line = this.lines.findLast((l) => UNDOABLE.test(l)) ?? "";
    if (line) this.do({ take_back: line });
    return line;
  }
  get canUndo(): boolean { return this.lines.some((l) => UNDOABLE.test(l)); }
  /** Another log in its place, or an empty one: the one before is kept under a number. */
  put(text: string): void { this.do({ put: text.replaceAll("\r\n", "\n") }); }
  close(): void { this.over = true; }
}
