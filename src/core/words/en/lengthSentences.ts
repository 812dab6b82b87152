import type { SentenceTable } from "../../problems/problem.ts";
import type { LengthProblem } from "../../units/lengthProblem.ts";
import { quoted } from "../phrase.ts";

const EXAMPLES = 'Write it like "4 7/8 in", "123.8 mm", "12 cm", "1 m 20" or "1 yd 4 in".';

const percent = (share: number): string => `${Number((share * 100).toFixed(2))} %`;

/** Lengths, counts, shares, money and thickness in English. */
export const lengthSentences: SentenceTable<LengthProblem> = {
  "length-unreadable": ({ text }) => ({ what: `${quoted(text)} is not a length.`, remedy: EXAMPLES }),
  "length-ambiguous": ({ text, asDecimal, asThousands }) => ({
    what: `The comma in ${quoted(text)} can be read in two ways.`,
    remedy: `Write ${asDecimal} or ${asThousands}, with a point for decimals and nothing between thousands.`,
  }),
  "length-not-finite": ({ text }) => ({ what: `${quoted(text)} is not a number.`, remedy: EXAMPLES }),
  "length-out-of-range": ({ mm, minMm, maxMm }, say) =>
    mm < minMm
      ? {
          what: `The length ${say(mm)} is too small.`,
          remedy: `Give at least ${say(minMm)}.`,
        }
      : {
          what: `The length ${say(mm)} is too large.`,
          remedy: `Give at most ${say(maxMm)}, and check the unit.`,
        },
  "length-unit-unknown": ({ text, unit }) => ({
    what: `The unit ${quoted(unit)} in ${quoted(text)} is not known.`,
    remedy: "Use mm, cm, m, in, ft or yd.",
  }),
  "length-units-mixed": ({ text, first, second }) => ({
    what: `${quoted(text)} puts ${second} after ${first}.`,
    remedy: "After a unit only a smaller one of the same kind can follow: m cm mm, or yd ft in.",
  }),
  "length-fraction-by-zero": ({ text }) => ({
    what: `The fraction in ${quoted(text)} divides by zero.`,
    remedy: EXAMPLES,
  }),
  "length-fraction-bare": ({ text, unit }) => ({
    what: `The fraction ${quoted(text)} has no unit, and ${unit} are not written in fractions.`,
    remedy: `Write ${quoted(`${text.trim()} in`)}, or the ${unit} as a decimal number.`,
  }),
  "share-unreadable": ({ text }) => ({
    what: `${quoted(text)} is not a percentage.`,
    remedy: 'Write it like "3 %".',
  }),
  "share-out-of-range": ({ share, min, max, isNumber }) => ({
    what: `${percent(share)} is out of range.`,
    remedy: `Give ${percent(min)} to ${percent(max)}${isNumber ? "; as a number, 0.03 means 3 %" : ""}.`,
  }),
  "count-unreadable": ({ text }) => ({
    what: `${quoted(text)} is not a whole number.`,
    remedy: "Write a number of pieces such as 2.",
  }),
  "count-out-of-range": ({ count, min, max }) => ({
    what: `The number ${count} is out of range.`,
    remedy: `Give ${min} to ${max}.`,
  }),
  "money-unreadable": ({ text }) => ({
    what: `${quoted(text)} is not an amount of money.`,
    remedy: "Write it like 12.50.",
  }),
  "thickness-range": ({ text, lowMm, highMm }) => ({
    what: `${quoted(text)} says a range: ${lowMm.toFixed(2)} to ${highMm.toFixed(2)} mm.`,
    remedy: "Measure the skin where the strap will be cut and write that one thickness, for example in mm.",
  }),
  "thickness-in-cloth-ounces": ({ text }) => ({
    what: `${quoted(text)} is a weight of cloth, not a thickness.`,
    remedy:
      "Measure a folded stack, divide by its layers, and write mm. (Only leather is sold by ounces of thickness.)",
  }),
};
