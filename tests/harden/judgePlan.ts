// Plans judged by code that is not ours: polyclip-ts for areas; and by sums that share nothing with the lay.
import { difference, intersection, type union } from "polyclip-ts";
import type {
  LayPiece,
  LayPlan,
  LayProblem,
  Stock,
  StockPlacement,
} from "../../src/core/lay/problem/layProblem.ts";
import { arePartedByLine, liesInConvex, type Point } from "./parted.ts";

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

/** Cloth from the start of a stock as far as a plan uses it, and what in it no piece may cover. */
interface Ground {
  readonly whole: readonly Point[];
  readonly away: readonly (readonly Point[])[];
}

function groundOf(stock: Stock, usedLength: number): Ground {
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
  return { whole, away: [...holes, ...stock.flaws.map(({ outer }) => outer)].map(asPoints) };
}

/** Area of a piece that lies off the cloth or over what is not to be covered. */
function areaOff(outline: Point[], { whole, away }: Ground): number {
  const holes = away.map((ring) => [[...ring]]);
  const free = holes.length === 0 ? [[[...whole]]] : difference([[...whole]], ...holes);
  return areaOf(difference([outline], free));
}

/** A thousandth of a millimetre all round a piece, as area. */
const slackOf = (points: readonly Point[]): number =>
  points.reduce(
    (sum, [x, y], i) =>
      sum + 1e-3 * Math.hypot(points[(i + 1) % points.length]![0] - x, points[(i + 1) % points.length]![1] - y),
    1e-3,
  );

/**
 * Faults of a plan by outside polygon code; empty when it can be cut. Outlines that a straight line parts are not cut out
 * of each other, unless `isSlow`: that gives the same faults in a hundred times the time.
 */
export function faultsOf(problem: LayProblem, plan: LayPlan, isSlow = false): string[] {
  const faults = [...pinFaults(problem, plan), ...patternFaults(problem, plan), ...bandFaults(problem, plan)];
  faults.push(...askedFaults(problem, plan), ...reasonFaults(problem, plan));
  for (const piece of problem.pieces) {
    const put = plan.placements.filter(({ pieceId }) => pieceId === piece.id);
    const left = plan.unplaced
      .filter(({ pieceId }) => pieceId === piece.id)
      .reduce((sum, { count }) => sum + count, 0);
    // Of layers, how many lie on the fold is for the search to say; what must come of them is asked above.
    if (problem.spread === undefined && put.length + left !== piece.count)
      faults.push(`${piece.id}: ${put.length} laid and ${left} left of ${piece.count}`);
    if (new Set(put.map(({ copy }) => copy)).size !== put.length) faults.push(`${piece.id}: a copy twice`);
    for (const { turnDeg, mirrored, y } of put) {
      if (!isAllowed(piece, turnDeg, mirrored))
        faults.push(`${piece.id}: turned ${turnDeg}${mirrored ? " mirrored" : ""}`);
      if (piece.gives?.onFold && Math.abs(y) > 1e-6) faults.push(`${piece.id}: a half lies ${y} mm off the fold`);
    }
  }
  for (const stock of problem.stocks) {
    const use = plan.uses.find(({ stockId }) => stockId === stock.id);
    if (use && use.bound !== null && use.usedLength < use.bound - 1e-6)
      faults.push(`${stock.id}: ${use.usedLength} is below its bound ${use.bound}`);
    const own = plan.placements.filter(({ stockId }) => stockId === stock.id);
    const outlines = own.map((one) =>
      laid(problem.pieces.find(({ id }) => id === one.pieceId)!.outline.outer, one),
    );
    const ground = groundOf(stock, use?.usedLength ?? 0);
    const areApart = (a: Point[], b: readonly Point[]): boolean => !isSlow && arePartedByLine(a, b);
    outlines.forEach((outline, i) => {
      const isOn =
        !isSlow && liesInConvex(outline, ground.whole) && ground.away.every((ring) => areApart(outline, ring));
      if (!isOn && areaOff(outline, ground) > slackOf(outline))
        faults.push(`${own[i]!.pieceId} leaves ${stock.id}`);
      for (let j = 0; j < i; j++)
        if (!areApart(outline, outlines[j]!) && areaOf(intersection([outline], [outlines[j]!])) > slackOf(outline))
          faults.push(`${own[i]!.pieceId} over ${own[j]!.pieceId}`);
    });
  }
  return faults;
}

/** How far apart two turns are, degrees. */
const between = (a: number, b: number): number => Math.abs(((((a - b) % 360) + 540) % 360) - 180);

function isAllowed({ orientations, freeTurn, tilt = 0 }: LayPiece, turnDeg: number, mirrored: boolean): boolean {
  return orientations.some(
    (way) => way.mirrored === mirrored && (freeTurn || between(way.turnDeg, turnDeg) <= tilt + 1e-9),
  );
}

/** A pinned piece lies where it was put. */
function pinFaults({ pinned }: LayProblem, { placements }: LayPlan): string[] {
  const isThere = (pin: StockPlacement): boolean =>
    placements.some((one) => (Object.keys(pin) as (keyof StockPlacement)[]).every((key) => one[key] === pin[key]));
  return pinned
    .filter((pin) => !isThere(pin))
    .map(({ pieceId, copy }) => `${pieceId} ${copy}: not where it is pinned`);
}

