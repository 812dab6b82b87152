import { z } from "zod";
import type { LengthUnit } from "../../units/lengthWords.ts";
import { LAYER_NAME, outputProblems } from "../outputProblems.ts";
import type { DrawingRole, LineWish, MachineSettings, OutputSettings } from "../outputSettings.ts";
import { OUTPUT_CHOICES, USUAL_OUTPUT } from "../outputSettings.ts";
import { PAPERS } from "../papers.ts";
import { expected, group, lengthField, list, report, text, yesNo } from "./fields.ts";
import { SIZE } from "./shapeFields.ts";

/** A sheet must take the 10 cm test square with room around it, and fit a printer that exists. */
const PAPER_SIDE = { minMm: 140, maxMm: 3000 };
const MARGIN = { minMm: 0, maxMm: 50 };
/** How sheets, files and texts are to come out. */
export function outputField(unit: LengthUnit): z.ZodType<OutputSettings> {
  const square = lengthField(unit, { minMm: 50, maxMm: 150 }).default(100);
  const paper = z.union(
    [
      group({ width: lengthField(unit, PAPER_SIDE), height: lengthField(unit, PAPER_SIDE) }),
      z.enum(PAPERS.map(({ id }) => id)),
    ],
    expected("paper"),
  );
  return group({
    paper: paper.default("A4"),
    orientation: z.enum(OUTPUT_CHOICES.orientation).default(USUAL_OUTPUT.orientation),
    pageMargin: lengthField(unit, MARGIN).default(USUAL_OUTPUT.pageMargin),
    overlap: lengthField(unit, MARGIN).default(USUAL_OUTPUT.overlap),
    sheets: z.enum(OUTPUT_CHOICES.sheets).default(USUAL_OUTPUT.sheets),
    rollWidth: lengthField(unit, { minMm: 200, maxMm: 5000 }).default(USUAL_OUTPUT.rollWidth),
    testSquare: group({ x: square, y: square }).default(USUAL_OUTPUT.testSquare),
    lengths: z
      .enum(["mm", "cm", "m", "in/16", "in/32", "yd/8"])
      .default(unit === "in" || unit === "yd" ? "in/16" : "mm"),
    letters: z.enum(OUTPUT_CHOICES.letters).default(USUAL_OUTPUT.letters),
    sharedEdges: z.enum(OUTPUT_CHOICES.sharedEdges).default(USUAL_OUTPUT.sharedEdges),
    lines: linesField(unit).default({}),
    machine: machineField(unit).optional(),
  }).transform((output, context): OutputSettings => {
    const settings = { ...output, machine: output.machine ?? null };
    for (const problem of outputProblems(settings)) report(context, problem, problem.path.split(".").slice(1));
    return settings;
  });
}

function machineField(unit: LengthUnit): z.ZodType<MachineSettings> {
  return group({
    bedWidth: lengthField(unit, SIZE),
    bedHeight: lengthField(unit, SIZE),
    grip: lengthField(unit, { minMm: 0, maxMm: 1000 }).default(0),
    kerf: lengthField(unit, { minMm: 0, maxMm: 5 }).default(0),
    tool: z.enum(OUTPUT_CHOICES.tool),
    bladeOffset: lengthField(unit, { minMm: 0, maxMm: 5 }).default(0),
    overcut: lengthField(unit, { minMm: 0, maxMm: 10 }).default(0),
    order: z.enum(OUTPUT_CHOICES.order).default("nearest"),
  });
}

function linesField(unit: LengthUnit) {
  const line = () =>
    group({
      layer: readable(LAYER_NAME, "layer-name-unusable").optional(),
      color: readable(/^#[\da-f]{6}$/iu, "color-unreadable").optional(),
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

function readable(shape: RegExp, code: "layer-name-unusable" | "color-unreadable") {
  return text(200).transform((value, context) => {
    if (!shape.test(value)) report(context, { code, value });
    return value;
  });
}
