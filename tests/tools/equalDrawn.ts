// Changes in drawings and sheets that no input can tell from the source, read by hand one by one.
import type { Equal } from "./equalMutants.ts";

const FRACTIONS = "tells only where two lengths in fractions agree to the last digit";

const SIGNS = "the factor is 1 or −1";
const SPARES = "only spares work: what is let through gives nothing further on";

export const EQUAL_DRAWN: readonly Equal[] = [
  {
    file: "drawing/lay/layDrawing.ts",
    line: "textWidth(name, 1)}`;",
    changes: ["1 → 2"],
    why: "only tells names of one width from those of another",
  },
  {
    file: "drawing/lay/layDrawing.ts",
    line: 'known.set(way, "none");',
    changes: ['known.set(way, "none"); → ;'],
    why: "only spares work: where there is no room it is looked for in vain once more",
  },
  {
    file: "drawing/machine/cutOrder.ts",
    line: "if (owner !== undefined) left.set(owner, left.get(owner)! - 1);",
    changes: ["- → +"],
    why: "only spares work: of an owner whose paths are all cut none is found, and any is taken",
  },
  {
    file: "drawing/machine/singleCuts.ts",
    line: "return parts.filter(({ from, to }) => to - from > NEAR);",
    changes: ["> → >="],
    why: FRACTIONS,
  },
  {
    file: "drawing/strap/layeredArt.ts",
    line: "for (let i = 1; i < vertices.length; i += 3) top",
    changes: ["< → <="],
    why: "vertices are threes: one past the last is two past the end",
  },
  {
    file: "drawing/lay/patternArt.ts",
    line: "if (xs.length * Math.max(1, ys.length) > MOST_MARKS) return [];",
    changes: ["xs.length * Math.max(1, ys.length) > MOST_MARKS → false"],
    why: "only spares work: marks are counted once more when they are made",
  },
  {
    file: "drawing/lay/patternArt.ts",
    line: "return xs.map((x) => motif(x + drop, y, size, symmetric));",
    changes: ["+ → -"],
    why: "half a repeat to either side are the same places, and lines go a repeat beyond the cloth",
  },
  {
    file: "drawing/list/labelSpot.ts",
    line: "for (let i = 0; i + 1 < xs.length; i += 2) spans.push([xs[i]!, xs[i + 1]!]);",
    changes: ["< → <=", "+ → -"],
    why: "closed outlines cross a level an even number of times",
  },
  {
    file: "drawing/list/labelSpot.ts",
    line: "maxX < lo || minX > hi",
    changes: ["< → <=", "> → >="],
    why: "of a stretch that a band only touches nothing is taken either way",
  },
  {
    file: "drawing/list/labelSpot.ts",
    line: "if (room < 0 || box.maxX - box.minX < width) return null;",
    changes: ["room < 0 || box.maxX - box.minX < width → false", "|| → &&"],
    why: SPARES,
  },
  {
    file: "drawing/list/labelSpot.ts",
    line: "for (let k = 0; k < ROWS; k++) {",
    changes: ["< → <="],
    why: "one level further the block would stand out of the outline",
  },
  {
    file: "drawing/machine/cutOrder.ts",
    line: "for (const path of paths) if (path.owner !== undefined) left.set(path.owner",
    changes: ["path.owner !== undefined → true"],
    why: "what is counted of no owner nobody asks for",
  },
  {
    file: "drawing/machine/cutOrder.ts",
    line: "if (away < best.away - 1e-9) best = { vertex: i, away };",
    changes: ["< → <="],
    why: FRACTIONS,
  },
  {
    file: "drawing/machine/overcut.ts",
    line: "* (isHole ? -1 : 1);",
    changes: ["* → /"],
    why: SIGNS,
  },
  {
    file: "drawing/panel/shapePicture.ts",
    line: "(upright ? (uy > 0 ? 1 : -1) : ux > 0 ? 1 : -1);",
    changes: ["> → >="],
    why: "of an upright way the rise is not 0, of another the run is not",
  },
  {
    file: "drawing/sheets/patternSheet.ts",
    line: "seed: 0,",
    changes: ["0 → 1"],
    why: "nothing is drawn of a plan's seed",
  },
  {
    file: "drawing/sheets/patternSheet.ts",
    line: "evaluations: 0,",
    changes: ["0 → 1"],
    why: "nothing is drawn of what a plan took",
  },
  {
    file: "drawing/sheets/tiling.ts",
    line: "if (grid.overlap === 0) return;",
    changes: ["grid.overlap === 0 → false"],
    why: "only spares work: without an overlap a sheet's own part is all of it",
  },
  {
    file: "drawing/sheets/windowTest.ts",
    line: "for (let at = 0; at + 2 < points.length; at += 2 * RUN) {",
    changes: ["< → <="],
    why: "a run of a single point has no edge",
  },
  {
    file: "drawing/strap/dimensionLine.ts",
    line: "const end = y + away * OVERSHOOT;",
    changes: ["* → /"],
    why: SIGNS,
  },
  {
    file: "drawing/strap/stripOutline.ts",
    line: "const turn = out * up;",
    changes: ["* → /"],
    why: SIGNS,
  },
  {
    file: "drawing/strap/stripOutline.ts",
    line: "const insideIsLeft = out * up < 0;",
    changes: ["* → /", "0 → 1", "< → <="],
    why: SIGNS,
  },
  {
    file: "drawing/strap/stripOutline.ts",
    line: "const insideIsLeft = out * up > 0;",
    changes: ["* → /", "> → >="],
    why: SIGNS,
  },
  {
    file: "drawing/lay/layDrawing.ts",
    line: "{ turned: false, crossedToo: false, least: 0 },",
    changes: ["0 → 1"],
    why: "no letters are lower than 1.8 mm",
  },
  {
    file: "drawing/machine/cutOrder.ts",
    line: "if (!best || start.away < best.start.away - 1e-9) best =",
    changes: ["< → <="],
    why: FRACTIONS,
  },
  {
    file: "drawing/machine/machineDrawing.ts",
    line: "x >= grip - 1e-9; x -= SQUARE_STEP)",
    changes: [">= → >"],
    why: FRACTIONS,
  },
  {
    file: "drawing/machine/singleCuts.ts",
    line: "return { x0, y0, x1, y1, bulge: sweep > 0 ? bulge : -bulge };",
    changes: ["> → >="],
    why: "an arc turns one way or the other",
  },
  {
    file: "drawing/lay/patternArt.ts",
    line: "if (marks.length === 0 || marks.length > MOST_MARKS) return [];",
    changes: ["0 → 1"],
    why: "lines are taken from one repeat before the cloth to one after it: three at least, or none",
  },
  {
    file: "drawing/lay/patternArt.ts",
    line: "const count = Math.min(MOST_MARKS + 1, ",
    changes: ["1 → 2"],
    why: "one more than too many is too many",
  },
  {
    file: "drawing/lay/yieldPictures.ts",
    line: "if (y(count) - low >= TEXT * 1.1) {",
    changes: [">= → >"],
    why: FRACTIONS,
  },
  {
    file: "drawing/sheets/windowTest.ts",
    line: "for (let at = 0; at + 2 < points.length; at += 2 * RUN) {",
    changes: ["2 → 3"],
    why: "points are pairs of numbers: what is left is even",
  },
  {
    file: "drawing/lay/yieldPictures.ts",
    line: "if (middle - half < free) continue;",
    changes: ["< → <="],
    why: FRACTIONS,
  },
  {
    file: "drawing/list/labelSpot.ts",
    line: "if (x0 >= minX && x0 <= maxX && y0 >= minY && y0 <= maxY) return true;",
    changes: ["x0 >= minX && x0 <= maxX && y0 >= minY && y0 <= maxY → false", ">= → >", "<= → <"],
    why: "only spares work: the box's corners tell the same of a segment that begins in it",
  },
  {
    file: "drawing/machine/singleCuts.ts",
    line: "const back = ux < -1e-9 || (Math.abs(ux) <= 1e-9 && uy < 0);",
    changes: ["< → <=", "<= → <"],
    why: FRACTIONS,
  },
  {
    file: "drawing/sheets/patternSheet.ts",
    line: "const usable = usableSize(paper, false);",
    changes: ["false → true"],
    why: "the shorter side is the same however the sheet lies",
  },
  {
    file: "drawing/sheets/printer.ts",
    line: "if (offX <= READABLE && offY <= READABLE) {",
    changes: ["<= → <"],
    why: FRACTIONS,
  },
  {
    file: "drawing/sheets/tilePages.ts",
    line: "made.set(key, items);",
    changes: ["made.set(key, items); → ;"],
    why: "only spares work: the same lines are drawn anew",
  },
];
