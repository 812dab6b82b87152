import type { PatternRole } from "./patternOutline.ts";

/**
 * Words that a maker or a program may name a line or layer with, English and German, by what the line is for.
 * Common practice, no source; our own files' layers are among them. A word counts where it begins a part of a name.
 */
const WORDS: readonly (readonly [PatternRole, readonly string[]])[] = [
  ["fold", ["fold", "crease", "bruch", "umbruch", "falz", "falt"]],
  ["notch", ["notch", "knips", "passzeichen", "balance"]],
  ["grain", ["grain", "fadenlauf", "strichrichtung", "nap"]],
  ["drill", ["drill", "punch", "awl", "hole", "bohr", "loch", "locher"]],
  ["stitch", ["stitch", "sew", "seam", "net", "topstitch", "naht", "steppnaht", "nähen", "naehen", "netto"]],
  ["cut", ["cut", "cutting", "cutline", "outline", "schnitt", "zuschnitt", "schneiden", "umriss", "kontur"]],
  ["mark", ["mark", "marking", "placement", "tape", "markierung", "anzeichnen"]],
  [
    "other",
    ["label", "labels", "text", "sheet", "page", "frame", "border", "title", "cloth", "flaw", "areas", "ruler"],
  ],
  ["other", ["blatt", "seite", "rahmen", "beschriftung", "defpoints", "viewport", "guide", "guides", "hilfslinie"]],
];

/** Words that do not stand for the beginning of a longer one, as `stitch` does for `stitching`. */
const WHOLE_ONLY = new Set(["net", "nap", "cut", "sew", "hole", "loch", "page", "text", "areas", "mark", "tape"]);

/** What a name says a line is for; null when it says nothing. Frames and labels are meant only by the whole name. */
export function roleOfName(name: string): PatternRole | null {
  const parts = name
    .replace(/(\p{Ll})(\p{Lu})/gu, "$1 $2")
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((part) => part !== "");
  for (const [role, words] of WORDS) {
    if (role === "other" && parts.length > 1) continue;
    for (const part of parts)
      for (const word of words) if (part === word || (!WHOLE_ONLY.has(word) && part.startsWith(word))) return role;
  }
  return null;
}

/**
 * Layers of sewn-product patterns in DXF by their number: boundary, notches, mirror line, grain, internal lines and
 * cut-outs, drill holes, sew line; turn and curve points and check curves repeat other lines.
 * Source: ASTM D6673 (sewn product pattern data), from memory.
 */
const NUMBERED: ReadonlyMap<string, PatternRole> = new Map([
  ["1", "cut"],
  ["2", "other"],
  ["3", "other"],
  ["4", "notch"],
  ["5", "other"],
  ["6", "fold"],
  ["7", "grain"],
  ["8", "mark"],
  ["9", "mark"],
  ["10", "mark"],
  ["11", "cut"],
  ["13", "drill"],
  ["14", "stitch"],
  ["15", "other"],
  ["80", "notch"],
  ["81", "notch"],
  ["82", "notch"],
  ["83", "notch"],
  ["84", "other"],
  ["85", "other"],
  ["86", "other"],
  ["87", "other"],
]);

/** What a numbered layer of a DXF pattern is for; null when its name is no such number. */
export function roleOfNumber(layer: string): PatternRole | null {
  return NUMBERED.get(layer.trim()) ?? null;
}
