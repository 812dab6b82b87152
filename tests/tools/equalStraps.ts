// Changes of units and straps that no input can tell from the source, read by hand one by one.
import type { Equal } from "./equalMutants.ts";
import { FRACTIONS } from "./equalShapes.ts";

export const EQUAL_STRAPS: readonly Equal[] = [
  {
    file: "straps/build/joins.ts",
    line: "if (best === undefined) return null;",
    changes: ["best === undefined → false"],
    why: "what is reckoned from no place is no length, which fits no stock",
  },
  {
    file: "straps/build/roundToRuler.ts",
    line: "- offers[i - 1]!.cutWidth) > SAME);",
    changes: ["> → >="],
    why: FRACTIONS,
  },
  {
    file: "straps/build/warnings.ts",
    line: "Math.abs(b - width) < Math.abs(a - width) ? b : a",
    changes: ["< → <="],
    why: "of two as near either will do",
  },
  {
    file: "straps/constructions/sewnTurned.ts",
    line: "reveal: facts.choices.reveal ?? 0 })",
    changes: ["0 → 1"],
    why: "said only where there is a reveal",
  },
  {
    file: "straps/build/buildStrap.ts",
    line: "if (usable === undefined) return null;",
    changes: ["usable === undefined → false"],
    why: "across a width that is no number nothing fits, which is null as well",
  },
  {
    file: "straps/build/buildStrap.ts",
    line: "...withFurtherRows(folding, stitching.value, wish.stitch?.extraRows ?? 0),",
    changes: ["0 → 1"],
    why: "without further rows their number is not asked",
  },
  {
    file: "straps/build/resolveWish.ts",
    line: "most !== undefined && layers >= 1 && layers <= 3) {",
    changes: ["1 → 2", ">= → >"],
    why: "one layer can be had wherever layers can be asked for",
  },
  {
    file: "straps/build/resolveWish.ts",
    line: "strip.levels.slice(1).map(",
    changes: ["1 → 2"],
    why: "a strip's last fold is never thicker than all before it",
  },
  {
    file: "straps/build/unusedChoices.ts",
    line: "return construction.rows(choices, 0, 0).some(",
    changes: ["0 → 1"],
    why: "what kinds of rows there are is asked, not where they lie",
  },
  {
    file: "straps/build/unusedChoices.ts",
    line: "[{}, { layers: 1 }].some((choices)",
    changes: ["1 → 2"],
    why: "any number of layers does",
  },
  {
    file: "straps/build/solveStrap.ts",
    line: "span.thickness.toFixed(6)",
    changes: ["6 → 7"],
    why: "far below any thickness",
  },
  {
    file: "straps/build/solveStrap.ts",
    line: "for (let i = 0; i < 40; i++) {",
    changes: ["40 → 41", "< → <="],
    why: "one halving more of what is far below any length",
  },
  {
    file: "straps/build/stripLines.ts",
    line: 'const lines = foldLinesOf(strip).map((y) => along("fold", y + trim, "fold"));',
    changes: ["+ → -"],
    why: "what is trimmed has no folds",
  },
  {
    file: "units/rational.ts",
    line: "const scaled = exponent >= 0 ?",
    changes: [">= → >", "0 → 1"],
    why: "divided by 1 it is what it is multiplied by 1",
  },
];
