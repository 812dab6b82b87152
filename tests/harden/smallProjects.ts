import { difference, intersection, type union } from "polyclip-ts";
import { layProblemsOf } from "../../src/core/job/layProblems.ts";
import { searchChoices } from "../../src/core/lay/alternatives/searchChoices.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem, Stock, StockPlacement } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { BREATH } from "../../src/core/lay/search/breath.ts";
import { CUT_MODES } from "../../src/core/lay/search/engine.ts";
import { cutListOf } from "../../src/core/project/cutList.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import type { Draw, Kind } from "./kind.ts";

type Point = [number, number];

/** Sizes are whole millimetres; shapes that a bag has. */
function shape(draw: Draw): object {
  const [along, across] = [30 + draw.below(300), 30 + draw.below(200)];
  const kind = draw.below(3);
  if (kind === 0) return { kind: "rectangle", along, across };
  if (kind === 1)
    return { kind: "rounded", along, across, radius: 1 + draw.below(Math.floor(Math.min(along, across) / 2)) };
  const cut = 1 + draw.below(Math.floor(along / 3));
  return {
    kind: "outline",
    points: [
      [0, 0],
      [along, 0],
      [along - cut, across],
      [cut, across],
    ],
  };
}

/** None, one, or as many as make a roll a sieve. */
function flawsOf(draw: Draw): object {
  const count = draw.one([0, 0, 0, 1, 1, 12]);
  const spread = count > 1 ? 10 : 1;
  const flaw = (): object => ({
    at: [draw.below(300 * spread), draw.below(200 * Math.min(spread, 5))],
    shape: { kind: "rectangle", along: 5 + draw.below(120), across: 5 + draw.below(80) },
  });
  return count === 0 ? {} : { flaws: Array.from({ length: count }, flaw) };
}

function stock(draw: Draw): object[] {
  const width = 250 + draw.below(900);
  const flaws = flawsOf(draw);
  const roll = {
    kind: "roll",
    id: "roll",
    width,
    selvedge: draw.below(20),
    ...(draw.below(3) === 0 ? { length: 400 + draw.below(2000) } : {}),
    ...flaws,
  };
  const left = { kind: draw.one(["remnant", "skin"]), id: "left", shape: shape(draw), ...flaws };
  return draw.one([[roll], [roll], [left, roll], [left]]);
}

function project(draw: Draw): string {
  const panels = Array.from({ length: 1 + draw.below(4) }, (_, i) => ({
    id: `p${i}`,
    name: `Panel ${i}`,
    material: "cloth",
    shape: shape(draw),
    count: 1 + draw.below(3),
    mirrored: draw.below(2),
    grain: draw.one(["lengthwise", "crosswise", "either", "free"]),
    seamAllowance: draw.below(12),
  }));
  const straps =
    draw.below(2) === 0
      ? []
      : [
          {
            id: "s",
            name: "Strap",
            construction: draw.one(["fourfold", "three-raw", "bonded"]),
            width: 15 + draw.below(30),
            length: 200 + draw.below(900),
            count: 1 + draw.below(6),
            materials: { outer: "cloth" },
          },
        ];
  const cloth = {
    id: "cloth",
    kind: draw.one(["woven", "vinyl", "leather", "felt"]),
    thickness: draw.one([0.3, 0.6, 1, 1.4]),
    oneWay: draw.below(3) === 0,
    facesAlike: draw.below(3) === 0,
    stock: stock(draw),
  };
  return JSON.stringify({
    laywright: 1,
    name: "case",
    unit: "mm",
    bags: 1 + draw.below(3),
    gap: draw.one([0, 0, 2, 5]),
    margin: draw.one([0, 0, 3]),
    materials: [cloth],
    panels,
    straps,
  });
}

/** To a ten-thousandth of a millimetre: polyclip-ts gives up on edges that all but coincide. */
const onGrid = (x: number, y: number): Point => [Math.round(x * 1e4) / 1e4, Math.round(y * 1e4) / 1e4];

/** Points of an outline as they lie: mirrored in its own y axis, turned counter-clockwise, shifted. */
function laid(ring: Float64Array, { x, y, turnDeg, mirrored }: StockPlacement): Point[] {
  const turn = (turnDeg * Math.PI) / 180;
  return Array.from({ length: ring.length / 2 }, (_, i): Point => {
    const [px, py] = [(mirrored ? -1 : 1) * ring[2 * i]!, ring[2 * i + 1]!];
    return onGrid(x + px * Math.cos(turn) - py * Math.sin(turn), y + px * Math.sin(turn) + py * Math.cos(turn));
  });
}

const asPoints = (ring: Float64Array): Point[] =>
  Array.from({ length: ring.length / 2 }, (_, i): Point => onGrid(ring[2 * i]!, ring[2 * i + 1]!));

/** Area of what polyclip-ts gives back: rings closed, holes after their outside. */
function areaOf(shapes: ReturnType<typeof union>): number {
  const ringArea = (ring: readonly (readonly number[])[]): number => {
    let twice = 0;
    ring.forEach(([x, y], i) => {
      const [nx, ny] = ring[(i + 1) % ring.length]!;
      twice += x! * ny! - nx! * y!;
    });
    return Math.abs(twice) / 2;
  };
  return shapes.reduce(
    (sum, [outer, ...holes]) => sum + ringArea(outer!) - holes.reduce((all, hole) => all + ringArea(hole), 0),
    0,
  );
}

