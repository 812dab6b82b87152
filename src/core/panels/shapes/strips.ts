import { equalStrips, joinLoss } from "../bias/biasStrips.ts";
import {
  drawn,
  outlineOf,
  type ShapeOutline,
  type ShapeRecord,
  SIZE,
  type SizeFault,
  shapeRecord,
} from "./shapeRecord.ts";

const LENGTH = { least: 1, most: 100_000 };
const LONGEST = { id: "longest", ...LENGTH, usual: 1400, otherwise: 1400 } as const;
const JOIN = { id: "join", least: 0, most: 50, usual: 6, otherwise: 6 } as const;

/** Binding on the straight grain: `width` as cut, folded in four; strips no longer than `longest` joined end to end. */
export const binding: ShapeRecord = shapeRecord({
  dimensions: [{ id: "length", ...LENGTH, usual: 1200 }, { id: "width", ...SIZE, usual: 40 }, LONGEST, JOIN],
  outline: ({ length, width, longest, join }) =>
    strip({ length, width, longest, lost: 2 * join, slant: 0, folds: [0.25, 0.5, 0.75] }),
  places: ({ length, width }) => stripPlaces(length, width),
});

/**
 * True bias binding: strips that lie at 45° to the grain, their ends along it, sewn together there. The only pieces
 * that lie on the bias; what stretches elsewhere is wanted of a binding that goes round a curve.
 */
export const biasBinding: ShapeRecord = shapeRecord({
  dimensions: [{ id: "length", ...LENGTH, usual: 1200 }, { id: "width", ...SIZE, usual: 40 }, LONGEST, JOIN],
  outline: ({ length, width, longest, join }) =>
    strip({ length, width, longest, lost: joinLoss(join), slant: width, folds: [0.25, 0.5, 0.75] }),
  places: ({ length, width }) => stripPlaces(length, width),
});

/** The cover of a piping cord, on the true bias: round the cord, with `seam` beyond it on both sides. */
export const piping: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "length", ...LENGTH, usual: 1200 },
    { id: "cord", least: 0.5, most: 50, usual: 4 },
    { id: "seam", least: 1, most: 100, usual: 10 },
    LONGEST,
    JOIN,
  ],
  outline: ({ length, cord, seam, longest, join }) => {
    const width = Math.PI * cord + 2 * seam;
    return strip({ length, width, longest, lost: joinLoss(join), slant: width, folds: [0.5] });
  },
  places: ({ length, cord, seam }) => [
    { dimension: "length", from: [0, 0], to: [length, 0], off: -1 },
    { dimension: "seam", from: [length / 2, 0], to: [length / 2, seam], off: 0 },
    { dimension: "cord", from: [length / 4, seam], to: [length / 4, seam + Math.PI * cord], off: 0, round: true },
  ],
});

const stripPlaces = (length: number, width: number) =>
  [
    { dimension: "length", from: [0, 0], to: [length, 0], off: -1 },
    { dimension: "width", from: [length / 2, 0], to: [length / 2, width], off: 0 },
  ] as const;

interface StripWish {
  readonly length: number;
  readonly width: number;
  readonly longest: number;
  /** Length that each join takes. */
  readonly lost: number;
  /** How far the upper edge is shifted along the strip. */
  readonly slant: number;
  /** Fold lines, in shares of the width. */
  readonly folds: readonly number[];
}

/** One of the equal strips that make up a length. */
function strip({ length, width, longest, lost, slant, folds }: StripWish): ShapeOutline | SizeFault {
  const strips = equalStrips(length, longest, lost);
  if (strips === null) return { dimension: "longest", mm: longest, leastMm: lost + 1, mostMm: null };
  const at = (share: number) =>
    drawn("fold", [slant * share, width * share], [strips.length + slant * share, width * share]);
  return outlineOf(
    [
      [0, 0, 0, "bottom"],
      [strips.length, 0, 0, "end"],
      [strips.length + slant, width, 0, "top"],
      [slant, width, 0, "start"],
    ],
    { lines: folds.map(at), arrowDeg: slant === 0 ? 0 : 45, copies: strips.count },
  );
}
