import { failed, ok, type Result } from "../core/problems/problem.ts";
import { expectedFold, FOLD_TESTS, type FoldFit, type FoldTestId, fitFold } from "../core/straps/foldTest.ts";
import { formatLength } from "../core/units/formatLength.ts";
import { type ParsedArgs, UsageError } from "./command.ts";
import { wordOption } from "./optionValues.ts";
import { inputProblem } from "./problemReport.ts";
import { storeFold } from "./storeFold.ts";
import { LengthReader, readMaterials } from "./strapOptions.ts";
import { bothUnits } from "./strapReport.ts";
import { wrapRows } from "./wrapText.ts";

/** Cut width of a test strip when none is given, mm; wide enough that a ruler's millimetre matters little. */
const TEST_STRIP = 100;
const READING_ERROR = 0.5;

const DEFAULT_CLEARANCE: Readonly<Record<FoldTestId, number>> = { "three-raw": 1, fourfold: 0.5 };

const HOW: Readonly<Record<FoldTestId, readonly string[]>> = {
  "three-raw": [
    "Draw a line two thirds across it, along its length.",
    "Fold one long edge over and lay it exactly on that line; press or hammer the fold as you would in the strap.",
    "Wrap the last third round the raw edge and press it down.",
  ],
  fourfold: [
    "Crease it lengthwise in the middle, open it, and fold both long edges in as far as they go without running into the crease when closed.",
    "Fold it in half again and press or hammer it as you would in the strap.",
  ],
};

const READ: Readonly<Record<FoldTestId, string>> = {
  "three-raw": "how far the raw edge that shows stops short of the opposite fold",
  fourfold: "how far each raw edge lies from the centre crease when the strip is opened once (mean of both)",
};

interface FoldTest {
  readonly construction: FoldTestId;
  readonly thickness: number;
  readonly cutWidth: number;
  readonly readingError: number;
  readonly expected: { readonly finishedWidth: number; readonly setback: number };
  readonly fit: FoldFit | null;
}

function readFoldTest(args: ParsedArgs): Result<FoldTest> {
  const lengths = new LengthReader(args);
  const construction = wordOption(args, "construction", FOLD_TESTS, "three-raw");
  const thickness = readMaterials(args, lengths)[0]!.thickness;
  const range = { minMm: 20, maxMm: 1000 };
  const cutWidth = lengths.length("cut-width", range) ?? TEST_STRIP;
  const finishedWidth = lengths.length("measured-width", range);
  const setback = lengths.length("measured-setback");
  const readingError = lengths.length("reading-error") ?? READING_ERROR;
  lengths.check();
  if ((finishedWidth === undefined) !== (setback === undefined)) {
    throw new UsageError("--measured-width and --measured-setback go together");
  }
  if (thickness <= 0) throw new UsageError("--thickness must be more than 0 for a fold test");
  const expected = expectedFold(construction, thickness, cutWidth, {
    neutral: 0.5,
    clearance: DEFAULT_CLEARANCE[construction],
  });
  const test = { construction, thickness, cutWidth, readingError, expected, fit: null };
  if (finishedWidth === undefined || setback === undefined) return ok(test);
  const reading = { construction, thickness, cutWidth, finishedWidth, setback, readingError };
  const fit = fitFold(reading, "--measured-width");
  return fit.ok ? ok({ ...test, fit: fit.value }) : failed(...fit.problems);
}

function instructions({ construction, thickness, cutWidth, expected }: FoldTest): string[] {
  const steps = [
    `Cut a strip ${bothUnits(cutWidth)} wide and about a hand long, on the same grain as the strap.`,
    ...HOW[construction],
    `Measure over the outside of the folded strip, and ${READ[construction]}.`,
  ];
  return [
    `Fold test, "${construction}", ${formatLength(thickness, "mm")} a layer`,
    "",
    ...steps.flatMap((step, i) => wrapRows(step, `  ${i + 1}. `, "     ")),
    "",
    `Without a test we assume ${bothUnits(expected.finishedWidth)} and ${bothUnits(expected.setback)}.`,
    "Then run the same command with --measured-width and --measured-setback.",
    "Measure the thickness too: fold a stack of eight layers, press it and divide.",
    "",
  ];
}

function fitted(fit: FoldFit, { readingError }: FoldTest): string[] {
  const two = (value: number): string => value.toFixed(2);
  return [
    `K (neutral)  ${two(fit.neutral)} ± ${two(fit.neutralError)}`,
    `clearance    ${two(fit.clearance)} ± ${two(fit.clearanceError)}`,
    "",
    `Readings good to ${bothUnits(readingError)} leave the cut width open by ± ${bothUnits(fit.cutWidthError)}.`,
    "To keep it, add --into PROJECT --of MATERIAL, or put this into the material in the project file:",
    `  ${JSON.stringify({ fold: { neutral: Number(two(fit.neutral)), clearance: Number(two(fit.clearance)) } })}`,
    "",
  ];
}

/** Stores a fit where `--into` and `--of` say; returns what to tell. */
function stored(args: ParsedArgs, test: FoldTest): string[] {
  const file = args.values.get("into");
  const material = args.values.get("of");
  if ((file === undefined) !== (material === undefined)) throw new UsageError("--into and --of go together");
  if (file === undefined || material === undefined) return [];
  if (!test.fit) throw new UsageError("--into needs --measured-width and --measured-setback");
  if (!args.values.has("thickness")) throw new UsageError("--into needs the measured --thickness");
  storeFold(file, material, { thickness: test.thickness, ...test.fit });
  return [`Stored with the thickness in ${file}, material ${material}.`, ""];
}

/** `laywright strap --fold-test`: what to cut and fold, or what the readings say. */
export function foldTestReport(args: ParsedArgs): { readonly text: string; readonly json: object } {
  const reading = readFoldTest(args);
  if (!reading.ok) throw inputProblem(reading.problems);
  const test = reading.value;
  const told = stored(args, test);
  return {
    text: [...(test.fit ? fitted(test.fit, test) : instructions(test)), ...told].join("\n"),
    json: {
      construction: test.construction,
      thicknessMm: test.thickness,
      cutWidthMm: test.cutWidth,
      expectedWidthMm: test.expected.finishedWidth,
      expectedSetbackMm: test.expected.setback,
      fit: test.fit && {
        neutral: test.fit.neutral,
        neutralError: test.fit.neutralError,
        clearance: test.fit.clearance,
        clearanceError: test.fit.clearanceError,
        cutWidthErrorMm: test.fit.cutWidthError,
      },
    },
  };
}
