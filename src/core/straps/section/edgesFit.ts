import type { SolvedBend, SolvedRun, SolvedSection, SolvedStrip } from "./foldSection.ts";

/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-6;

/** Where a raw edge lies: across the strap (mm) and on which level. */
interface RawEdge {
  readonly x: number;
  readonly level: number;
}

const runsOf = (strip: SolvedStrip): SolvedRun[] => strip.segments.filter((segment) => segment.kind === "run");
const bendsOf = (strip: SolvedStrip): SolvedBend[] => strip.segments.filter((segment) => segment.kind === "bend");

/** Raw edges that end flat; one that turns round the corner of a core is placed by that core. */
function rawEdges(strip: SolvedStrip): RawEdge[] {
  const runs = runsOf(strip);
  const [first, last] = [runs[0]!, runs.at(-1)!];
  return [
    ...(strip.plan.start.corner ? [] : [{ x: first.fromX, level: first.level }]),
    ...(strip.plan.end.corner ? [] : [{ x: last.toX, level: last.level }]),
  ];
}

/** The room inside a fold ends at its inner face. */
function runsInto({ x, level }: RawEdge, bend: SolvedBend): boolean {
  const [low, high] = [Math.min(bend.fromLevel, bend.toLevel), Math.max(bend.fromLevel, bend.toLevel)];
  if (level <= low || level >= high) return false;
  if (bend.side === "left") return x < bend.axisX - bend.insideRadius - ROUNDING;
  return x > bend.axisX + bend.insideRadius + ROUNDING;
}

/** Whether two runs on one level lie on each other. */
function overlap(a: SolvedRun, b: SolvedRun): boolean {
  const from = Math.max(Math.min(a.fromX, a.toX), Math.min(b.fromX, b.toX));
  const to = Math.min(Math.max(a.fromX, a.toX), Math.max(b.fromX, b.toX));
  return a.level === b.level && to - from > ROUNDING;
}

/**
 * Whether all turned edges have room: no raw edge runs into a fold that closes over it, and none lies on another.
 * Cost O(runs²).
 */
export function edgesFit(section: SolvedSection): boolean {
  const bends = section.strips.flatMap(bendsOf);
  const runs = section.strips.flatMap(runsOf);
  const free = section.strips.flatMap(rawEdges).every((edge) => !bends.some((bend) => runsInto(edge, bend)));
  return free && runs.every((run, i) => runs.slice(i + 1).every((other) => !overlap(run, other)));
}
