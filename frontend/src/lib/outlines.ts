// Outlines that stand in for a fabric until it is drawn, and for starting points: by a word of the name or of what is said about it.
const DRAWN: [RegExp, string, string][] = [
  [/bonnet/i, "Bonnet", "M20 58V32C20 14 36 6 52 6c18 0 28 12 28 26L62 58zM26 58c-2 5-1 8-5 12M62 58c1 5 5 7 4 12"],
  [/\bhat\b|beanie|beret|\bcap\b/i, "Hat", "M14 70V44C14 24 28 14 48 14s34 10 34 30v26zM14 59h68"],
  [/mitt|glove/i, "Mitten", "M32 70V40C32 18 38 4 50 4s18 14 18 36v30zM68 38c5-9 15-6 14 3c-1 8-8 13-14 16M32 58h36"],
  [/shawl|triangle/i, "Shawl", "M4 24H92L48 70zM48 24v46"],
  [/\bbag\b|basket/i, "Bag", "M18 32h60l-5 38H23zM32 32C32 4 64 4 64 32"],
  [/boot|slipper|sock/i, "Bootie", "M26 14h26v28c0 4 4 6 12 7c12 1 20 6 20 21H26zM26 26h26"],
  [/cardigan|sweater|jumper|\bvest\b|\btop\b/i, "Cardigan", "M34 10L16 18L4 46l12 6l8-16v34h48V36l8 16l12-6l-12-28l-18-8c-4 8-24 8-28 0zM48 16v54"],
  [/cushion|pillow/i, "Cushion", "M18 8c20 4 40 4 60 0c-4 20-4 40 0 60c-20-4-40-4-60 0c4-20 4-40 0-60z"],
  [/\btoy\b|bird|doll/i, "Toy", "M28 46c0-12 10-20 22-20c4 0 6-1 8-4c3-5 13-6 16 1c1 3 1 6-1 9c4 22-10 32-24 32c-12 0-21-7-21-18zM74 24c8 1 13 5 15 13M40 62v8M52 63v7"],
  [/square/i, "Square", "M20 14h56v56H20zM30 24h36v36H30zM40 34h16v16H40zM48 38v8M44 42h8"],
  [/panel|filet|curtain/i, "Panel", "M14 10h68v60H14zM14 25h68M14 40h68M14 55h68M31 10v60M48 10v60M65 10v60"],
  [/ripple|blanket|afghan|throw/i, "Blanket", "M10 12l10 6l9-6l10 6l9-6l10 6l9-6l10 6l9-6v50l-9 6l-10-6l-9 6l-10-6l-9 6l-10-6l-9 6l-10-6zM10 36l10 6l9-6l10 6l9-6l10 6l9-6l10 6l9-6"],
];
const ANY = "M17 62c8-6 13-14 13-23c0-11-5-17-13-17S4 28 4 39c0 9 5 17 13 23M30 62h20c12-8 20-20 20-34c0-13-7-20-18-20S34 15 34 28c0 14 8 26 20 34h38";

/** The outline's path in a field of 96 by 70, standing on its lower edge, and what such a thing is called. */
export function outline(...said: string[]): { path: string; name: string } {
  for (const words of said) for (const [is, name, path] of DRAWN) if (is.test(words)) return { path, name };
  return { path: ANY, name: "" };
}
