// Where one is: place and design stand in the address, so that the browser's back key works and every place can be kept.
export const PLACES = ["Designs", "Write", "Sizes", "Swatches", "Questions", "Editing", "Publish", "Film"] as const;
export type PlaceName = (typeof PLACES)[number];

class Where {
  place = $state<PlaceName>("Designs");
  design = $state<string | null>(null);
  size = $state<number | null>(null);
  line = $state<number | null>(null);

  constructor() {
    this.read();
    addEventListener("popstate", () => this.read());
  }

  private read(): void {
    const [, first = "", design] = location.pathname.split("/");
    this.place = PLACES.find((p) => p.toLowerCase() === first) ?? "Designs";
    this.design = design ? decodeURIComponent(design) : null;
  }

  address(place: PlaceName, design: string | null = this.design): string {
    if (place === "Designs") return "/";
    return `/${place.toLowerCase()}${design ? `/${encodeURIComponent(design)}` : ""}`;
  }

  go(place: PlaceName, design: string | null = this.design): void {
    if (design !== this.design) { this.size = null; this.line = null; }
    history.pushState(null, "", this.address(place, design));
    this.place = place;
    this.design = place === "Designs" ? null : design;
  }
}

export const where = new Where();
