// Pictures are asked for one after the other: a browser keeps few connections open, and what is opened or typed must never wait for them.
let before: Promise<void> = Promise.resolve();

/** A picture as an address of this page; null where there is none, or it is not wanted any more. */
export function pictureOf(address: string, stop: AbortSignal): Promise<string | null> {
  const mine = before.then(async () => {
    if (stop.aborted) return null;
    try {
      const answer = await fetch(address, { signal: stop });
      if (answer.status !== 200) return null;
      return URL.createObjectURL(await answer.blob());
    } catch {
      return null;
    }
  });
  before = mine.then(() => undefined);
  return mine;
}
