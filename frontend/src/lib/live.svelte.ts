// The connection that writes one design: texts go out, what is true of them comes in. Keeps what was typed until it is on disk.
import { ask, Refused } from "./api";
import type { Opened, Seen } from "./wire";

type View = { t: "view"; what: string; size: number | null; ask?: number; revision: number; data?: unknown; error?: string; dropped?: true };
type Message =
  | Seen | View | { t: "saved"; seq: number; sum: string; at: number } | { t: "unsaved"; seq: number; message: string }
  | { t: "changed"; text: string | null; sum: string } | { t: "writer"; you: boolean } | { t: "fault"; seq: number; message: string } | { t: "error"; message: string };

const RETRY_MS = [300, 1000, 2000, 5000];
const PENCIL_MS = 150;
const MOST_SENT = 20;
interface Held { base: string; text: string; sent: string[] }

function heldIn(kept: string | null): Held | null {
  try {
    const read = JSON.parse(kept ?? "null") as Partial<Held> | null;
    return read && typeof read.text === "string" ? { base: String(read.base), text: read.text, sent: Array.isArray(read.sent) ? read.sent : [] } : null;
  } catch { return null; }
}

export class Live {
  seen = $state.raw<Seen | null>(null);
  saved = $state<number | null>(null);
  unsaved = $state("");
  /** Why the text as it is now could not be worked, in words; "" where it was. */
  fault = $state("");
  connected = $state(false);
  stale = $state(false);
  writer = $state(true);
  /** The whole studio is only for reading. */
  readOnly = $state(false);
  changed = $state.raw<{ text: string | null } | null>(null);
  /** Told what another window that writes made of the text: a window that only reads follows it. */
  follows: (text: string) => void = () => undefined;
  /** The text that was seen last: places of findings are of this one. */
  seenText = "";
  /** Whether something that stands here is not on disk yet; and whether it was typed here, not taken up from a window before. */
  private own = false;
  private typed = false;
  lostSince = $state<number | null>(null);
  text = "";
  /** Another gauge that is tried without being written; null for the design's own. */
  gauge = $state<string | null>(null);
  /** The sum of what is on disk, as far as this window knows. */
  base = $state("");
  private place = "";
  /** What was sent since the last word that it is on disk: a text that comes back as another's may be one of these. */
  private sent: string[] = [];
  private seq = 0;
  private answered = 0;
  private socket: WebSocket | null = null;
  private tries = 0;
  private asks = new Map<number, { done: (d: unknown) => void; fail: (e: Error) => void }>();
  private nextAsk = 1;
  private closed = false;
  private pencil: ReturnType<typeof setTimeout> | undefined;

  constructor(readonly id: string) {}

  async open(): Promise<string> {
    const opened = await ask<Opened>(`/api/designs/${encodeURIComponent(this.id)}`);
    this.place = opened.place ?? "";
    this.readOnly = opened.read_only ?? false;
    this.base = opened.sum;
    this.text = opened.text;
    this.saved = opened.saved_at;
    this.takeUp(opened);
    this.connect();
    return this.text;
  }

  private get key(): string { return `loopwright unsaved ${this.place} ${this.id}`; }

  /** What this window, or one before it, typed and never heard to be saved. Where the file is another's, both stand to choose from. */
  private takeUp(opened: Opened): void {
    const held = heldIn(localStorage.getItem(this.key));
    if (!held || held.text === opened.text) { localStorage.removeItem(this.key); return; }
    this.text = held.text;
    this.own = true;
    if (held.base !== opened.sum && !held.sent.includes(opened.text)) this.changed = { text: opened.text };
  }

  private hold(): void {
    try { localStorage.setItem(this.key, JSON.stringify({ base: this.base, text: this.text, sent: this.sent })); } catch { /* no room: the studio saves it anyway */ }
  }

  private connect(): void {
    if (this.closed) return;
    const socket = new WebSocket(`ws://${location.host}/ws/design/${encodeURIComponent(this.id)}`);
    this.socket = socket;
    socket.onopen = () => { this.connected = true; this.lostSince = null; this.tries = 0; this.send(); };
    socket.onmessage = (e) => this.take(JSON.parse(String(e.data)) as Message);
    socket.onclose = () => {
      if (this.socket !== socket) return;
      this.connected = false;
      this.lostSince ??= Date.now();
      for (const a of this.asks.values()) a.fail(new Error("The studio does not answer."));
      this.asks.clear();
      if (!this.closed) setTimeout(() => this.connect(), RETRY_MS[Math.min(this.tries++, RETRY_MS.length - 1)]);
    };
  }

