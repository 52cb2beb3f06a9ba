// Where a maker is in a design, by design and size; kept in this browser.
export interface HandPlace { row: number; repeat: number }

const key = (design: string, size: string): string => `loopwright in hand ${design} ${size}`;

export function placeOf(design: string, size: string): HandPlace | null {
  try {
    const kept = JSON.parse(localStorage.getItem(key(design, size)) ?? "null") as HandPlace | null;
    return kept && Number.isInteger(kept.row) ? { row: Math.max(0, kept.row), repeat: Math.max(0, kept.repeat || 0) } : null;
  } catch { return null; }
}

export function keepPlace(design: string, size: string, at: HandPlace): void {
  try { localStorage.setItem(key(design, size), JSON.stringify(at)); } catch { /* no room: the place lasts as long as the window */ }
}

/** The size that was worked last; the whole design has one. */
export function sizeInHand(design: string): string | null { return localStorage.getItem(`loopwright in hand ${design}`); }
export function keepSize(design: string, size: string): void { try { localStorage.setItem(`loopwright in hand ${design}`, size); } catch { /* as above */ } }

/** Keeps the screen on while the work is in hand, where the browser can. Gives what lets it sleep again. */
export function stayAwake(): () => void {
  let lock: WakeLockSentinel | null = null, over = false;
  const take = async () => {
    if (over || document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
    try { lock = await navigator.wakeLock.request("screen"); if (over) void lock.release(); } catch { /* a low battery: the screen may sleep */ }
  };
  void take();
  document.addEventListener("visibilitychange", take);
  return () => { over = true; document.removeEventListener("visibilitychange", take); void lock?.release(); };
}
