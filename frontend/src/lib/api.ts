// Requests to the studio on this machine. Every failure becomes a sentence that can be shown.

export class Refused extends Error {
  constructor(message: string, readonly status: number, readonly body: unknown) { super(message); }
}

export async function ask<T>(path: string, given?: unknown, method = given === undefined ? "GET" : "POST"): Promise<T> {
  let answer: Response;
  try {
    answer = await fetch(path, given === undefined ? { method } : { method, headers: { "content-type": "application/json" }, body: JSON.stringify(given) });
  } catch {
    throw new Refused("The studio does not answer. Is it still running?", 0, null);
  }
  const body: unknown = await answer.json().catch(() => null);
  if (!answer.ok) {
    const said = body && typeof body === "object" && "error" in body ? String(body.error) : `The studio said ${answer.status}.`;
    throw new Refused(said, answer.status, body);
  }
  return body as T;
}

/** Styles inside drawings are let in by the page's nonce only. */
export const nonce = document.querySelector<HTMLMetaElement>('meta[name="style-nonce"]')?.content ?? "";
export const withNonce = (svg: string): string => svg.replaceAll("<style", `<style nonce="${nonce}"`);
