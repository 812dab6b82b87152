import { lengthForStraps } from "../../core/lay/boxes/straps/lengthForStraps.ts";
import { STRAP_DIRECTIONS, type StrapOnCloth } from "../../core/lay/boxes/straps/strapProblem.ts";
import { strapYield } from "../../core/lay/boxes/straps/strapYield.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { Language } from "../../core/units/language.ts";
import { type LengthRange, parseLength } from "../../core/units/parseLength.ts";
import { type Command, EXIT, JSON_OPTION, type ParsedArgs, UsageError } from "../command.ts";
import { inputProblem, plainProblem } from "../inOut/toldProblem.ts";
import { numberOption, partsBy, requiredOption, unitAtEnd, wordOption } from "../options/optionValues.ts";
import { lengthText, yieldText } from "./yieldText.ts";

/** Nobody cuts a strap or a cloth below a millimetre; 20 m is wider than any loom. */
const STRAP_RANGE: LengthRange = { minMm: 1, maxMm: 100_000 };
const WIDTH_RANGE: LengthRange = { minMm: 1, maxMm: 20_000 };
const LENGTH_RANGE: LengthRange = { minMm: 1, maxMm: 1_000_000 };
const GAP_RANGE: LengthRange = { minMm: 0, maxMm: 1_000 };
/** More straps than this are refused rather than waited for. */
const MOST_STRAPS = 20_000;

/** `laywright yield`: how many straps a length of cloth gives, or the length for a number of straps. */
export const yieldCommand: Command = {
  name: "yield",
  synopsis: '--strip "WIDTH x LENGTH" --width W (--length L | --count N) [options]',
  about: [
    "Lays straps of one cut size on a length of roll or on a rectangular remnant, on straight grain, and says",
    "whether the number is proven or how far it can be from the best.",
    "\nWith --json: count, bound and proven; lengthwise and crosswise are the numbers when all straps lie one way;",
    "placements in mm, x along the roll, y across it, the lower-left corner of each strap as it lies; rotation 0 is",
    "lengthwise, 90 crosswise. With --count: lengthMm and boundMm, and the plan on that length.",
  ].join(" "),
  options: [
    { name: "strip", value: '"W x L"', help: 'cut width and cut length of the strap, e.g. "4 in x 28 in"' },
    { name: "width", value: "W", help: "usable width of the cloth, without selvedges" },
    { name: "length", value: "L", help: "length of the cloth along the roll" },
    { name: "count", value: "N", help: "straps wanted, in place of --length" },
    { name: "gap", value: "G", help: "least distance between straps (default 0: one cut parts two straps)" },
    { name: "grain", value: "GRAIN", help: "both (default), lengthwise or crosswise" },
    JSON_OPTION,
  ],
  operands: [0, 0],
  run: async (args, io) => {
    const byLength = args.values.has("length");
    if (byLength === args.values.has("count")) throw new UsageError((say) => say.either("length", "count"));
    const { cloth, length } = readCloth(args);
    const answer = byLength
      ? yieldOnLength(args, cloth, length, io.language)
      : lengthForCount(args, cloth, io.language);
    io.out(args.switches.has("json") ? `${JSON.stringify(answer.json)}\n` : answer.text);
    // No strap at all is the same answer however it is asked for.
    return answer.none ? EXIT.input : EXIT.done;
  },
};

interface Answer {
  readonly json: object;
  readonly text: string;
  readonly none: boolean;
}

function yieldOnLength(args: ParsedArgs, cloth: StrapOnCloth, length: number, language: Language): Answer {
  const straps = (length * cloth.clothWidth) / (cloth.strapLength * cloth.strapWidth);
  if (straps > MOST_STRAPS) throw tooMany(Math.floor(straps), "--length");
  const found = strapYield(cloth, length);
  const { usedLength, ...contract } = found;
  return {
    none: found.count === 0,
    json: { ...contract, usedLengthMm: usedLength },
    text: yieldText(cloth, length, found, args.values.get("strip")!, language),
  };
}

function lengthForCount(args: ParsedArgs, cloth: StrapOnCloth, language: Language): Answer {
  const count = numberOption(args, "count", { least: 1, most: MOST_STRAPS, whole: true }, 1);
  const found = lengthForStraps(cloth, count);
  if (found === null)
    throw plainProblem("strap-too-long-for-width", "--width", ({ yields }) => yields.noStrapAcross);
  if (found.length > LENGTH_RANGE.maxMm) throw tooMany(count, "--count");
  const { length, bound, proven, plan } = found;
  return {
    none: false,
    json: { lengthMm: length, boundMm: bound, proven, count: plan.count, placements: plan.placements },
    text: lengthText(cloth, count, found, args.values.get("strip")!, language),
  };
}

/** The cloth, and its length when that is given (else NaN); every problem is told at once. */
function readCloth(args: ParsedArgs): { readonly cloth: StrapOnCloth; readonly length: number } {
  const directions = wordOption(args, "grain", STRAP_DIRECTIONS, "both");
  const clothLength = args.values.get("length");
  const [strapWidth, strapLength] = strapSides(requiredOption(args, "strip"));
  const [width, along, clothWidth, gap, length] = readLengths([
    ["--strip (width)", strapWidth, STRAP_RANGE],
    ["--strip (length)", strapLength, STRAP_RANGE],
    ["--width", requiredOption(args, "width"), WIDTH_RANGE],
    ["--gap", args.values.get("gap") ?? "0", GAP_RANGE],
    ...(clothLength === undefined ? [] : [["--length", clothLength, LENGTH_RANGE] as const]),
  ]);
  const cloth = { strapWidth: width!, strapLength: along!, clothWidth: clothWidth!, gap: gap!, directions };
  return { cloth, length: length ?? Number.NaN };
}

/** "4 in x 28 in" → both sides; in "4 x 28 in" the unit stands for both. */
function strapSides(text: string): readonly [width: string, length: string] {
  const sides = partsBy(text);
  if (sides.length !== 2 || sides.includes(""))
    throw plainProblem("strip-unreadable", "--strip", ({ yields }) => yields.notASize(text));
  const [width, length] = sides as [string, string];
  const unit = unitAtEnd(length);
  return [unit !== null && /^[\d\s.,/-]+$/u.test(width) ? `${width} ${unit}` : width, length];
}

function readLengths(asked: readonly (readonly [path: string, text: string, range: LengthRange])[]): number[] {
  const problems: Problem[] = [];
  const values = asked.map(([path, text, range]) => {
    const read = parseLength(text, "mm", path, range);
    if (read.ok) return read.value;
    problems.push(...read.problems);
    return Number.NaN;
  });
  if (problems.length > 0) throw inputProblem(problems);
  return values;
}

function tooMany(straps: number, path: string): Error {
  return plainProblem("too-many-straps", path, ({ yields }) => yields.tooMany(path, straps, MOST_STRAPS));
}
