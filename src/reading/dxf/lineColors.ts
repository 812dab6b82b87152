/** The first colours of a DXF drawing's index; 7 is black on paper. Source: DXF reference, group code 62. */
const FIRST: readonly (string | null)[] = [
  null,
  "#ff0000",
  "#ffff00",
  "#00ff00",
  "#00ffff",
  "#0000ff",
  "#ff00ff",
  "#000000",
  "#808080",
  "#c0c0c0",
];

/** Colour of an index; null for one that has no common name. */
export function indexedColor(index: number): string | null {
  return FIRST[Math.abs(index)] ?? null;
}

/** Colour of a 24-bit number (group code 420). */
export function trueColor(value: number): string | null {
  return value >= 0 && value <= 0xffffff ? `#${Math.trunc(value).toString(16).padStart(6, "0")}` : null;
}
