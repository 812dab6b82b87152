import type { OptionSpec } from "../command.ts";

/** Options that stand in for output settings of the project file, for this run alone. */
export const OUTPUT_OPTIONS: readonly OptionSpec[] = [
  {
    name: "paper",
    value: "P",
    help: 'paper: A0 … A5, Letter, Legal, Tabloid, ASME A … E, or a size such as "13 x 19 in"',
  },
  { name: "page-margin", value: "L", help: "edge of the sheet that the printer leaves free (10 mm)" },
  { name: "overlap", value: "L", help: "how far neighbouring sheets lie over each other (10 mm)" },
  { name: "sheets", value: "WHAT", help: "everything, or curved: rectangles are listed by size instead of drawn" },
  { name: "roll-width", value: "L", help: "width of the copy shop's paper roll (914.4 mm, 36 in)" },
  { name: "test-square", value: "X x Y", help: 'what the 100 mm square measures on paper, as "99.2 x 100.4 mm"' },
  { name: "letters", value: "HOW", help: "in SVG and DXF: text, or outlines, which look alike everywhere" },
  {
    name: "shared-edges",
    value: "HOW",
    help: "in SVG and DXF: once, or each: every piece a closed outline, cut twice",
  },
  {
    name: "blade-offset",
    value: "L",
    help: "how far the machine's knife trails; set the machine's own offset to 0",
  },
  { name: "overcut", value: "L", help: "how far its knife runs on past corners; pieces lie as far apart" },
  { name: "cut-order", value: "HOW", help: "on mats: nearest, or piece: one piece done before the next" },
  {
    name: "settings",
    value: "JSON",
    help: 'any output settings, as in the file: \'{"lines": {"cut": {"layer": "BLADE"}}}\'',
  },
];

/** Options that offer what lies in a cupboard. */
export const FROM_CUPBOARD_OPTIONS: readonly OptionSpec[] = [
  {
    name: "cupboard",
    value: "FILE",
    help: "offer what lies in this cupboard of each cloth, to be used up first; the plan names pieces by their labels",
  },
  {
    name: "shade",
    value: "NAME",
    help: "with --cupboard: only pieces of this shade, and those of which none is said",
  },
];