/** What the pieces on a stock may cover. */
function ground(stock: Stock, usedLength: number): ReturnType<typeof union> {
  const length = stock.kind === "roll" ? Math.min(usedLength, stock.length ?? Infinity) : 0;
  const whole: Point[] =
    stock.kind === "roll"
      ? [
          [0, 0],
          [length, 0],
          [length, stock.width],
          [0, stock.width],
        ]
      : asPoints(stock.outline.outer);
  const holes = stock.kind === "roll" ? [] : stock.outline.holes;
  const away = [...holes, ...stock.flaws.map(({ outer }) => outer)].map((ring) => [asPoints(ring)]);
  return away.length === 0 ? [[whole]] : difference([whole], ...away);
}

/** A thousandth of a millimetre all round a piece, as area. */
const slackOf = (points: readonly Point[]): number =>
  points.reduce(
    (sum, [x, y], i) =>
      sum + 1e-3 * Math.hypot(points[(i + 1) % points.length]![0] - x, points[(i + 1) % points.length]![1] - y),
    1e-3,
  );

/** Faults of a plan by outside polygon code alone; empty when it can be cut. */
function faultsOf(problem: LayProblem, plan: LayPlan): string[] {
  const faults: string[] = [];
  for (const piece of problem.pieces) {
    const put = plan.placements.filter(({ pieceId }) => pieceId === piece.id);
    const left = plan.unplaced
      .filter(({ pieceId }) => pieceId === piece.id)
      .reduce((sum, { count }) => sum + count, 0);
    if (put.length + left !== piece.count)
      faults.push(`${piece.id}: ${put.length} laid and ${left} left of ${piece.count}`);
    if (new Set(put.map(({ copy }) => copy)).size !== put.length) faults.push(`${piece.id}: a copy twice`);
    for (const { turnDeg, mirrored } of put)
      if (
        !piece.orientations.some((way) => way.mirrored === mirrored && (piece.freeTurn || way.turnDeg === turnDeg))
      )
        faults.push(`${piece.id}: turned ${turnDeg}${mirrored ? " mirrored" : ""}`);
  }
  for (const stock of problem.stocks) {
    const use = plan.uses.find(({ stockId }) => stockId === stock.id);
    if (use && use.bound !== null && use.usedLength < use.bound - 1e-6)
      faults.push(`${stock.id}: ${use.usedLength} is below its bound ${use.bound}`);
    const own = plan.placements.filter(({ stockId }) => stockId === stock.id);
    const outlines = own.map((one) =>
      laid(problem.pieces.find(({ id }) => id === one.pieceId)!.outline.outer, one),
    );
    const free = ground(stock, use?.usedLength ?? 0);
    outlines.forEach((outline, i) => {
      if (areaOf(difference([outline], free)) > slackOf(outline))
        faults.push(`${own[i]!.pieceId} leaves ${stock.id}`);
      for (let j = 0; j < i; j++)
        if (areaOf(intersection([outline], [outlines[j]!])) > slackOf(outline))
          faults.push(`${own[i]!.pieceId} over ${own[j]!.pieceId}`);
    });
  }
  return faults;
}

/** Pieces left out for want of cloth although a roll has no end. */
function leftOut(problem: LayProblem, plan: LayPlan): string[] {
  const hasOpenRoll = problem.stocks.some((stock) => stock.kind === "roll" && stock.length === null);
  const short = plan.unplaced.filter(({ reason }) => reason === "stock-used-up");
  return hasOpenRoll ? short.map(({ pieceId, count }) => `${count} of ${pieceId} left out of an open roll`) : [];
}

/** The plans offered to choose from, every one that was offered on the way to the last. */
function choicesOf(problem: LayProblem): LayPlan[] {
  const plans = new Set<LayPlan>();
  for (const step of searchChoices(problem, { evaluations: 4000 }, 1))
    if (step !== BREATH) for (const { plan } of step.choices ?? []) plans.add(plan);
  return [...plans];
}

/** Random small projects laid in every mode, each plan judged by outside polygon code (polyclip-ts). */
export const smallProjects: Kind = {
  name: "plans",
  about: "random small projects laid free, by ruler, in few stages and to choose from, plans judged by polyclip-ts",
  run: (draw) => {
    const text = project(draw);
    const read = readProject(text);
    if (!read.ok) return "refused";
    const cut = cutListOf(read.value);
    if (!cut.ok) return "refused";
    let plans = 0;
    const tell = (what: string, faults: readonly string[]): void => {
      if (faults.length > 0) throw new Error(`${what}: ${faults.slice(0, 3).join("; ")}: ${text}`);
    };
    for (const problem of layProblemsOf(read.value, cut.value)) {
      for (const mode of CUT_MODES) {
        const search = arrange(problem, (job) => chooseEngines(job, mode), { evaluations: 20_000 }, 1);
        let step = search.next();
        while (!step.done) step = search.next();
        // Straight cuts alone cannot always take every piece, and then say so.
        const left = mode === "free" ? leftOut(problem, step.value) : [];
        tell(mode, [...faultsOf(problem, step.value), ...left]);
        plans++;
      }
      for (const plan of choicesOf(problem)) {
        tell("choices", [...faultsOf(problem, plan), ...leftOut(problem, plan)]);
        plans++;
      }
    }
    return plans === 0 ? "nothing to lay" : "laid";
  },
};
