// Changes in drawings and sheets that no input can tell from the source, read by hand one by one.
import type { Equal } from "./equalMutants.ts";

const FRACTIONS = "tells only where two lengths in fractions agree to the last digit";

export const EQUAL_DRAWN: readonly Equal[] = [
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
