import type { Page } from "../../../core/drawing/list/page.ts";
import type { LayPlan, StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import type { RulerAnswer } from "../../exports/protocol.ts";
import { keyOf } from "../lay/moves.ts";
import type { PieceKind } from "../lay/pieceKind.ts";

/** One thing to do at the cutting table: a cut of the ruler, or a piece to cut out. */
export interface CuttingStep {
  readonly key: string;
  readonly heading: string;
  readonly lines: readonly string[];
  readonly stockId: string;
  /** The cut as it is drawn on the sheets; null where a piece is cut out along its line. */
  readonly picture: Page | null;
  /** Key of the piece, or null for a cut. */
  readonly piece: string | null;
}

/**
 * What to cut, in order: the ruler's cuts of every stock that the plan can be cut on from edge to edge, else its pieces
 * from the cut end on.
 */
export function cuttingSteps(
  plan: LayPlan,
  kinds: ReadonlyMap<string, PieceKind>,
  ruler: RulerAnswer | null,
): readonly CuttingStep[] {
  const stockIds = [...new Set(plan.placements.map(({ stockId }) => stockId))];
  return stockIds.flatMap((stockId) => {
    const cards = ruler?.isOnTable === true ? ruler.stacks.find((each) => each.stockId === stockId)?.cards : null;
    if (cards) return cards.map((card) => cutStep(card, stockId));
    return plan.placements
      .filter((placement) => placement.stockId === stockId)
      .sort((a, b) => a.x - b.x || a.y - b.y)
      .map((placement) => pieceStep(placement, kinds));
  });
}

function cutStep(
  { number, words, picture }: { number: number; words: readonly string[]; picture: Page },
  stockId: string,
): CuttingStep {
  const [heading = "", ...lines] = words.map(unbroken);
  return { key: `${stockId}/${number}`, heading, lines, stockId, picture, piece: null };
}

function pieceStep(placement: StockPlacement, kinds: ReadonlyMap<string, PieceKind>): CuttingStep {
  const kind = kinds.get(placement.pieceId);
  const number = kind !== undefined && kind.count > 1 ? ` ${placement.copy + 1}/${kind.count}` : "";
  return {
    key: keyOf(placement),
    heading: `${kind?.name ?? ""}${number}`,
    lines: kind === undefined ? [] : [kind.detail],
    stockId: placement.stockId,
    picture: null,
    piece: keyOf(placement),
  };
}
