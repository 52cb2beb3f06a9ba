// Where one is: place and design stand in the address, so that the browser's back key works and every place can be kept.
export const PLACES = ["Designs", "Write", "Sizes", "Swatches", "Questions", "Editing", "Publish"] as const;
/** In hand is reached from the sheet, with H: it has no hem. Begin is reached from Designs, and ends on a new sheet. */
export type PlaceName = (typeof PLACES)[number] | "In hand" | "Begin";

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
    this.place = first === "hand" ? "In hand" : first === "begin" ? "Begin" : PLACES.find((p) => p.toLowerCase() === first) ?? "Designs";
    this.design = design ? decodeURIComponent(design) : null;
    this.last = this.design ?? this.last;
  }

  address(place: PlaceName, design: string | null = this.design ?? this.last): string {
    if (place === "Designs") return "/";
    if (place === "Begin") return "/begin";
    return `/${place === "In hand" ? "hand" : place.toLowerCase()}${design ? `/${encodeURIComponent(design)}` : ""}`;
  }

  go(place: PlaceName, design: string | null = this.design ?? this.last): void {
    if (design !== this.design) { this.size = null; this.line = null; }
    history.pushState(null, "", this.address(place, design));
    this.place = place;
    this.design = place === "Designs" || place === "Begin" ? null : design;
    this.last = design ?? this.last;
  }
}

export const where = new Where();
