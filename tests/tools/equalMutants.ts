// Changes that no input can tell from the source, read by hand one by one; `npm run mutate` counts them apart, and
// says so when one of them is noticed all the same.

import { EQUAL_DRAWN } from "./equalDrawn.ts";
import type { Mutant } from "./mutants.ts";

/** Changes in `line`, a part of the line they are in, that nobody can notice. */
export interface Equal {
  readonly file: string;
  readonly line: string;
  readonly changes: readonly string[];
  readonly why: string;
}

const SKIPS = "only spares work: what is let through gives nothing further on";
const FRACTIONS = "tells only where two lengths in fractions agree to the last digit";
const SIGNS = "the factor is 1 or −1";

export const EQUAL: readonly Equal[] = [
  {
    file: "geometry/biarc.ts",
    line: "const MOST_HALVINGS = 24;",
    changes: ["24 → 25"],
    why: "no curve is halved so often",
  },
  {
    file: "geometry/biarc.ts",
    line: "pair.every(([x, y]) => off(x, y) <= tolerance)",
    changes: ["<= → <"],
    why: FRACTIONS,
  },
  {
    file: "geometry/biarc.ts",
    line: "visit(t0, (t0 + t1) / 2, halvings + 1);",
    changes: ["1 → 2"],
    why: "no curve is halved so often",
  },
  {
    file: "geometry/box.ts",
    line: "if (x < minX) minX = x;",
    changes: ["< → <="],
    why: "of two as far out either is the farthest",
  },
  {
    file: "geometry/box.ts",
    line: "if (x > maxX) maxX = x;",
    changes: ["> → >="],
    why: "of two as far out either is the farthest",
  },
  {
    file: "geometry/box.ts",
    line: "if (y < minY) minY = y;",
    changes: ["< → <="],
    why: "of two as far out either is the farthest",
  },
  {
    file: "geometry/box.ts",
    line: "if (y > maxY) maxY = y;",
    changes: ["> → >="],
    why: "of two as far out either is the farthest",
  },
  {
    file: "geometry/boxIndex.ts",
    line: "const MOST_CELLS = 4096;",
    changes: ["4096 → 4097"],
    why: SKIPS,
  },
  {
    file: "geometry/boxIndex.ts",
    line: "Math.floor((x - least) / wide)",
    changes: ["/ → *", "- → +", "1 → 2"],
    why: "in which cells things are looked for only spares work, where all are looked for alike",
  },
  {
    file: "geometry/boxIndex.ts",
    line: "const count = Math.max(1, Math.min(MOST_CELLS, things.length));",
    changes: ["1 → 2"],
    why: "in how many cells things are looked for only spares work",
  },
  {
    file: "geometry/freeCells.kernel.ts",
    line: "if (low > row) continue;",
    changes: ["low > row → false"],
    why: "columns that begin above have no height yet, and no area",
  },
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
    file: "geometry/clipper.ts",
    line: "export const CLIPPER_RANGE = 47_453_132;",
    changes: ["47_453_132 → 47453133"],
    why: "a grid finer by one part in 47 million",
  },
  {
    file: "geometry/clipper.ts",
    line: "const spare = Math.abs(distance)",
    changes: ["* → /", "1 → 2"],
    why: "beyond its quick range the library reckons with longer numbers",
  },
  {
    file: "geometry/clipper.ts",
    line: "Math.max(join.tolerance * scale, 0.25) : 0.25;",
    changes: ["0.25 → 1.25"],
    why: "a step of the grid is millionths of a millimetre, and mitres have no arcs",
  },
  {
    file: "geometry/clipper.ts",
    line: "if (rings.length === 0) return [];",
    changes: ["rings.length === 0 → false"],
    why: "nothing grown is nothing",
  },
  {
    file: "geometry/contourEdits.ts",
    line: "if (vertices.length <= 9) return contour;",
    changes: ["9 → 10"],
    why: "corners take three numbers each",
  },
  {
    file: "geometry/convexParts.ts",
    line: "const key = (a: number, b: number): number => a * (total / 2) + b;",
    changes: ["* → /", "/ → *", "2 → 3"],
    why: "each pair has a number of its own all the same",
  },
  {
    file: "geometry/convexParts.ts",
    line: "if (twice < 0) [b, c] = [c, b];",
    changes: ["< → <="],
    why: "triangles of no area are passed over before",
  },
  {
    file: "geometry/cornerEnds.ts",
    line: "if (Math.abs(cross) < STRAIGHT_ON && dot > 0)",
    changes: ["> → >=", "< → <=", "0 → 1"],
    why: "where the sine is next to nothing the cosine is next to 1 or −1",
  },
  {
    file: "geometry/cornerEnds.ts",
    line: "if (reach > MITRE_LIMIT * widest + SAME)",
    changes: ["> → >=", "+ → -"],
    why: FRACTIONS,
  },
  {
    file: "geometry/cornerEnds.ts",
    line: "if (ahead <= 0 || back <= 0) return null;",
    changes: ["<= → <"],
    why: FRACTIONS,
  },
  {
    file: "geometry/cornerEnds.ts",
    line: "if (dot >= -SAME) return null;",
    changes: [">= → >"],
    why: FRACTIONS,
  },
  {
    file: "geometry/cornerEnds.ts",
    line: "if (!(after / dot < before && dot > 0)) return null;",
    changes: ["< → <=", "> → >=", "0 → 1"],
    why: "asked where the sides are far from each other, outward at gentle corners or inward",
  },
  {
    file: "geometry/crossing.ts",
    line: "if (abc * abd < 0 && cda * cdb < 0) {",
    changes: ["* → /"],
    why: "only the sign is asked; a corner on the other edge is found as well",
  },
  {
    file: "geometry/freeCells.kernel.ts",
    line: "while (depth > 0 && from[stack[depth - 1]!]! <= start) {",
    changes: ["> → >=", "<= → <"],
    why: "below the stack stands no number; the first of columns as high as each other reaches as far",
  },
  {
    file: "geometry/halfContour.ts",
    line: "if (end === null || Math.abs(end.y1 - level) > ON_LINE",
    changes: ["|| → &&", "> → >="],
    why: "what lies above begins and ends on the line at once",
  },
  {
    file: "geometry/freeCells.kernel.ts",
    line: "if (column < columns && blocked[row * columns + column] !== 0)",
    changes: ["< → <="],
    why: "what is written behind the end of a typed array is dropped",
  },
  {
    file: "geometry/insertTooth.ts",
    line: "- circle.radius) > ON_EDGE) return null;",
    changes: ["> → >="],
    why: FRACTIONS,
  },
  {
    file: "geometry/insertTooth.ts",
    line: "if (at - step < 1e-9 || at + step > sweep - 1e-9) return null;",
    changes: ["- → +", "< → <=", "> → >="],
    why: FRACTIONS,
  },
  {
    file: "geometry/kerfContour.ts",
    line: "return ahead > 0 ? 0 : null;",
    changes: ["> → >="],
    why: FRACTIONS,
  },
  {
    file: "geometry/noFit.ts",
    line: ".filter((ring) => ring.length > 0)",
    changes: ["0 → 1"],
    why: "a tidy ring has no number or six at least",
  },
  {
    file: "geometry/ring.ts",
    line: "for (let i = 0; i < ring.length; i += 2) {",
    changes: ["< → <="],
    why: "what is written behind the end of a typed array is dropped",
  },
  {
    file: "geometry/inside.ts",
    line: "for (let i = 0, j = ring.length - 2; i < ring.length;",
    changes: ["< → <="],
    why: "behind the last corner stand no numbers, which are on no side",
  },
  {
    file: "geometry/contourEdits.ts",
    line: "if (fromEnd ? at > AS_FAR : at < now - AS_FAR) continue;",
    changes: ["> → >=", "< → <="],
    why: FRACTIONS,
  },
  {
    file: "geometry/kerfContour.ts",
    line: "const opening = cross * distance > 0;",
    changes: ["> → >=", "* → /"],
    why: "only its sign is asked, and an outline never runs back over its own edge",
  },
  {
    file: "geometry/kerfContour.ts",
    line: "if (half2 < 0) return [];",
    changes: ["half2 < 0 → false", "< → <="],
    why: "points that are no numbers are never the nearest, and circles that only touch have no corner",
  },
  {
    file: "geometry/noFit.ts",
    line: "if (members > 1 && vertices + more > MOST_AT_ONCE) close();",
    changes: ["> → >=", "1 → 2"],
    why: "what is united in which step is the same in the end",
  },
  {
    file: "geometry/noFit.ts",
    line: "if (aParts.length === 1 && bParts.length === 1)",
    changes: ["aParts.length === 1 && bParts.length === 1 → false"],
    why: "the union of one outline is that outline",
  },
  {
    file: "geometry/noFit.ts",
    line: "group.reduce((sum, ring) => sum + ring.length / 2, 0);",
    changes: ["0 → 1", "/ → *", "2 → 3"],
    why: "what is united in which step is the same in the end",
  },
  {
    file: "geometry/offsetEdges.ts",
    line: "(signedArea(b.outer) > signedArea(a.outer) ? b : a)",
    changes: ["> → >="],
    why: FRACTIONS,
  },
  {
    file: "geometry/offsetEdges.ts",
    line: "from: edgeDirection(before, 1),",
    changes: ["1 → 2"],
    why: "whatever is not the start is the end",
  },
  {
    file: "geometry/offsetEdges.ts",
    line: "edgeCircle(edge).radius <= inside)) return null;",
    changes: ["<= → <"],
    why: FRACTIONS,
  },
  {
    file: "geometry/unevenOffset.ts",
    line: "edge.bulge, edge.x1, edge.y1, 0), closed: false };",
    changes: ["0 → 1"],
    why: "no edge leaves the last corner of an open line",
  },
  {
    file: "geometry/offsetEdges.ts",
    line: "(end[1] - start[1]) * (edge.y1 - edge.y0) > 0;",
    changes: ["> → >="],
    why: FRACTIONS,
  },
  {
    file: "geometry/pointOnContour.ts",
    line: "ahead(circle.sweep > 0 ? turn : -turn);",
    changes: ["> → >="],
    why: "no arc has a sweep of nothing",
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
  {
    file: "units/rational.ts",
    line: "const scaled = exponent >= 0 ?",
    changes: [">= → >", "0 → 1"],
    why: "divided by 1 it is what it is multiplied by 1",
  },
  ...EQUAL_DRAWN,
];

/** What was read by hand of a change that nobody can notice. */
export function readAsEqual({ file, start, end, text }: Mutant, code: string): Equal | undefined {
  const line = code.slice(code.lastIndexOf("\n", start) + 1, code.indexOf("\n", start)).trim();
  const change = `${code.slice(start, end)} → ${text}`;
  return EQUAL.find((one) => file.endsWith(one.file) && line.includes(one.line) && one.changes.includes(change));
}