/** What is asked of layers comes of them, where nothing was left out. */
function askedFaults({ spread, pieces }: LayProblem, { placements, unplaced }: LayPlan): string[] {
  if (spread === undefined || unplaced.length > 0) return [];
  return spread.asked.flatMap(({ pieceId, asDrawn, mirrored }) => {
    let [drawn, turned] = [0, 0];
    for (const one of placements) {
      const piece = pieces.find(({ id }) => id === one.pieceId)!;
      if ((piece.gives?.of ?? piece.id) !== pieceId) continue;
      const gives = piece.gives ?? { asDrawn: 1, mirrored: 0 };
      drawn += one.mirrored ? gives.mirrored : gives.asDrawn;
      turned += one.mirrored ? gives.asDrawn : gives.mirrored;
    }
    return drawn + turned >= asDrawn + mirrored
      ? []
      : [`${pieceId}: ${drawn} and ${turned} of ${asDrawn} and ${mirrored}`];
  });
}

/** Matched places of a group lie alike on the pattern: x − first ≡ σ φ modulo the repeat, one φ a group. */
function patternFaults({ pattern, pieces, stocks }: LayProblem, { placements }: LayPlan): string[] {
  // Columns dropped by half are left to the checker's own tests.
  if (pattern === undefined || pattern.halfDrop) return [];
  const faults: string[] = [];
  const axes = [
    { repeat: pattern.along, first: pattern.firstAlong, axis: 0 },
    { repeat: pattern.across, first: pattern.firstAcross, axis: 1 },
  ] as const;
  for (const { repeat, first, axis } of axes) {
    const phases = new Map<string, number[]>();
    if (repeat === null) continue;
    for (const one of placements) {
      const match = pieces.find(({ id }) => id === one.pieceId)!.match;
      if (match === undefined || !(axis === 0 ? match.along : match.across)) continue;
      const [place] = laid(Float64Array.of(match.x, match.y), one);
      // Which of the piece's own ways runs along this one of the cloth: the other one where it lies a quarter turned.
      const [byX] = laid(Float64Array.of(match.x + 1, match.y), one);
      const [byY] = laid(Float64Array.of(match.x, match.y + 1), one);
      const [goneX, goneY] = [byX![axis] - place![axis], byY![axis] - place![axis]];
      const firstLine = stocks.find(({ id }) => id === one.stockId)!.firstLine;
      const sense = Math.abs(goneX) > 0.5 ? match.senseX * Math.sign(goneX) : match.senseY * Math.sign(goneY);
      const phase = sense * (place![axis] - (firstLine?.[axis] ?? first));
      phases.set(match.group, [...(phases.get(match.group) ?? []), phase]);
    }
    for (const [group, all] of phases)
      for (const phase of all) {
        const off = (((phase - all[0]!) % repeat) + repeat * 1.5) % repeat;
        if (Math.abs(off - repeat / 2) > pattern.tolerance + 2e-3)
          faults.push(`${group}: ${Math.abs(off - repeat / 2)} mm off the pattern`);
      }
  }
  return faults;
}

/** What is told to have no room on the pattern has none on any line between the edges of a roll, tried one by one. */
function reasonFaults({ pattern, pieces, stocks, phases, margin }: LayProblem, { unplaced }: LayPlan): string[] {
  return unplaced.flatMap(({ pieceId, reason }) => {
    if (reason !== "no-room-on-pattern") return [];
    const { match, orientations, outline } = pieces.find(({ id }) => id === pieceId)!;
    const phase = match === undefined ? null : phases?.[match.group]?.across;
    const repeat = pattern?.across ?? null;
    if (match?.across !== true || repeat === null || phase === null || phase === undefined)
      return [`${pieceId}: told to have no room on a pattern that does not hold it`];
    const hasRoom = stocks.some((stock) => {
      if (stock.kind !== "roll") return false;
      const first = stock.firstLine?.[1] ?? pattern!.firstAcross;
      return orientations.some((way) => {
        const at = { pieceId, copy: 0, stockId: stock.id, ...way, x: 0, y: 0 };
        const [place] = laid(Float64Array.of(match.x, match.y), at);
        // Turned by a quarter it is the piece's own x that runs across.
        const [byX, byY] = laid(Float64Array.of(match.x + 1, match.y, match.x, match.y + 1), at);
        const [rise, other] = [byY![1] - place![1], byX![1] - place![1]];
        const sense = Math.abs(rise) > 0.5 ? match.senseY * Math.sign(rise) : match.senseX * Math.sign(other);
        const across = laid(outline.outer, at).map(([, y]) => y);
        const lines = Math.ceil((stock.width + Math.abs(first)) / repeat) + 3;
        return Array.from({ length: 2 * lines + 1 }, (_, i) => first + sense * phase + (i - lines) * repeat).some(
          (line) =>
            line - place![1] + Math.min(...across) > margin + 1e-3 &&
            line - place![1] + Math.max(...across) < stock.width - margin - 1e-3,
        );
      });
    });
    return hasRoom ? [`${pieceId}: told to have no room on the pattern, and has`] : [];
  });
}

/** The parts of each bag lie within one band of the cloth. */
function bandFaults({ shade, pieces }: LayProblem, { placements }: LayPlan): string[] {
  if (shade === undefined) return [];
  const ends = new Map<string, [number, number]>();
  for (const one of placements) {
    const piece = pieces.find(({ id }) => id === one.pieceId)!;
    const bag = Math.floor(one.copy / (piece.count / shade.bags));
    const along = laid(piece.outline.outer, one).map(([x]) => x);
    const key = `${one.stockId} ${bag}`;
    const [low, high] = ends.get(key) ?? [Infinity, -Infinity];
    ends.set(key, [Math.min(low, ...along), Math.max(high, ...along)]);
  }
  return [...ends].flatMap(([key, [low, high]]) =>
    high - low > shade.band + 1e-3 ? [`bag ${key}: over ${high - low} mm, at most ${shade.band}`] : [],
  );
}
