import { z } from "zod";
import type { LengthUnit } from "../../units/length.ts";
import type { DrawingRole, LineWish, LineWishes, MachineSettings, OutputSettings } from "../outputSettings.ts";
import { DRAWING_ROLES, USUAL_OUTPUT } from "../outputSettings.ts";
import { expected, group, type IssueSink, lengthField, list, report, text, yesNo } from "./fields.ts";
import { PAPERS, paperOf } from "../papers.ts";
import { SIZE } from "./shapeFields.ts";

/** A sheet must take the 10 cm test square with room around it, and fit a printer that exists. */
const PAPER_SIDE = { minMm: 140, maxMm: 3000 };
const MARGIN = { minMm: 0, maxMm: 50 };
/** What must be left of a sheet between its margins and its overlap, or taping would never end. */
const LEAST_STEP = 40;

/** How sheets, files and texts are to come out. */
export function outputField(unit: LengthUnit): z.ZodType<OutputSettings> {
  const square = lengthField(unit, { minMm: 50, maxMm: 150 }).default(100);
  const paper = z.union([
    group({ width: lengthField(unit, PAPER_SIDE), height: lengthField(unit, PAPER_SIDE) }),
    z.enum(PAPERS.map(({ id }) => id)),
  ], expected("paper"));
  return group({
    paper: paper.default("A4"),
    orientation: z.enum(["portrait", "landscape", "fewest"]).default(USUAL_OUTPUT.orientation),
    pageMargin: lengthField(unit, MARGIN).default(USUAL_OUTPUT.pageMargin),
    overlap: lengthField(unit, MARGIN).default(USUAL_OUTPUT.overlap),
    sheets: z.enum(["everything", "curved"]).default(USUAL_OUTPUT.sheets),
    rollWidth: lengthField(unit, { minMm: 200, maxMm: 5000 }).default(USUAL_OUTPUT.rollWidth),
    testSquare: group({ x: square, y: square }).default(USUAL_OUTPUT.testSquare),
    lengths: z
      .enum(["mm", "cm", "m", "in/16", "in/32", "yd/8"])
      .default(unit === "in" || unit === "yd" ? "in/16" : "mm"),
    letters: z.enum(["text", "outlines"]).default(USUAL_OUTPUT.letters),
    sharedEdges: z.enum(["once", "each"]).default(USUAL_OUTPUT.sharedEdges),
    lines: linesField(unit).default({}),
    machine: machineField(unit).optional(),
  }).transform((output, context): OutputSettings => {
    reportSmallPaper(output, context);
    reportSharedCutLayer(output.lines, context);
    return { ...output, machine: output.machine ?? null };
  });
}

function machineField(unit: LengthUnit): z.ZodType<MachineSettings> {
  return group({
    bedWidth: lengthField(unit, SIZE),
    bedHeight: lengthField(unit, SIZE),
    grip: lengthField(unit, { minMm: 0, maxMm: 1000 }).default(0),
    kerf: lengthField(unit, { minMm: 0, maxMm: 5 }).default(0),
    tool: z.enum(["knife", "laser"]),
    bladeOffset: lengthField(unit, { minMm: 0, maxMm: 5 }).default(0),
    overcut: lengthField(unit, { minMm: 0, maxMm: 10 }).default(0),
    order: z.enum(["nearest", "piece"]).default("nearest"),
  }).transform((machine, context) => {
    const { tool, kerf, bladeOffset, overcut, grip, bedWidth, bedHeight } = machine;
    if (tool === "laser" && bladeOffset > 0)
      report(context, { code: "laser-has-no-blade", key: "bladeOffset" }, ["bladeOffset"]);
    if (tool === "laser" && overcut > 0)
      report(context, { code: "laser-has-no-blade", key: "overcut" }, ["overcut"]);
    if (tool === "knife" && kerf > 0 && bladeOffset > 0)
      report(context, { code: "kerf-and-blade", kerfMm: kerf, bladeOffsetMm: bladeOffset }, ["kerf"]);
    const left = Math.min(bedWidth, bedHeight) - 2 * grip;
    if (left <= 0) report(context, { code: "grip-eats-bed", gripMm: grip, sideMm: left + 2 * grip }, ["grip"]);
    return machine;
  });
}

function linesField(unit: LengthUnit) {
  const line = () =>
    group({
      layer: readable(31, /^[\w$-]+$/u, "layer-name-unusable").optional(),
      color: readable(7, /^#[\da-f]{6}$/iu, "color-unreadable").optional(),
      width: lengthField(unit, { minMm: 0.01, maxMm: 5 }).optional(),
      dash: list(lengthField(unit, { minMm: 0.1, maxMm: 100 }), 0, 8).optional(),
      draw: yesNo().optional(),
    }).optional();
  return group({
    cut: line(),
    fold: line(),
    stitch: line(),
    tape: line(),
    mark: line(),
    grain: line(),
    flaw: line(),
    cloth: line(),
    label: line(),
    sheet: line(),
  } satisfies Readonly<Record<DrawingRole, z.ZodType<LineWish | undefined>>>);
}

function readable(longest: number, shape: RegExp, code: "layer-name-unusable" | "color-unreadable") {
  return text(200).transform((value, context) => {
    if (value.length > longest || !shape.test(value)) report(context, { code, value });
    return value;
  });
}

/** Whatever lies on the layer of the cuts is cut. Layer names in DXF are capitals, so case does not tell them apart. */
function reportSharedCutLayer(lines: LineWishes, sink: IssueSink): void {
  const name = (role: DrawingRole): string => (lines[role]?.layer ?? role).toUpperCase();
  const role = DRAWING_ROLES.find((one) => one !== "cut" && name(one) === name("cut"));
  if (role === undefined) return;
  const at = lines[role]?.layer === undefined ? "cut" : role;
  report(sink, { code: "layer-is-cut", layer: name("cut"), role }, ["lines", at, "layer"]);
}

function reportSmallPaper(
  output: Pick<OutputSettings, "paper" | "pageMargin" | "overlap" | "testSquare">,
  sink: IssueSink,
): void {
  const { paper, pageMargin, overlap, testSquare } = output;
  const side = paperOf(paper).width;
  const usable = ((side - 2 * pageMargin) * Math.min(testSquare.x, testSquare.y)) / 100;
  if (usable - overlap >= LEAST_STEP) return;
  const facts = { sideMm: side, marginMm: pageMargin, overlapMm: overlap };
  report(sink, { code: "paper-too-small", ...facts }, ["paper"]);
}
