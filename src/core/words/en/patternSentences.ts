import type {
  LeftOutThing,
  PatternLimit,
  PatternProblem,
  UnreadableReason,
} from "../../problems/patternProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

const times = (count: number, one: string, many: string): string => (count === 1 ? `1 ${one}` : `${count} ${many}`);

const UNREADABLE: Readonly<Record<UnreadableReason, readonly [what: string, remedy: string]>> = {
  "not-xml": ["is not whole XML", "Open it in the program that wrote it and save it once more as plain SVG."],
  "not-svg": ["is XML, but no SVG drawing", "Save the pattern as SVG, DXF or PDF."],
  entities: ["uses entities that are not plain text", "Save it once more as plain SVG."],
  "not-dxf": ["is not a whole DXF drawing", "Save it once more as text DXF (R12 or 2000)."],
  "binary-dxf": ["is a binary DXF", "Save it as text (ASCII) DXF."],
  packed: ["is packed", "Unpack it first and give the file inside."],
  "not-pdf": ["is not a whole PDF", "Fetch or save it once more."],
  "no-such-page": ["has no such page", "Ask for pages that it has."],
  "not-image": ["is not a picture that can be read", "Save it as PNG or JPEG."],
  damaged: ["is damaged or cut short", "Fetch or save it once more."],
  "unknown-kind": ["is no kind of pattern that is known here", "Give SVG, DXF, PDF, PNG or JPEG."],
};

const LIMITS: Readonly<Record<PatternLimit, (limit: number) => string>> = {
  megabytes: (limit) => `is larger than ${limit} MB`,
  lines: (limit) => `has more than ${limit} lines`,
  points: (limit) => `has more than ${limit} points`,
  "style-rules": (limit) => `has more than ${limit} style rules`,
  nesting: (limit) => `is nested more than ${limit} deep`,
  copies: (limit) => `repeats its parts more than ${limit} times`,
  pages: (limit) => `has more than ${limit} pages`,
  megapixels: (limit) => `has more than ${limit} million pixels`,
  seconds: (limit) => `takes more than ${limit} s to read`,
  memory: (limit) => `needs more than ${limit} MB of memory`,
};

const THINGS: Readonly<Record<LeftOutThing, readonly [one: string, many: string]>> = {
  picture: ["picture", "pictures"],
  script: ["script, which was not run", "scripts, which were not run"],
  "outside-reference": [
    "reference to another file, which was not opened",
    "references to other files, which were not opened",
  ],
  entity: ["entity", "entities"],
  hidden: ["hidden thing", "hidden things"],
  "off-layer": ["thing on a layer that is off", "things on layers that are off"],
  "frame-of-text": ["frame of text", "frames of text"],
  "unknown-shape": ["thing of an unknown kind", "things of an unknown kind"],
  solid: ["filled area or body", "filled areas or bodies"],
  dimension: ["dimension", "dimensions"],
};

const UNITS: Readonly<Record<string, string>> = {
  px72: "72 px to the inch",
  px90: "90 px to the inch",
  px96: "96 px to the inch",
  mm: "millimetres",
  cm: "centimetres",
  m: "metres",
  in: "inches",
  ft: "feet",
};
const unitWords = (unit: string): string => UNITS[unit] ?? unit;

