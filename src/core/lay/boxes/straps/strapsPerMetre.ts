import { ringBox } from "../../../geometry/box.ts";
import type { CutPiece } from "../../../materials/cutPiece.ts";
import type { LayPiece, LayProblem } from "../../problem/layProblem.ts";
import { type StrapYield, strapYield } from "./strapYield.ts";

const METRE = 1000;

/** How many strips of one piece a metre of the material's roll gives. */
export interface StripsPerMetre {
  readonly piece: CutPiece;
  readonly yield: StrapYield;
}

/** Strips of every strap on a metre of their roll; materials without a roll and lengths to be joined are left out. */
export function strapsPerMetre(pieces: readonly CutPiece[], problems: readonly LayProblem[]): StripsPerMetre[] {
  return problems.flatMap((problem) => {
    const roll = problem.stocks.findLast((stock) => stock.kind === "roll");
    if (roll?.kind !== "roll") return [];
    const clothWidth = roll.width - 2 * problem.margin;
    return pieces
      .filter(({ kind, joined, materialId }) => kind === "strip" && !joined && materialId === problem.materialId)
      .flatMap((piece) => {
        const laid = problem.pieces.find(({ id }) => id === piece.id);
        const directions = laid && directionsOf(laid);
        if (!laid || !directions || clothWidth <= 0) return [];
        const box = ringBox(laid.outline.outer);
        const strip = { strapLength: box.maxX - box.minX, strapWidth: box.maxY - box.minY };
        return [{ piece, yield: strapYield({ ...strip, clothWidth, gap: problem.gap, directions }, METRE) }];
      });
  });
}

function directionsOf({ orientations }: LayPiece): "both" | "lengthwise" | "crosswise" | null {
  const along = orientations.some(({ turnDeg }) => turnDeg % 180 === 0);
  const across = orientations.some(({ turnDeg }) => turnDeg % 180 === 90);
  if (along && across) return "both";
  if (along) return "lengthwise";
  return across ? "crosswise" : null;
}
