// Changes of the design on the desk that are made elsewhere than on the sheet: one after the other, each of which can be taken back.
import { ask } from "./api";
import type { Desk } from "./desk.svelte";

export class Steps {
  private past = $state.raw<string[]>([]);
  private future = $state.raw<string[]>([]);
  problem = $state("");
  private queue: Promise<void> = Promise.resolve();

  constructor(readonly desk: Desk) {}

  get canUndo(): boolean { return this.past.length > 0; }
  get canRedo(): boolean { return this.future.length > 0; }

  /** Asks the studio for a changed text and puts it in place of the one that is there; tells whether that was done. */
  change(what: Record<string, unknown>, path = "/api/change"): Promise<boolean> {
    const done = this.queue.then(async () => {
      this.problem = "";
      if (!this.desk.live.writer) { this.problem = "This window only reads the design."; return false; }
      const was = this.desk.live.text;
      try {
        const { text } = await ask<{ text: string }>(path, { text: was, ...what });
        if (this.desk.live.text !== was) { this.problem = "The pattern was changed meanwhile. Once more?"; return false; }
        if (text !== was) { this.past = [...this.past.slice(-99), was]; this.future = []; this.put(text); }
        return true;
      } catch (e) { this.problem = (e as Error).message; return false; }
    });
    this.queue = done.then(() => undefined);
    return done;
  }

  undo(): void {
    const before = this.past.at(-1);
    if (before === undefined) return;
    this.past = this.past.slice(0, -1);
    this.future = [...this.future, this.desk.live.text];
    this.put(before);
  }

  redo(): void {
    const next = this.future.at(-1);
    if (next === undefined) return;
    this.future = this.future.slice(0, -1);
    this.past = [...this.past, this.desk.live.text];
    this.put(next);
  }

  private put(text: string): void {
    this.problem = "";
    this.desk.text = text;
    this.desk.live.write(text);
  }
}
