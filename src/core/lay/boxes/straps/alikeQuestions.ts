import type { YieldQuestion } from "./strapProblem.ts";

/** A question in small whole numbers, and for each side how many short sides fit beside 0, 1, 2 … long ones. */
export interface AlikeQuestion {
  readonly long: number;
  readonly short: number;
  /** Largest sum of sides that fits the length, and the width. */
  readonly length: number;
  readonly width: number;
  readonly alongLength: Int32Array;
  readonly alongWidth: Int32Array;
}

/** Largest short side tried when looking for other proportions. */
const FINEST = 48;

/**
 * Questions with whole-number sides that hold the same packings as `question`: those with the same set of pairs
 * (long sides, short sides) fitting its length and its width. The first is `question` itself, in lowest terms.
 * Source: Dowsland 1984, Eur. J. Oper. Res. 15; Nelissen 1995, Oper. Res. Spektrum 17 (equivalence classes).
 * Cost: O(FINEST² · length / long).
 */
export function alikeQuestions(question: YieldQuestion): readonly AlikeQuestion[] {
  const long = Math.max(question.a, question.b);
  const short = Math.min(question.a, question.b);
  const alongLength = fittingShorts(question.length, long, short);
  const alongWidth = fittingShorts(question.width, long, short);
  const unit = commonDivisor(long, short);
  const own = questionWith(long / unit, short / unit, alongLength, alongWidth);
  const alike: AlikeQuestion[] = own === null ? [] : [own];
  if (alongLength.length === 1 && alongWidth.length === 1) return alike; // no strap fits: any proportion is alike
  for (let q = 1; q <= FINEST; q++) {
    const near = (q * long) / short;
    for (const from of [Math.floor(near), Math.floor(near) + 1]) {
      const step = from > near ? 1 : -1;
      for (let p = from; p >= q; p += step) {
        const candidate = commonDivisor(p, q) === 1 ? questionWith(p, q, alongLength, alongWidth) : undefined;
        if (candidate === null) break;
        if (candidate !== undefined) alike.push(candidate);
      }
    }
  }
  return alike;
}

/** How many short sides fit beside i long ones, for i = 0 …; empty when not even i = 0 fits. */
function fittingShorts(side: number, long: number, short: number): Int32Array {
  const counts = new Int32Array(Math.floor(side / long) + 1);
  for (let i = 0; i < counts.length; i++) counts[i] = Math.floor((side - i * long) / short);
  return counts;
}

/** The question with these strap sides, or null when its pairs cannot be the given ones. */
function questionWith(
  long: number,
  short: number,
  alongLength: Int32Array,
  alongWidth: Int32Array,
): AlikeQuestion | null {
  const length = leastSide(long, short, alongLength);
  const width = leastSide(long, short, alongWidth);
  return length < 0 || width < 0 ? null : { long, short, length, width, alongLength, alongWidth };
}

/** Longest fitting sum of sides, or −1 when some pair that must not fit is no longer than that. */
function leastSide(long: number, short: number, counts: Int32Array): number {
  let most = 0;
  let leastOver = counts.length * long;
  for (let i = 0; i < counts.length; i++) {
    const sum = i * long + counts[i]! * short;
    if (sum > most) most = sum;
    if (sum + short < leastOver) leastOver = sum + short;
  }
  return most < leastOver ? most : -1;
}

function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b);
}
