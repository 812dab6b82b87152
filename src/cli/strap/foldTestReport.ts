import { lengthLabel } from "../../core/drawing/strap/dimensionLine.ts";
import type { FoldTraits } from "../../core/materials/material.ts";
import { failed, ok, type Result } from "../../core/problems/problem.ts";
import { CONSTRUCTIONS } from "../../core/straps/constructions/catalogue.ts";
import {
  expectedFold,
  FOLD_TESTS,
  type FoldFit,
  type FoldTestId,
  type FoldTestReading,
  fitFold,
  type Measured,
  measuredFold,
  saysSomething,
} from "../../core/straps/foldTest.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { STRAP_WORDS } from "../../core/words/words.ts";
import { type ParsedArgs, UsageError } from "../command.ts";
import { wrapRows } from "../inOut/terminal.ts";
import { inputProblem } from "../inOut/toldProblem.ts";
import { wordOption } from "../options/optionValues.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";
import { readingText, storeFold } from "./storeFold.ts";
import { LengthReader, readMaterials } from "./strapOptions.ts";

/** A reading in both units: a test is read as finely as a ruler goes. */
const bothUnits = (mm: number, language: Language): string => lengthLabel(mm, "in/32", language);

/** Cut width of a test strip when none is given, mm; wide enough that a ruler's millimetre matters little. */
const TEST_STRIP = 100;
const READING_ERROR = 0.5;

interface FoldTest {
  readonly construction: FoldTestId;
  readonly thickness: number;
  readonly cutWidth: number;
  readonly readingError: number;
  readonly expected: { readonly finishedWidth: number; readonly setback: number };
  readonly fit: FoldFit | null;
  readonly reading: FoldTestReading | null;
}

function readFoldTest(args: ParsedArgs, language: Language): Result<FoldTest> {
  const lengths = new LengthReader(args);
  const construction = wordOption(args, "construction", FOLD_TESTS, "three-raw");
  const thickness = readMaterials(args, lengths, language)[0]!.thickness;
  const range = { minMm: 20, maxMm: 1000 };
  const cutWidth = lengths.length("cut-width", range) ?? TEST_STRIP;
  const finishedWidth = lengths.length("measured-width", range);
  const setback = lengths.length("measured-setback");
  const readingError = lengths.length("reading-error") ?? READING_ERROR;
  lengths.check();
  if ((finishedWidth === undefined) !== (setback === undefined)) {
    throw new UsageError((say) => say.together("measured-width", "measured-setback"));
  }
  if (thickness <= 0) throw new UsageError((say) => say.noThickness);
  const expected = expectedFold(construction, thickness, cutWidth, {
    neutral: 0.5,
    clearance: CONSTRUCTIONS[construction].defaultClearance ?? 0,
  });
  const test = { construction, thickness, cutWidth, readingError, expected, fit: null, reading: null };
  if (finishedWidth === undefined || setback === undefined) return ok(test);
  const reading = { construction, thickness, cutWidth, finishedWidth, setback, readingError };
  const fit = fitFold(reading, "--measured-width");
  return fit.ok ? ok({ ...test, fit: fit.value, reading }) : failed(...fit.problems);
}

function instructions({ construction, thickness, cutWidth, expected }: FoldTest, language: Language): string[] {
  const texts = CLI_TEXTS[language].foldTest;
  const steps = [
    texts.strip(bothUnits(cutWidth, language)),
    ...texts.how[construction],
    texts.measure(texts.read[construction]),
  ];
  return [
    texts.title(STRAP_WORDS[language].constructions[construction].name, formatLength(thickness, "mm", language)),
    "",
    ...steps.flatMap((step, i) => wrapRows(step, `  ${i + 1}. `, "     ")),
    "",
    texts.assumed(bothUnits(expected.finishedWidth, language), bothUnits(expected.setback, language)),
    texts.runAgain,
    texts.thickness,
    "",
  ];
}

function fitted(fit: FoldFit, { readingError, reading }: FoldTest, language: Language): string[] {
  const texts = CLI_TEXTS[language].foldTest;
  const column = Math.max(texts.neutral.length, texts.clearance.length) + 2;
  const two = (value: number): string => value.toFixed(2);
  const shown = (value: number): string => withDecimalSign(two(value), language);
  return [
    `${texts.neutral.padEnd(column)}${shown(fit.neutral)} ± ${shown(fit.neutralError)}`,
    `${texts.clearance.padEnd(column)}${shown(fit.clearance)} ± ${shown(fit.clearanceError)}`,
    "",
    texts.leaves(bothUnits(readingError, language), bothUnits(fit.cutWidthError, language)),
    ...(saysSomething(fit)
      ? [texts.keep, `  ${JSON.stringify({ fold: { tests: [readingText(reading!)] } })}`]
      : [texts.saysNothing]),
    "",
  ];
}

/** What all tests of a material say, once there are several. */
function together(
  traits: FoldTraits,
  construction: FoldTestId,
  texts: CliTexts["foldTest"],
  language: Language,
): string[] {
  const count = traits.tests?.length ?? 0;
  if (count < 2) return [];
  const { neutral, clearance } = measuredFold(traits);
  const shown = (one: Measured | null | undefined): string =>
    one ? withDecimalSign(`${one.value.toFixed(2)} ± ${one.error.toFixed(2)}`, language) : "?";
  return [texts.together(count, shown(neutral), shown(clearance[construction]))];
}

/** Stores a fit where `--into` and `--of` say; returns what to tell. */
function stored(args: ParsedArgs, test: FoldTest, texts: CliTexts["foldTest"], language: Language): string[] {
  const file = args.values.get("into");
  const material = args.values.get("of");
  if ((file === undefined) !== (material === undefined)) throw new UsageError((say) => say.together("into", "of"));
  if (file === undefined || material === undefined) return [];
  if (!test.fit || !test.reading) throw new UsageError((say) => say.needsReadings);
  if (!args.values.has("thickness")) throw new UsageError((say) => say.needsThickness);
  if (!saysSomething(test.fit))
    throw inputProblem([{ code: "strap-fold-test-open", path: "--into", construction: test.construction }]);
  const traits = storeFold(file, material, test.reading);
  return [texts.stored(file, material), ...together(traits, test.construction, texts, language), ""];
}

/** `laywright strap --fold-test`: what to cut and fold, or what the readings say. */
export function foldTestReport(
  args: ParsedArgs,
  language: Language,
): { readonly text: string; readonly json: object } {
  const texts = CLI_TEXTS[language].foldTest;
  const reading = readFoldTest(args, language);
  if (!reading.ok) throw inputProblem(reading.problems);
  const test = reading.value;
  const told = stored(args, test, texts, language);
  return {
    text: [...(test.fit ? fitted(test.fit, test, language) : instructions(test, language)), ...told].join("\n"),
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
