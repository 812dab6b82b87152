import type { LengthProblem, ReadNumber } from "./lengthProblem.ts";
import { BARE_AFTER, type LengthUnit, MM_PER_UNIT, mayFollow, plainSigns, UNIT_OF_WORD } from "./lengthWords.ts";
import { addRational, decimalRational, type Rational, rationalToNumber, timesRational } from "./rational.ts";

/** Least and greatest length accepted, mm. */
export interface LengthRange {
  readonly minMm: number;
  readonly maxMm: number;
}

/** A length that something has: from nothing to one kilometre. */
export const ANY_LENGTH: LengthRange = { minMm: 0, maxMm: 1_000_000 };

const NUMBER = String.raw`(?:(\d+)(?: ?- ?| )(\d+) ?/ ?(\d+)|(\d+) ?/ ?(\d+)|(\d+(?:[.,]\d+)?|[.,]\d+))`;
const PART = new RegExp(String.raw`^ ?${NUMBER} ?("|'|[a-zµ]+\.?)?`, "u");
/** Longest text that is looked at; nothing a person types for a length is longer. */
const MAX_TEXT = 80;

/** Units that nobody writes in fractions: a fraction without a unit is inches forgotten to be said. */
const METRIC: ReadonlySet<LengthUnit> = new Set<LengthUnit>(["mm", "cm", "m"]);

interface Part {
  readonly amount: Rational;
  readonly unit: LengthUnit;
}

const MM: Readonly<Record<LengthUnit, Rational>> = {
  mm: decimalRational("1"),
  cm: decimalRational("10"),
  m: decimalRational("1000"),
  in: decimalRational("25.4"),
  ft: decimalRational("304.8"),
  yd: decimalRational("914.4"),
};

/**
 * Reads a length as a person writes it: `4 7/8 in`, `4-7/8"`, `123.8 mm`, `12,5 cm`, `1.2 m`, `1 m 20`, `1 yd 4 in`,
 * `5' 6"`, `2½ in`, or a bare number in `defaultUnit`.
 *
 * Units: gives mm. Sums exactly and rounds once, to the nearest double.
 * Errors: every reason as data; outside `range` (0 … 1 km unless said) is one of them.
 */
export function parseLength(
  text: string,
  defaultUnit: LengthUnit,
  path: string,
  range: LengthRange = ANY_LENGTH,
): ReadNumber {
  const plain = text.length <= MAX_TEXT ? plainSigns(text) : "";
  const negative = plain.startsWith("-");
  const parts = readParts(plain.replace(/^[+-] ?/u, ""), defaultUnit, text, path);
  if ("code" in parts) return { ok: false, problems: [parts] };
  const sum = parts
    .map((part) => timesRational(part.amount, MM[part.unit]))
    .reduce(addRational, { num: 0n, den: 1n });
  const mm = rationalToNumber(sum);
  return checkLength(negative ? -mm : mm, path, range, text);
}

/** Holds a length in mm against its range. `text` is what the person wrote. */
export function checkLength(mm: number, path: string, range: LengthRange, text: string = String(mm)): ReadNumber {
  if (!Number.isFinite(mm)) return { ok: false, problems: [{ code: "length-not-finite", path, text }] };
  if (mm < range.minMm || mm > range.maxMm)
    return { ok: false, problems: [{ code: "length-out-of-range", path, mm, ...range }] };
  return { ok: true, value: mm === 0 ? 0 : mm };
}

/** A length given as a JSON number in `defaultUnit` or as text. */
export function readLength(
  value: string | number,
  defaultUnit: LengthUnit,
  path: string,
  range: LengthRange = ANY_LENGTH,
): ReadNumber {
  if (typeof value === "string") return parseLength(value, defaultUnit, path, range);
  if (!Number.isFinite(value)) return checkLength(value, path, range);
  // The shortest decimal of the number, so that 0.1 in means one tenth of an inch exactly.
  const digits = String(Math.abs(value));
  const exact = digits.includes("e")
    ? value * MM_PER_UNIT[defaultUnit]
    : Math.sign(value) * rationalToNumber(timesRational(decimalRational(digits), MM[defaultUnit]));
  return checkLength(exact, path, range, String(value));
}

function readParts(plain: string, defaultUnit: LengthUnit, text: string, path: string): Part[] | LengthProblem {
  const unreadable: LengthProblem = { code: "length-unreadable", path, text };
  const parts: Part[] = [];
  let rest = plain;
  while (rest !== "") {
    const match = PART.exec(rest);
    if (!match) return unreadable;
    rest = rest.slice(match[0].length).replace(/^ /u, "");
    const word = match[7];
    const before = parts.at(-1)?.unit;
    const unit = word === undefined ? bareUnit(before, defaultUnit) : unitOf(word);
    if (unit === undefined)
      return word === undefined ? unreadable : { code: "length-unit-unknown", path, text, unit: word };
    if (before !== undefined && !mayFollow(before, unit))
      return { code: "length-units-mixed", path, text, first: before, second: unit };
    const amount = readAmount(match, text, path);
    if ("code" in amount) return amount;
    const isFraction = match[6] === undefined;
    if (isFraction && word === undefined && before === undefined && METRIC.has(defaultUnit))
      return { code: "length-fraction-bare", path, text, unit: defaultUnit };
    parts.push({ amount, unit });
    // A bare number ends the length: nothing can follow it.
    if (word === undefined && rest !== "") return unreadable;
  }
  return parts.length > 0 ? parts : unreadable;
}

function bareUnit(before: LengthUnit | undefined, defaultUnit: LengthUnit): LengthUnit | undefined {
  return before === undefined ? defaultUnit : BARE_AFTER[before];
}

function unitOf(word: string): LengthUnit | undefined {
  return UNIT_OF_WORD.get(word) ?? UNIT_OF_WORD.get(word.replace(/\.$/u, ""));
}

function readAmount(match: RegExpExecArray, text: string, path: string): Rational | LengthProblem {
  const [, whole, mixedNum, mixedDen, num, den, decimal] = match;
  if (decimal !== undefined) return readDecimal(decimal, text, path);
  const top = BigInt(mixedNum ?? num!);
  const bottom = BigInt(mixedDen ?? den!);
  if (bottom === 0n) return { code: "length-fraction-by-zero", path, text };
  return addRational({ num: BigInt(whole ?? "0"), den: 1n }, { num: top, den: bottom });
}

/** `1,5` is one and a half; `1,250` could also be twelve hundred and fifty, so it is asked about. */
function readDecimal(decimal: string, text: string, path: string): Rational | LengthProblem {
  if (/^[1-9]\d{0,2},\d{3}$/u.test(decimal)) {
    const asDecimal = decimal.replace(",", ".").replace(/0+$/u, "").replace(/\.$/u, "");
    return { code: "length-ambiguous", path, text, asDecimal, asThousands: decimal.replace(",", "") };
  }
  return decimalRational(decimal.replace(",", "."));
}
