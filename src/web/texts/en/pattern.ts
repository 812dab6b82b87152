import type { Mend } from "../../../core/patterns/understandPattern.ts";
import { pluralOf } from "../../../core/units/numberWords.ts";
import { type Blank, words } from "../words.tsx";

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
  lie: {
    sheets: (way: Blank) => words("Its sheets lie ", way, "."),
    sheetsLabel: say("How the sheets lie"),
    sheetWays: { marked: say("as their match marks say"), rows: say("edge to edge in rows") },
    inRows: (columns: Blank, rows: Blank, trim: Blank) =>
      words(columns, " in a row, ", rows, " rows, from the top left; ", trim, " is cut off every side."),
    columnsLabel: say("Sheets in a row"),
    rowsLabel: say("Rows of sheets"),
    trimLabel: say("Cut off every side of a sheet"),
    scale: (way: Blank) => words("Its scale comes from ", way, "."),
    scaleLabel: say("What gives the photograph its scale"),
    scaleWays: {
      "photo-sheet": say("our photo sheet in it"),
      paper: say("the sheet of paper it lies on"),
      corners: say("the corners of that sheet, which I press"),
      points: say("two points I press, photographed from straight above"),
    },
    paper: (paper: Blank) => words("That sheet is ", paper, ", light on a dark table."),
    paperLabel: say("Size of the sheet"),
    apart: (length: Blank) => words("They are ", length, " apart."),
    apartLabel: say("How far the two points are apart"),
    photo: say("Your photograph"),
    press: (wanted: number, pressed: number) =>
      pressed < wanted
        ? `Press ${wanted === 4 ? "the corner" : "point"} ${pressed + 1} of ${wanted} in the photograph${wanted === 4 ? ", clockwise from the upper left" : ""}.`
        : "Press near a place to move it.",
    place: (n: number, x: Blank, y: Blank) => words(`Place ${n}: `, x, " px across, ", y, " px down."),
    placeLabel: (n: number, isAcross: boolean) => `Place ${n}, ${isAcross ? "across" : "down"}, in pixels`,
  },
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
