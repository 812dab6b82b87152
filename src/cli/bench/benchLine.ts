import type { LayPlan, StockPlacement } from "../../core/lay/problem/layProblem.ts";
import type { DatasetItem, Instance } from "./dataset.ts";

/**
 * One result as `bench --json` prints it; lengths in the data set's own units. Of a sheet, `length` is its own, `bound`
 * the most area that could lie on it, and `gap` what is missing of that.
 */
export interface BenchLine {
  readonly name: string;
  readonly kind: Instance["kind"];
  readonly stripWidth: number;
  readonly length: number;
  /** Share of the strip's used part that is piece. */
  readonly density: number;
  readonly bound: number;
  /** (length − bound) / bound. */
  readonly gap: number;
  readonly seconds: number;
  /** Seconds to the first plan, and its density. */
  readonly firstSeconds: number;
  readonly firstDensity: number;
  readonly threads: number;
  readonly evaluations: number;
  readonly seed: number;
  /** Area laid, of sheets only. */
  readonly area?: number;
  readonly placements: readonly BenchPlacement[];
}

/** Rotate the published outline about its own origin, then shift; for rectangles (x, y) is the placed box's corner. */
export interface BenchPlacement {
  readonly item: string | number;
  readonly copy: number;
  readonly x: number;
  readonly y: number;
  readonly rotation: number;
  readonly mirrored: boolean;
}

/** How a result came about. */
export interface BenchRun {
  readonly seconds: number;
  readonly first: { readonly seconds: number; readonly plan: LayPlan };
  readonly threads: number;
  readonly evaluations: number;
  readonly seed: number;
}

/** The contract line of a plan. */
export function benchLine(instance: Instance, plan: LayPlan, run: BenchRun): BenchLine {
  return {
    name: instance.name,
    kind: instance.kind,
    stripWidth: instance.stripWidth,
    ...(instance.sheetLength === null ? ofStrip(instance, plan, run) : ofSheet(instance, plan, run)),
    seconds: rounded(run.seconds),
    firstSeconds: rounded(run.first.seconds),
    threads: run.threads,
    evaluations: run.evaluations,
    seed: run.seed,
    placements: plan.placements.map((placement) => benchPlacement(instance, placement)),
  };
}

type Measures = Pick<BenchLine, "length" | "density" | "bound" | "gap" | "firstDensity" | "area">;

function ofStrip(instance: Instance, plan: LayPlan, run: BenchRun): Measures {
  const { usedLength, bound } = plan.uses[0]!;
  const area = instance.items.reduce((sum, item) => sum + item.count * itemArea(item), 0);
  const proven = bound ?? area / instance.stripWidth;
  return {
    length: usedLength,
    density: area / (instance.stripWidth * usedLength),
    bound: proven,
    gap: (usedLength - proven) / proven,
    firstDensity: area / (instance.stripWidth * run.first.plan.uses[0]!.usedLength),
  };
}

function ofSheet(instance: Instance, plan: LayPlan, run: BenchRun): Measures {
  const length = instance.sheetLength!;
  const sheet = length * instance.stripWidth;
  const all = instance.items.reduce((sum, item) => sum + item.count * itemArea(item), 0);
  const laid = ({ placements }: LayPlan): number =>
    placements.reduce((sum, { pieceId }) => sum + itemArea(instance.items[Number(pieceId)]!), 0);
  const bound = Math.min(sheet, all);
  const area = laid(plan);
  return {
    length,
    density: area / sheet,
    bound,
    gap: (bound - area) / bound,
    firstDensity: laid(run.first.plan) / sheet,
    area,
  };
}

function rounded(seconds: number): number {
  return Math.round(seconds * 1000) / 1000;
}

function itemArea({ points }: DatasetItem): number {
  const twice = points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!;
    return sum + (x * ny - nx * y);
  }, 0);
  return Math.abs(twice) / 2;
}

function benchPlacement(instance: Instance, placement: StockPlacement): BenchPlacement {
  const { item, points } = instance.items[Number(placement.pieceId)]!;
  const { copy, x, y, turnDeg, mirrored } = placement;
  const rotation = ((turnDeg % 360) + 360) % 360;
  if (instance.kind === "irregular-strip") return { item, copy, x, y, rotation, mirrored };
  // A rectangle's corner after its turn: the far sides come first at 90° (x), 180° (both) and 270° (y).
  const [along, across] = points[2]!;
  const cornerX = rotation === 90 ? x - across : rotation === 180 ? x - along : x;
  const cornerY = rotation === 180 ? y - across : rotation === 270 ? y - along : y;
  return { item, copy, x: cornerX, y: cornerY, rotation: rotation % 180, mirrored: false };
}