  /** The text as it is now; the studio works the newest only. */
  write(text: string): void {
    this.text = text;
    if (this.writer || !this.connected) { this.own = this.typed = true; this.hold(); }
    this.send();
  }

  /** Every count follows another gauge; the text stays as it is. */
  tryGauge(gauge: string | null): void {
    if (gauge === this.gauge) return;
    this.gauge = gauge;
    this.send();
  }

  private send(): void {
    if (this.socket?.readyState !== WebSocket.OPEN) return;
    this.seq += 1;
    const undecided = this.changed !== null || !this.writer;
    this.socket.send(JSON.stringify({ t: "text", seq: this.seq, text: this.text, ...(undecided ? {} : { base: this.base }), ...(this.gauge ? { gauge: this.gauge } : {}) }));
    if (!undecided) this.sent = [...this.sent, this.text].slice(-MOST_SENT);
    clearTimeout(this.pencil);
    this.pencil = setTimeout(() => { this.stale = this.answered < this.seq; }, PENCIL_MS);
  }

  private take(said: Message): void {
    if (said.t === "seen") {
      if (said.seq !== this.seq) return;
      this.answered = said.seq;
      this.stale = false;
      this.fault = "";
      this.seenText = this.text;
      this.seen = said;
    } else if (said.t === "fault") {
      if (said.seq !== this.seq) return;
      this.answered = said.seq;
      this.fault = said.message;
    } else if (said.t === "saved") {
      this.base = said.sum;
      this.saved = said.at;
      this.unsaved = "";
      if (said.seq === this.seq) { this.own = false; this.sent = []; localStorage.removeItem(this.key); } else this.hold();
    } else if (said.t === "unsaved") this.unsaved = said.message;
    else if (said.t === "changed") this.another(said.text, said.sum);
    else if (said.t === "writer") { const was = this.writer; this.writer = said.you; if (said.you && !was) this.send(); }
    else if (said.t === "view" && said.ask !== undefined) {
      const waiting = this.asks.get(said.ask);
      this.asks.delete(said.ask);
      if (said.dropped) return;
      if (said.error) waiting?.fail(new Error(said.error));
      else waiting?.done(said.data);
    }
  }

  /** A view of the newest text. */
  view<T>(what: string, size: number | null, more: Record<string, unknown> = {}): Promise<T> {
    return new Promise<T>((done, fail) => {
      if (this.socket?.readyState !== WebSocket.OPEN) { fail(new Error("The studio does not answer.")); return; }
      const id = this.nextAsk++;
      this.asks.set(id, { done: done as (d: unknown) => void, fail });
      this.socket.send(JSON.stringify({ t: "view", what, size, ask: id, ...more }));
    });
  }

  /** The file is another than was known: one of our own that the studio saved before it was stopped; or really another's. */
  private another(text: string | null, sum: string): void {
    if (text === this.text || (text !== null && this.sent.includes(text))) { this.base = sum; this.changed = null; if (text !== this.text) this.send(); return; }
    if (!this.writer && !(this.own && this.typed) && text !== null) { this.base = sum; this.text = text; this.follows(text); this.send(); return; }
    this.changed = { text };
  }

  /** Takes what stands on disk, or keeps what stands here over it, also where there is nothing on disk any more. */
  async settle(take: "theirs" | "mine"): Promise<string> {
    let opened: Opened | null = null;
    try { opened = await ask<Opened>(`/api/designs/${encodeURIComponent(this.id)}`); } catch (e) { if (!(e instanceof Refused) || e.status !== 404) throw e; }
    this.base = opened?.sum ?? "";
    this.changed = null;
    this.own = take === "mine";
    this.sent = [];
    if (take === "theirs" && opened) { this.text = opened.text; localStorage.removeItem(this.key); }
    this.reconnect();
    return this.text;
  }

  writeHere(): void { this.socket?.send(JSON.stringify({ t: "write here" })); }

  private reconnect(): void { const old = this.socket; this.socket = null; old?.close(); this.connect(); }

  close(): void { this.closed = true; const old = this.socket; this.socket = null; old?.close(); }
}
