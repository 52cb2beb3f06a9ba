// F6 from part to part of a place: the hem, the name, the across arm, what is written, what it makes.
const PARTS = [".hem a[aria-current]", ".hem a", ".name", ".across [tabindex='0'], .across .station", ".sheet, .grid, main", ".made .views [aria-pressed=true], .made"];

export function nextPart(step: 1 | -1): void {
  const found = PARTS.map((p) => document.querySelector<HTMLElement>(p)).filter((e, i, all): e is HTMLElement => !!e && e.offsetParent !== null && !(i === 1 && all[0]));
  const active = document.activeElement;
  const at = found.findIndex((e) => e === active || e.contains(active) || (e.closest(".hem, .across, .made") ?? e).contains(active) && active !== document.body);
  const next = found[at < 0 ? (step > 0 ? 0 : found.length - 1) : (at + step + found.length) % found.length];
  if (!next) return;
  if (next.tabIndex < 0 && !next.hasAttribute("tabindex")) next.tabIndex = -1;
  next.focus();
}
