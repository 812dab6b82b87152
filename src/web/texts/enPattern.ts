import type { Mend } from "../../core/patterns/understandPattern.ts";
import { pluralOf } from "../../core/units/numberWords.ts";
import { type Blank, words } from "./words.tsx";

const plural = pluralOf("en");

const say = (text: string): string => text;
const listed = (names: readonly string[]): string =>
  names.length > 4 ? `${names.slice(0, 3).join(", ")} and ${names.length - 3} more` : names.join(", ");

const UNITS: Readonly<Record<string, string>> = {
  mm: "in millimetres",
  cm: "in centimetres",
  m: "in metres",
  in: "in inches",
  ft: "in feet",
};

/** A maker's own pattern on the page, in English. */
export const enPattern = {
  bringIn: say("Pattern of my own"),
  kinds: say("A drawing in SVG, DXF or PDF, or a photograph with our photo sheet in it"),
  heading: say("A pattern of your own"),
  elsewhere: say(
    "Photographs without our photo sheet, and sheets of a PDF that nothing joins, are read by the command line: laywright pattern --help.",
  ),
  states: {
    reading: (file: string) => `Reading ${file} …`,
    stopped: (file: string) => `Reading ${file} was stopped. Choose it once more to begin again.`,
    failed: (file: string) => `${file} could not be read: that is our mistake. Your project is as it was.`,
  },
  photoSheet: say("Photo sheet to print"),
  photoSheetAbout: say(
    "Lay it beside a paper pattern and photograph both: it gives the scale and takes out the slant.",
  ),
  stop: say("Stop reading"),
  leave: say("Leave it out"),
  unit: say("How the numbers in the file are read"),
  asTheFileSays: say("as the file says"),
  units: (unit: string) => UNITS[unit] ?? `with ${unit.slice(2)} px to the inch`,
  came: (file: string, lines: number, unit: Blank) =>
    words(
      `${file} has ${plural(lines, "one line", `${lines} lines`)}, read `,
      unit,
      ". Lay a ruler on the paper and compare one side before you cut.",
    ),
  troubles: say("What was noticed"),
  mends: {
    gaps: "Close the gaps",
    doubles: "Take out the doubles",
    crossings: "Keep the largest area",
    slivers: "Take out the slivers",
    scale: "Read it so",
  } satisfies Record<Mend, string> as Readonly<Record<Mend, string>>,
  change: (fresh: number, gone: number) =>
    `What mending changed: ${plural(fresh, "one line", `${fresh} lines`)} new, ${plural(gone, "one line", `${gone} lines`)} gone`,
  changeKey: say("Thick: as mended. Dashed: as drawn, and gone now. Nothing is in your project yet."),
  asDrawn: say("Leave it as drawn"),
  more: (count: number) => `and ${count} more`,
  lines: say("Lines of the pattern"),
  closed: say("closed"),
  open: say("open"),
  correct: say("Put right by hand"),
  corrected: say("put right by hand"),
  correcting: (name: string) => `${name} by hand`,
  correctAbout: say("The thin line is what was read; other lines of the file lie under it."),
  correctOverPhoto: say("The photograph lies under it, straightened; the thin line is what was read."),
  correctDone: say("Done"),
  asRead: say("As it was read"),
  takenFor: (name: string) => `What ${name} is for`,
  noPanel: say("There is no panel in it yet: no cut line or stitch line closes."),
  becomes: (names: readonly string[], material: Blank, count: Blank) =>
    words(
      `It becomes ${plural(names.length, "one panel", `${names.length} panels`)}: ${listed(names)}. Cut from `,
      material,
      ", ",
      count,
      plural(names.length, " for each bag.", " of each for each bag."),
    ),
  sewn: (allowance: Blank) => words("Where the pattern shows no seam allowance it takes ", allowance, "."),
  material: say("Material of the panels"),
  count: say("Pieces of each panel for a bag"),
  allowance: say("Seam allowance where the pattern shows none"),
  add: (panels: number) => plural(panels, "Add the panel", `Add ${panels} panels`),
  added: (file: string) => `pattern ${file}`,
};
