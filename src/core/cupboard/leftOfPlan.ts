import { ringBox } from "../geometry/box.ts";
import { posePolygon } from "../geometry/pose.ts";
import type { Polygon } from "../geometry/ring.ts";
import { LEAST_OFFCUT } from "../lay/alternatives/layFigures.ts";
import type { LayPlan, LayProblem, RollStock, Stock } from "../lay/problem/layProblem.ts";
import type { MaterialStock } from "../materials/stock.ts";
import { clothBox, type LeftOutline, leftOutlines, mirrored, openedFlat } from "./leftOutlines.ts";

/** A piece that a plan leaves, without the code that it will have. */
export interface LeftPiece {
  /** The stock it was cut from. */
  readonly stockId: string;
  /** Its id is empty. */
  readonly stock: MaterialStock;
}

/** An outline that is left, as cloth that can be laid on. */
interface LeftCloth extends LeftOutline {
  readonly firstLine: MaterialStock["firstLine"];
}

/**
 * What a plan leaves of every stock that it cuts: the uncut end of a roll as a roll, everything else as outlines; of
 * cloth cut in several layers, each layer's. Nothing narrower than `LEAST_OFFCUT`.
 *
 * `boughtLength` gives how far an open roll reaches, as it lies, mm: beyond what is used lies what the shop's steps
 * add. Cost: as polygon booleans of all points.
 */
export function leftOfPlan(
  problem: LayProblem,
  plan: LayPlan,
  boughtLength: (stockId: string) => number,
): LeftPiece[] {
  return problem.stocks.flatMap((stock): LeftPiece[] => {
    const used = plan.uses.find(({ stockId }) => stockId === stock.id)?.usedLength ?? 0;
    if (used <= 0) return [];
    const cut = cutOut(problem, plan, stock);
    if (stock.kind === "remnant")
      return leftOutlines(stock.outline, cut).map((left) => remnantOf(stock, withLine(left, stock)));
    const rest = restOfRoll(problem, stock, used);
    const reach = rest === null ? Math.max(used, stock.length ?? boughtLength(stock.id)) : used;
    return [...rollLeft(problem, stock, reach, cut), ...(rest === null ? [] : [rest])];
  });
}

/** Everything that lies on a stock or must not be cut from it. */
function cutOut(problem: LayProblem, plan: LayPlan, stock: Stock): Polygon[] {
  const outlines = new Map(problem.pieces.map(({ id, outline }) => [id, outline]));
  const laid = plan.placements.filter(({ stockId }) => stockId === stock.id);
  return [...laid.map((placement) => posePolygon(outlines.get(placement.pieceId)!, placement)), ...stock.flaws];
}

/** Leftovers of a roll's used part, of every layer. */
function rollLeft(problem: LayProblem, roll: RollStock, reach: number, cut: readonly Polygon[]): LeftPiece[] {
  const { spread } = problem;
  if (roll.folded === true) {
    // Both halves at once: what touches the fold is one piece opened flat.
    const flat = clothBox(0, -roll.width, reach, 2 * roll.width);
    return leftOutlines(flat, openedFlat(cut)).map((left) => remnantOf(roll, withLine(left, roll)));
  }
  const top = leftOutlines(clothBox(0, 0, reach, roll.width), cut);
  const layers = spread?.layers ?? 1;
  const under = Array.from({ length: layers - 1 }, (_, i) => spread?.faces === "together" && i % 2 === 0);
  const back = under.includes(true)
    ? leftOutlines(clothBox(0, -roll.width, reach, roll.width), cut.map(turnedOver))
    : [];
  const below = under
    .flatMap((isTurned) => (isTurned ? back : top))
    .map((left) => ({ ...left, firstLine: undefined }));
  return [...top.map((left) => withLine(left, roll)), ...below].map((left) => remnantOf(roll, left));
}

function turnedOver({ outer, holes }: Polygon): Polygon {
  return { outer: mirrored(outer), holes: holes.map(mirrored) };
}

/** The uncut end of a measured roll, where there is enough of it to keep. */
function restOfRoll({ spread }: LayProblem, roll: RollStock, used: number): LeftPiece | null {
  const lengths = roll.folded === true ? 1 : (spread?.layers ?? 1);
  // Several lengths are cut off one after the other; what is left of the roll is behind the last.
  const length = roll.length === null ? 0 : Math.round((roll.length - used) * lengths * 1000) / 1000;
  const width = roll.folded === true ? 2 * roll.width : roll.width;
  if (length < LEAST_OFFCUT || width < LEAST_OFFCUT) return null;
  const flaws = lengths > 1 ? [] : roll.flaws.flatMap((flaw) => flawBehind(flaw, used));
  return {
    stockId: roll.id,
    stock: { kind: "roll", id: "", width, selvedge: 0, length, squaring: 0, flaws },
  };
}

/** A flaw as its box, measured from where the roll is cut off. */
function flawBehind({ outer }: Polygon, used: number): LeftOutline["flaws"] {
  const { minX, minY, maxX, maxY } = ringBox(outer);
  const from = Math.max(minX, used);
  if (maxX <= from) return [];
  return [{ x: from - used, y: minY, shape: { kind: "rectangle", along: maxX - from, across: maxY - minY } }];
}

function withLine(left: LeftOutline, { firstLine }: Stock): LeftCloth {
  if (firstLine === undefined) return { ...left, firstLine: undefined };
  return { ...left, firstLine: { along: firstLine[0] - left.x, across: firstLine[1] - left.y } };
}

function remnantOf({ id }: Stock, { shape, flaws, firstLine }: LeftCloth): LeftPiece {
  return {
    stockId: id,
    stock: { kind: "remnant", id: "", shape, flaws, count: 1, ...(firstLine ? { firstLine } : {}) },
  };
}
