import { STRAP_DIRECTIONS, type StrapDirections } from "../../core/lay/boxes/straps/strapProblem.ts";
import type { ClothLoss } from "../../core/lay/boxes/straps/yieldCurve.ts";
import type { Problem } from "../../core/problems/problem.ts";
import { type LengthRange, parseLength } from "../../core/units/parseLength.ts";
import { type ParsedArgs, UsageError } from "../command.ts";
import { inputProblem, plainProblem } from "../inOut/toldProblem.ts";
import { partsBy, requiredOption, unitAtEnd, wordOption } from "../options/optionValues.ts";

/** Nobody cuts a strap or a cloth below a millimetre; 20 m is wider than any loom. */
const STRAP_RANGE: LengthRange = { minMm: 1, maxMm: 100_000 };
const WIDTH_RANGE: LengthRange = { minMm: 1, maxMm: 20_000 };
export const LENGTH_RANGE: LengthRange = { minMm: 1, maxMm: 1_000_000 };
const GAP_RANGE: LengthRange = { minMm: 0, maxMm: 1_000 };
/** More of one strap in a set than this is a slip. */
const MOST_A_SET = 1000;
/** Kinds of strap that one question may name. */
const MOST_KINDS = 20;

/** One strap of the question. mm. */
export interface AskedStrip {
  readonly width: number;
  readonly length: number;
  readonly perSet: number;
  /** As typed, for the unit of the answer. */
  readonly text: string;
}

/** What `yield` is asked, as far as every question has it; lengths in mm, NaN where they are not given. */
export interface YieldAsked {
  readonly strips: readonly AskedStrip[];
  readonly directions: StrapDirections;
  /** Usable width and length as bought; NaN for cloth out of a project. */
  readonly width: number;
  readonly length: number;
  readonly gap: number | undefined;
  readonly loss: ClothLoss;
  /** End of the curve as bought; undefined when none is asked for. */
  readonly curveTo: number | undefined;
}

/** "4 in x 28 in + 2 of 3 in x 10 in": straps of a set, with how many of each. */
function stripTexts(text: string): { readonly perSet: number; readonly size: string }[] {
  const parts = text.split("+").map((part) => part.trim());
  if (parts.length > MOST_KINDS)
    throw plainProblem("strip-unreadable", "--strip", ({ yields }) => yields.notASize(text));
  return parts.map((part) => {
    const [count, word, ...size] = part.split(/\s+/u);
    if ((word !== "of" && word !== "von") || count === undefined) return { perSet: 1, size: part };
    const perSet = /^\d{1,4}$/u.test(count) ? Number(count) : 0;
    if (perSet < 1 || perSet > MOST_A_SET)
      throw plainProblem("strip-unreadable", "--strip", ({ yields }) => yields.notASize(text));
    return { perSet, size: size.join(" ") };
  });
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

/** "3 %" along and across, or "3 % x 2 %". */
function shrinkage(args: ParsedArgs): readonly [lengthwise: number, crosswise: number] {
  const text = args.values.get("shrinkage");
  if (text === undefined) return [0, 0];
  const shares = partsBy(text).map((part) => {
    const number = part.endsWith("%")
      ? /^\d{1,2}(?:[.,]\d{1,4})?$/u.exec(part.slice(0, -1).trim())?.[0]
      : undefined;
    const share = number === undefined ? Number.NaN : Number(number.replace(",", ".")) / 100;
    if (!(share >= 0 && share <= 0.3)) throw new UsageError((say) => say.shares("shrinkage", text));
    return share;
  });
  if (shares.length > 2) throw new UsageError((say) => say.shares("shrinkage", text));
  return [shares[0]!, shares[1] ?? shares[0]!];
}

/** Reads what is asked; every length that cannot be read is told at once. Throws on wrong usage and bad lengths. */
export function readYield(args: ParsedArgs): YieldAsked {
  const ofProject = args.values.has("on");
  const directions = wordOption(args, "grain", STRAP_DIRECTIONS, "both");
  const texts = stripTexts(requiredOption(args, "strip"));
  const [lengthwise, crosswise] = shrinkage(args);
  const problems: Problem[] = [];
  const read = (path: string, text: string, range: LengthRange): number => {
    const value = parseLength(text, "mm", path, range);
    if (value.ok) return value.value;
    problems.push(...value.problems);
    return Number.NaN;
  };
  const strips = texts.map(({ perSet, size }): AskedStrip => {
    const [width, length] = strapSides(size);
    return {
      ...{ perSet, text: size },
      width: read("--strip (width)", width, STRAP_RANGE),
      length: read("--strip (length)", length, STRAP_RANGE),
    };
  });
  const optional = (name: string, range: LengthRange): number | undefined => {
    const text = args.values.get(name);
    return text === undefined ? undefined : read(`--${name}`, text, range);
  };
  const width = ofProject ? Number.NaN : read("--width", requiredOption(args, "width"), WIDTH_RANGE);
  const gap = optional("gap", GAP_RANGE);
  const length = optional("length", LENGTH_RANGE) ?? Number.NaN;
  const squaring = optional("squaring", GAP_RANGE) ?? 0;
  const curveTo = optional("curve", LENGTH_RANGE);
  if (problems.length > 0) throw inputProblem(problems);
  return {
    ...{ strips, directions, length, gap, curveTo },
    width: width * (1 - crosswise),
    loss: { squaring, lengthwise, crosswise },
  };
}
