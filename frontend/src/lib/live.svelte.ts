// The connection that writes one design: texts go out, what is true of them comes in. Keeps what was typed until it is on disk.
import { ask } from "./api";
import type { Opened, Seen } from "./wire";

type View = { t: "view"; what: string; size: number | null; ask?: number; revision: number; data?: unknown; error?: string };
type Message =
  | Seen | View | { t: "saved"; seq: number; sum: string; at: number } | { t: "unsaved"; seq: number; message: string }
  | { t: "changed"; text: string | null } | { t: "writer"; you: boolean } | { t: "fault"; seq: number; message: string } | { t: "error"; message: string };

const RETRY_MS = [300, 1000, 2000, 5000];
const PENCIL_MS = 150;

export class Live {
  seen = $state.raw<Seen | null>(null);
  saved = $state<number | null>(null);
  unsaved = $state("");
  connected = $state(false);
  stale = $state(false);
  writer = $state(true);
  changed = $state.raw<{ text: string | null } | null>(null);
  lostSince = $state<number | null>(null);
  text = "";
  private base = "";
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
    const kept = localStorage.getItem(this.key);
    this.base = opened.sum;
    this.text = opened.text;
    this.saved = opened.saved_at;
    if (kept) {
      const held = JSON.parse(kept) as { base: string; text: string };
      if (held.base === opened.sum && held.text !== opened.text) this.text = held.text;
      else localStorage.removeItem(this.key);
    }
    this.connect();
    return this.text;
  }

  private get key(): string { return `loopwright unsaved ${this.id}`; }

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
    try { localStorage.setItem(this.key, JSON.stringify({ base: this.base, text })); } catch { /* no room: the studio saves it anyway */ }
    this.send();
  }

  private send(): void {
    if (this.socket?.readyState !== WebSocket.OPEN) return;
    this.seq += 1;
    this.socket.send(JSON.stringify({ t: "text", seq: this.seq, text: this.text, base: this.base }));
    clearTimeout(this.pencil);
    this.pencil = setTimeout(() => { this.stale = this.answered < this.seq; }, PENCIL_MS);
  }

  private take(said: Message): void {
    if (said.t === "seen") {
      if (said.seq !== this.seq) return;
      this.answered = said.seq;
      this.stale = false;
      this.seen = said;
    } else if (said.t === "saved") {
      this.base = said.sum;
      this.saved = said.at;
      this.unsaved = "";
      if (said.seq === this.seq) localStorage.removeItem(this.key);
    } else if (said.t === "unsaved") this.unsaved = said.message;
    else if (said.t === "changed") this.changed = { text: said.text };
    else if (said.t === "writer") this.writer = said.you;
    else if (said.t === "view" && said.ask !== undefined) {
      const waiting = this.asks.get(said.ask);
      this.asks.delete(said.ask);
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

  /** Takes what stands on disk, or keeps what stands here over it. */
  async settle(take: "theirs" | "mine"): Promise<string> {
    const opened = await ask<Opened>(`/api/designs/${encodeURIComponent(this.id)}`);
    this.base = opened.sum;
    this.changed = null;
    if (take === "theirs") this.text = opened.text;
    this.reconnect();
    return this.text;
  }

  writeHere(): void { this.socket?.send(JSON.stringify({ t: "write here" })); }

  private reconnect(): void { const old = this.socket; this.socket = null; old?.close(); this.connect(); }

  close(): void { this.closed = true; const old = this.socket; this.socket = null; old?.close(); }
}