/** Makers' own patterns in English. */
export const patternSentences: SentenceTable<PatternProblem> = {
  "pattern-unreadable": ({ reason, line }) => ({
    what: `The file ${UNREADABLE[reason][0]}${line > 0 ? ` (line ${line})` : ""}.`,
    remedy: UNREADABLE[reason][1],
  }),
  "pattern-encrypted": () => ({
    what: "The PDF is locked with a password.",
    remedy: "Open it with its password and save or print it as a PDF without one.",
  }),
  "pattern-empty": () => ({
    what: "There is no line in it that can be seen.",
    remedy: "Check that the lines are not hidden, not on a layer that is off, and not a picture.",
  }),
  "pattern-photo-unscaled": () => ({
    what: "Nothing says how large the picture is: neither our photo sheet nor a sheet of a known size was found in it, and no two points are given.",
    remedy:
      "Print our photo sheet and lay it beside the pattern, all seven rings in sight; or lay the pattern on a light sheet of a known size on a dark ground and name the sheet; or give two points and how far they are apart.",
  }),
  "pattern-photo-error": ({ errorMm, hasPerspective }, say) => ({
    what: `Outlines of this picture may be off by about ${say(errorMm)}${hasPerspective ? "; its perspective was taken out" : ""}.`,
    remedy: hasPerspective
      ? "Measure one length on the pattern and compare."
      : "This holds only if the camera looked straight down; a sheet of a known size takes the perspective out.",
  }),
  "pattern-pages-apart": ({ count }) => ({
    what: `The ${count} pages lie side by side: nothing that is known here says how they belong together.`,
    remedy: "Say how many sheets lie in a row and how wide the border is that is cut off.",
  }),
  "pattern-too-much": ({ of, limit }) => ({
    what: `The file ${LIMITS[of](limit)}, which no pattern needs.`,
    remedy: "Save only the pattern's own lines, without fillings and pictures.",
  }),
  "pattern-unit-assumed": ({ unit }) => ({
    what: `The file does not say how large it is; ${unitWords(unit)} were taken.`,
    remedy: "Compare the sizes with the paper; it can be read in another unit.",
  }),
  "pattern-scale-doubtful": ({ sideMm, wouldBeMm, unit, mended }, say) => ({
    what: mended
      ? `Read as ${unitWords(unit)}: the longest side is ${say(wouldBeMm)} now, not ${say(sideMm)}.`
      : `The longest side comes out as ${say(sideMm)}; with ${unitWords(unit)} it would be ${say(wouldBeMm)}.`,
    remedy: mended
      ? "Compare one side with the paper."
      : `Compare it with the paper; mending "scale", or the unit ${quoted(unit)}, reads it so.`,
  }),
  "pattern-size-unlikely": ({ sizeMm, unit }, say) => ({
    what: `The whole pattern is only ${say(sizeMm)} large.`,
    remedy: `If that is wrong, the unit ${quoted(unit)} reads it as ${unitWords(unit)}.`,
  }),
  "pattern-path-broken": ({ at }) => ({
    what: `The path is faulty after ${times(at, "character", "characters")}; it is drawn up to there.`,
    remedy: "Look whether something is missing, and draw or save it again.",
  }),
  "pattern-numbers-unusable": ({ count }) => ({
    what: `${times(count, "line has", "lines have")} numbers that are none or far too large, and cannot be used.`,
    remedy: "Look at them in the drawing and draw them again.",
  }),
  "pattern-flat": ({ count }) => ({
    what: `${times(count, "line encloses", "lines enclose")} nothing: all its points are one line or one point.`,
    remedy: "Look whether it is scaled to nothing in one direction.",
  }),
  "pattern-left-out": ({ thing, count }) => ({
    what: `Left out: ${times(count, ...THINGS[thing])}.`,
    remedy:
      thing === "hidden" || thing === "off-layer"
        ? "Show it in the drawing if you want it."
        : "Draw it as lines if you want it.",
  }),
  "pattern-gap": ({ gapMm, xMm, yMm, mended }, say) => ({
    what: `The outline is open by ${say(gapMm)} near (${say(xMm)}, ${say(yMm)})${mended ? "; it was closed with a straight line" : ""}.`,
    remedy: mended ? "Look at it there." : 'Mending "gaps" closes it with a straight line.',
  }),
  "pattern-doubled": ({ other, mended }) => ({
    what: `It lies on ${quoted(other)} all along${mended ? "; it was taken out" : ""}.`,
    remedy: mended ? "Nothing is cut twice now." : 'Mending "doubles" takes the second one out.',
  }),
  "pattern-partly-doubled": ({ other, doubledMm, mended }, say) => ({
    what: `${say(doubledMm)} of it ${mended ? "lay on" : "lie on"} a part of ${quoted(other)}${mended ? " and were taken out" : ""}.`,
    remedy: mended ? "Nothing is cut twice now." : 'Mending "doubles" takes that stretch out.',
  }),
  "pattern-crosses-itself": ({ xMm, yMm, count, more, mended }, say) => ({
    what: `The outline crosses itself ${more ? "at least " : ""}${times(count, "time", "times")}, first near (${say(xMm)}, ${say(yMm)})${mended ? "; its largest area was kept" : ""}.`,
    remedy: mended ? "Look at it there." : 'Mending "crossings" keeps the largest area it encloses.',
  }),
  "pattern-sliver": ({ widthMm, lengthMm, mended }, say) => ({
    what: `It is a sliver, ${say(lengthMm)} long and about ${say(widthMm)} wide${mended ? "; it was taken out" : ""}.`,
    remedy: mended ? "Nothing is to be done." : 'Mending "slivers" takes it out.',
  }),
};
