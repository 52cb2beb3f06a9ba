// Captions of a lesson: dropped on any window, chosen or pasted; the draft that they make (studio/routes/listen.py).
import { ask } from "./api";
import { where } from "./places.svelte";
import { voice } from "./say.svelte";

export interface LessonRow { section: string | null; label: string; line: number; read: boolean; counts: (number | null)[]; at_s: number | null; until_s: number | null }
export interface Doubt { at_s: number | null; words: string; assumed: string; line: number | null }
export interface Cue { at_s: number | null; until_s: number | null; line: number; pieces: { words: string; line: number | null }[] }
export interface Lesson {
  title: string | null; terms: string; sizes: string[]; rows: LessonRow[]; text: string; doubts: Doubt[]; note: string | null; cues: Cue[]; timed: boolean; log: string;
  findings: { line: number; severity: string; message: string; hints: string[] }[];
}
export const MOST = 2_000_000;
const KEY = "loopwright captions";
const CAPTIONS = /\.(?:vtt|srt)$/i;
const mine = Math.random().toString(36).slice(2, 12);

class Listening {
  name = $state("");
  captions = "";
  found = $state.raw<Lesson | null>(null);
  busy = $state(false);
  problem = $state("");
  private asked = 0;

  /** What this tab took down last, when its page is opened anew. */
  restore(): void {
    if (this.found || this.busy || this.problem) return;
    try { const kept = JSON.parse(sessionStorage.getItem(KEY) ?? "null") as { name: string; captions: string } | null; if (typeof kept?.captions === "string") void this.take(kept.captions, String(kept.name)); } catch { /* nothing kept */ }
  }

  async file(file: File): Promise<void> {
    if (file.size > MOST) { this.problem = `${file.name} is longer than 2,000,000 bytes: give its captions in two parts.`; voice.say(this.problem); return; }
    const bytes = await file.arrayBuffer();
    try { await this.take(new TextDecoder("utf-8", { fatal: true }).decode(bytes), file.name); } catch (e) {
      if (e instanceof TypeError) { this.problem = `${file.name} is no text in UTF-8: save the captions as WebVTT, SRT or plain text.`; voice.say(this.problem); } else throw e;
    }
  }

  /** Takes captions down. What is asked anew outruns what was asked before. */
  async take(captions: string, name: string, terms = ""): Promise<void> {
    const turn = ++this.asked;
    this.captions = captions;
    this.name = name;
    this.problem = "";
    if (captions.length > MOST) { this.problem = "These captions are longer than 2,000,000 characters: give them in two parts."; return; }
    this.busy = true;
    try {
      const found = await ask<Lesson & { dropped?: true }>("/api/listen", { captions: captions.replaceAll("\0", ""), name: name.slice(0, 200), terms, window: mine });
      if (turn !== this.asked || found.dropped) return;
      this.found = found;
      voice.say(found.note ?? `${found.rows.length} rows heard, ${found.doubts.length} doubts.`);
      try { sessionStorage.setItem(KEY, JSON.stringify({ name, captions })); } catch { /* no room: they last as long as the page */ }
    } catch (e) { if (turn === this.asked) { this.problem = (e as Error).message; this.found = null; } }
    if (turn === this.asked) this.busy = false;
  }

  forget(): void { this.asked += 1; this.found = null; this.captions = ""; this.name = ""; this.busy = false; this.problem = ""; try { sessionStorage.removeItem(KEY); } catch { /* nothing kept */ } }
}

export const listening = new Listening();

/** Captions that are dropped on any window open a draft; other files are never opened in the place of the studio. */
export function takeDropped(): () => void {
  const files = (e: DragEvent) => e.dataTransfer?.types.includes("Files") ?? false;
  const inEditor = (e: DragEvent) => e.target instanceof Element && !!e.target.closest(".cm-editor");
  const over = (e: DragEvent) => { if (files(e)) e.preventDefault(); };
  const drop = (e: DragEvent) => {
    const file = [...(e.dataTransfer?.files ?? [])].find((f) => CAPTIONS.test(f.name) || where.place === "Listen");
    if (!file) { if (files(e) && !inEditor(e)) e.preventDefault(); return; }
    e.preventDefault();
    e.stopPropagation();
    if (where.place !== "Listen") where.go("Listen");
    void listening.file(file);
  };
  addEventListener("dragover", over, true);
  addEventListener("drop", drop, true);
  return () => { removeEventListener("dragover", over, true); removeEventListener("drop", drop, true); };
}
