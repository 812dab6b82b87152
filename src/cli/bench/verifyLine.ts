import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import type { LayProblem, StockPlacement, Unplaced } from "../../core/lay/problem/layProblem.ts";
import type { CutMode } from "../../core/lay/search/engine.ts";
import type { BenchLine } from "./benchLine.ts";
import { benchProblem } from "./benchProblem.ts";
import type { Instance } from "./dataset.ts";
import { cutsEdgeToEdge } from "./edgeToEdge.ts";

/** Share by which the printed length may differ from the one that the printed placements measure. */
const SAME_LENGTH = 1e-9;

/**
 * Faults of a printed line, judged from the raw outlines and the printed placements alone; sentences, empty when
 * valid. Uses the checker of lay plans, which shares nothing with the search, and in the ruler modes a cut test of
 * its own.
 */
export function verifyLine(
  instance: Instance,
  line: BenchLine,
  quarterTurns: boolean,
  mode: CutMode = "free",
): string[] {
  const problem = benchProblem(instance, quarterTurns);
  const index = new Map(instance.items.map(({ item }, i) => [item, i]));
  const placements = line.placements.map(({ item, copy, x, y, rotation, mirrored }): StockPlacement => {
    const at = index.get(item) ?? -1;
    // A printed rectangle is placed by the corner of its turned box, an outline by its own origin.
    const across =
      instance.kind !== "irregular-strip" && rotation === 90 ? (instance.items[at]?.points[2]?.[1] ?? 0) : 0;
    return { pieceId: `${at}`, copy, stockId: "strip", x: x + across, y, turnDeg: rotation, mirrored };
  });
  const isSheet = instance.sheetLength !== null;
  const laid = new Map<string, number>();
  for (const { pieceId } of placements) laid.set(pieceId, (laid.get(pieceId) ?? 0) + 1);
  const plan = {
    materialId: line.name,
    placements,
    unplaced: isSheet ? leftOf(problem, laid) : [],
    uses: isSheet ? [] : [{ stockId: "strip", usedLength: line.length, bound: line.bound }],
    evaluations: 0,
    seed: 0,
  };
  const area = line.density * line.length * line.stripWidth;
  const shapes = problem.pieces.reduce(
    (sum, { id, outline }) => sum + (laid.get(id) ?? 0) * shoelace(outline.outer),
    0,
  );
  const faults = checkPlan(problem, plan).map((finding) => JSON.stringify(finding));
  if (Math.abs(area - shapes) > SAME_LENGTH * shapes) faults.push(`density ${line.density} does not agree`);
  if (mode !== "free" && !cutsEdgeToEdge(boxesOf(instance, line), SAME_LENGTH * line.length))
    faults.push("it cannot be cut from edge to edge");
  return faults;
}

/** What a sheet did not take. */
function leftOf({ pieces }: LayProblem, laid: ReadonlyMap<string, number>): Unplaced[] {
  return pieces.flatMap(({ id, count }): Unplaced[] => {
    const left = count - (laid.get(id) ?? 0);
    return left === 0 ? [] : [{ pieceId: id, count: left, reason: "stock-used-up" }];
  });
}

function boxesOf(instance: Instance, line: BenchLine): Parameters<typeof cutsEdgeToEdge>[0] {
  const sizes = new Map(instance.items.map(({ item, points }) => [item, points[2]!]));
  return line.placements.map(({ item, x, y, rotation }) => {
    const [h, w] = sizes.get(item)!;
    return rotation === 90 ? { x, y, along: w, across: h } : { x, y, along: h, across: w };
  });
}

function shoelace(ring: Float64Array): number {
  let twice = 0;
  for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2)
    twice += ring[j]! * ring[i + 1]! - ring[i]! * ring[j + 1]!;
  return Math.abs(twice) / 2;
}
