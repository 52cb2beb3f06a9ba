// Where one is: place and design stand in the address, so that the browser's back key works and every place can be kept.
export const PLACES = ["Designs", "Write", "Sizes", "Swatches", "Questions", "Editing", "Publish", "Film"] as const;
/** In hand is reached from the sheet, with H: it has no hem. Begin is reached from Designs, and ends on a new sheet; so does
 * Listen, which captions open wherever they are dropped. Beside the camera is reached from Film. */
export type PlaceName = (typeof PLACES)[number] | "In hand" | "Begin" | "Listen" | "Beside the camera";
const OTHERS: Record<string, PlaceName> = { hand: "In hand", begin: "Begin", listen: "Listen", camera: "Beside the camera" };
const ALONE: PlaceName[] = ["Designs", "Begin", "Listen"];

class Where {
  place = $state<PlaceName>("Designs");
  design = $state<string | null>(null);
  size = $state<number | null>(null);
  line = $state<number | null>(null);
  /** The design that lay on the desk last: the other places go back to it. */
  last: string | null = null;

  constructor() {
    this.read();
    addEventListener("popstate", () => this.read());
  }

  private read(): void {
    const [, first = "", design] = location.pathname.split("/");
    this.place = OTHERS[first] ?? PLACES.find((p) => p.toLowerCase() === first) ?? "Designs";
    this.design = design ? decodeURIComponent(design) : null;
    this.last = this.design ?? this.last;
  }

  address(place: PlaceName, design: string | null = this.design ?? this.last): string {
    if (place === "Designs") return "/";
    const other = Object.keys(OTHERS).find((k) => OTHERS[k] === place);
    if (ALONE.includes(place)) return `/${other}`;
    return `/${other ?? place.toLowerCase()}${design ? `/${encodeURIComponent(design)}` : ""}`;
  }

  go(place: PlaceName, design: string | null = this.design ?? this.last): void {
    if (design !== this.design) { this.size = null; this.line = null; }
    history.pushState(null, "", this.address(place, design));
    this.place = place;
    this.design = ALONE.includes(place) ? null : design;
    this.last = design ?? this.last;
  }
}

export const where = new Where();
