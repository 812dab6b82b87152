// Changes that no input can tell from the source, read by hand one by one; `npm run mutate` counts them apart, and
// says so when one of them is noticed all the same.

import { EQUAL_DRAWN } from "./equalDrawn.ts";
import { EQUAL_SHAPES, FRACTIONS } from "./equalShapes.ts";
import { EQUAL_STRAPS } from "./equalStraps.ts";
import type { Mutant } from "./mutants.ts";

/** Changes in `line`, a part of the line they are in, that nobody can notice. */
export interface Equal {
  readonly file: string;
  readonly line: string;
  readonly changes: readonly string[];
  readonly why: string;
}

const SKIPS = "only spares work: what is let through gives nothing further on";
const SIGNS = "the factor is 1 or −1";

export const EQUAL: readonly Equal[] = [
  ...EQUAL_SHAPES,
  ...EQUAL_STRAPS,
  {
    file: "lay/check/checkPairs.ts",
    line: "other.outline.maxX + gap > copy.outline.minX",
    changes: ["> → >="],
    why: SKIPS,
  },
  {
    file: "lay/check/checkPairs.ts",
    line: "if (commonX <= -gap || commonY <= -gap) return null;",
    changes: ["commonX <= -gap || commonY <= -gap → false", "|| → &&", "<= → <"],
    why: SKIPS,
  },
  {
    file: "lay/check/checkPairs.ts",
    line: "if (commonX > 0 && commonY > 0 && commonX * commonY > allowed) {",
    changes: ["commonX > 0 && commonY > 0 && commonX * commonY > allowed → true", "&& → ||", "> → >="],
    why: SKIPS,
  },
  {
    file: "lay/check/checkPairs.ts",
    line: "if (gap <= 0) return null;",
    changes: ["gap <= 0 → false", "<= → <"],
    why: "no distance is less than no gap",
  },
  {
    file: "lay/check/checkPattern.ts",
    line: "if (pattern[axis] !== null)",
    changes: ["pattern[axis] !== null → true"],
    why: "distances to what does not repeat are no numbers, and none is too large",
  },
  {
    file: "lay/check/checkPattern.ts",
    line: "const isUpright = Math.abs(xAxis[0]) > 0.5;",
    changes: ["> → >="],
    why: "matched pieces lie at quarter turns: 0 or 1",
  },
  { file: "lay/check/checkPattern.ts", line: "xAxis[0] * match.senseX", changes: ["* → /"], why: SIGNS },
  { file: "lay/check/checkPattern.ts", line: "yAxis[0] * match.senseY", changes: ["* → /"], why: SIGNS },
  { file: "lay/check/checkPattern.ts", line: "(way < 0 ? -1 : 1)", changes: ["< → <=", "0 → 1"], why: SIGNS },
  {
    file: "lay/check/checkPattern.ts",
    line: "from[axis] - (rows * repeat) / 2;",
    changes: ["- → +"],
    why: "half a repeat on and half a repeat back are the same place",
  },
  {
    file: "lay/check/checkPattern.ts",
    line: "across: rows ?? 0, [axis]: at",
    changes: ["0 → 1"],
    why: "without rows nothing is dropped, and across is not asked",
  },
  {
    file: "lay/check/checkPattern.ts",
    line: "{ off: 0, one: first },",
    changes: ["0 → 1"],
    why: "the first piece itself puts it right",
  },
  {
    file: "lay/check/checkPattern.ts",
    line: "off - low.off > high.off - off ? low : high",
    changes: ["> → >="],
    why: "in the middle it is near enough to both",
  },
  {
    file: "lay/check/checkShade.ts",
    line: "(mirrored ? 180 : 0)",
    changes: ["+ → -"],
    why: "half a turn on and half a turn back are the same",
  },
  {
    file: "lay/check/checkSpread.ts",
    line: "const plain = laidOutline(outline, { x: 0, y: 0,",
    changes: ["0 → 1"],
    why: "the mirror image is put where the piece is",
  },
  {
    file: "lay/check/checkSpread.ts",
    line: ">= (1 - SAME_SHARE) * plain.area",
    changes: [">= → >"],
    why: FRACTIONS,
  },
  {
    file: "lay/check/checkSpread.ts",
    line: "const own = lengthAt(laidOutline(half.outline, { x: 0,",
    changes: ["0 → 1", "false → true"],
    why: "an edge is as long farther along and turned over",
  },
  {
    file: "lay/check/checkSpread.ts",
    line: "lengthAt(copy.outline, tolerance) >= own - tolerance",
    changes: [">= → >"],
    why: FRACTIONS,
  },
  {
    file: "lay/check/checkSpread.ts",
    line: "for (let i = 0; i < edges.length; i += 4)",
    changes: ["< → <="],
    why: "behind the last edge stand no numbers, which are not on the fold",
  },
  {
    file: "lay/check/checkStock.ts",
    line: "const end = Math.min(length, Math.max(maxX, 0) + 1);",
    changes: ["0 → 1", "1 → 2"],
    why: "how far the roll goes beyond the piece takes no part",
  },
  {
    file: "lay/check/checkStock.ts",
    line: "if (margin <= 0) return null;",
    changes: ["margin <= 0 → false", "<= → <"],
    why: "no distance is less than no margin",
  },
  {
    file: "lay/check/checkStock.ts",
    line: "if (flaw.minX - outline.maxX >= gap",
    changes: ["flaw.minX - outline.maxX >= gap || outline.minX - flaw.maxX >= gap → false", "|| → &&", ">= → >"],
    why: SKIPS,
  },
  {
    file: "lay/check/checkStock.ts",
    line: "if (flaw.minY - outline.maxY >= gap",
    changes: ["flaw.minY - outline.maxY >= gap || outline.minY - flaw.maxY >= gap → false", "|| → &&", ">= → >"],
    why: SKIPS,
  },
  {
    file: "lay/check/checkStock.ts",
    line: "if (gap <= 0) return [];",
    changes: ["gap <= 0 → false", "<= → <"],
    why: "no distance is less than no gap",
  },
  {
    file: "lay/check/laidOutline.ts",
    line: "edges.set(x1 <= x2",
    changes: ["<= → <"],
    why: "an upright edge may begin at either end",
  },
  { file: "lay/check/laidOutline.ts", line: "twice += ", changes: ["+= → -="], why: "only its size is asked" },
  {
    file: "lay/check/laidOutline.ts",
    line: "for (let i = 0; i < ring.length; i += 2) {",
    changes: ["< → <="],
    why: "what is written behind the end of a typed array is dropped",
  },
  {
    file: "lay/check/outlineDistance.ts",
    line: "if (bx1 - ax2 >= least",
    changes: ["bx1 - ax2 >= least || ax1 - bx2 >= least → false", "|| → &&", ">= → >"],
    why: SKIPS,
  },
  {
    file: "lay/check/outlineDistance.ts",
    line: "if (Math.min(by1, by2) - high >= least",
    changes: [
      "Math.min(by1, by2) - high >= least || low - Math.max(by1, by2) >= least → false",
      "|| → &&",
      ">= → >",
    ],
    why: SKIPS,
  },
  {
    file: "lay/check/outlineDistance.ts",
    line: "if (x1 - other.maxX >= reach",
    changes: ["x1 - other.maxX >= reach || other.minX - x2 >= reach → false", "|| → &&", ">= → >"],
    why: SKIPS,
  },
  {
    file: "lay/check/outlineDistance.ts",
    line: "if (Math.min(y1, y2) - other.maxY >= reach",
    changes: [
      "Math.min(y1, y2) - other.maxY >= reach || other.minY - Math.max(y1, y2) >= reach → false",
      "|| → &&",
      ">= → >",
    ],
    why: SKIPS,
  },
  {
    file: "lay/check/outlineDistance.ts",
    line: "side(ax1, ay1, bx1, by1, bx2, by2) * side(",
    changes: ["< → <=", "* → /"],
    why: "what only touches is no distance apart by its corners",
  },
  {
    file: "lay/check/outlineDistance.ts",
    line: "side(bx1, by1, ax1, ay1, ax2, ay2) * side(",
    changes: ["< → <=", "* → /"],
    why: "what only touches is no distance apart by its corners",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "if (from >= to || Math.max(a.minY, b.minY) >= top) return 0;",
    changes: ["from >= to || Math.max(a.minY, b.minY) >= top → false", "|| → &&", ">= → >"],
    why: SKIPS,
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "for (let i = 0; i < edges.length; i += 4) {",
    changes: ["< → <="],
    why: "behind the last edge stands nothing, which is taken for an upright edge",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "if (x1 >= to || x2 <= from || x1 === x2) continue;",
    changes: ["x1 >= to || x2 <= from || x1 === x2 → false", "|| → &&", ">= → >", "<= → <"],
    why: "edges outside and upright ones lie in no slab",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "if (y1 > top && y2 > top) continue;",
    changes: ["y1 > top && y2 > top → false", "> → >="],
    why: "edges above cover nothing below",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "slope: (y2 - y1) / (x2 - x1), owner, y: 0",
    changes: ["0 → 1"],
    why: "set anew for each slab before it is read",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "return x - edge.x1 < edge.x2 - x ?",
    changes: ["< → <=", "- → +"],
    why: "reckoned from either end the height is the same but for rounding",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "if (x > from && x < to) borders.push(x);",
    changes: ["x > from && x < to → true", "&& → ||", "> → >=", "< → <="],
    why: "one more border parts a slab that counts, or one where nothing lies",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "if (other.x2 <= edge.x1) continue;",
    changes: ["other.x2 <= edge.x1 → false", "<= → <"],
    why: "one more border parts a slab, whose parts have the same sum",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "if (before * after < 0) note(",
    changes: ["before * after < 0 → true", "< → <=", "* → /", "0 → 1"],
    why: "one more border parts a slab, whose parts have the same sum",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "edges[next]!.x1 < middle",
    changes: ["< → <="],
    why: "no edge begins in the middle of a slab",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "active.filter((edge) => edge.x2 > middle)",
    changes: ["> → >="],
    why: "no edge ends in the middle of a slab",
  },
  {
    file: "lay/check/overlapArea.ts",
    line: "if (width <= 0) continue;",
    changes: ["width <= 0 → false", "<= → <"],
    why: "a slab without width has no area",
  },
  ...EQUAL_DRAWN,
];

/** What was read by hand of a change that nobody can notice. */
export function readAsEqual({ file, start, end, text }: Mutant, code: string): Equal | undefined {
  const line = code.slice(code.lastIndexOf("\n", start) + 1, code.indexOf("\n", start)).trim();
  const change = `${code.slice(start, end)} → ${text}`;
  return EQUAL.find((one) => file.endsWith(one.file) && line.includes(one.line) && one.changes.includes(change));
}
