// Changes that other places than the sheet make to a design's text: put in whole, saved by the connection, and taken back one by one.
import type { Desk } from "./desk.svelte";
import { voice } from "./say.svelte";

interface Step { id: string; before: string; after: string; said: string }

class Put {
  steps = $state.raw<Step[]>([]);

  /** Writes a text in one step; `said` tells a screen reader, and the way back, what was done. */
  text(desk: Desk, after: string, said: string): void {
    if (after === desk.text || !desk.live.writer) return;
    this.steps = [...this.steps, { id: desk.id, before: desk.text, after, said }];
    this.write(desk, after);
    voice.say(said);
  }

  /** The last step that can still be taken back: nothing was written over it since. */
  last(desk: Desk): Step | undefined {
    const step = this.steps.at(-1);
    return step?.id === desk.id && step.after === desk.text ? step : undefined;
  }

  takeBack(desk: Desk): void {
    const step = this.last(desk);
    if (!step) return;
    this.steps = this.steps.slice(0, -1);
    this.write(desk, step.before);
    voice.say(`Taken back: ${step.said}`);
  }

  private write(desk: Desk, text: string): void {
    desk.text = text;
    desk.mark(null);
    desk.live.write(text);
  }
}

export const put = new Put();
