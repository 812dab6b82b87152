import type { LayFinding } from "../../problems/layProblems.ts";
import type { LayMatch, LayPattern, LayPhase, LayProblem } from "../problem/layProblem.ts";
import { type CheckedCopy, copyName } from "./laidOutline.ts";

/** Rounding that counts as met, mm. */
const ROUNDING = 1e-5;

/** How a matched copy lies on the pattern. */
interface Seen {
  readonly copy: CheckedCopy;
  readonly match: LayMatch;
  /** The matched place, from the first line, read the way the piece is: along and across the cloth. */
  readonly along: number;
  readonly across: number;
  /** Ways in which it is read along and across, and whether its own x lies along the cloth. */
  readonly ways: readonly [number, number];
  readonly isUpright: boolean;
}

/**
 * Matched copies that do not lie on the pattern as the rest of their group does: every two within the tolerance, and
 * within it of a phase that is fixed; where the pattern has a top, all the same way up.
 */
export function checkPattern(
  { pieces, pattern, phases }: LayProblem,
  copies: readonly CheckedCopy[],
): LayFinding[] {
  if (pattern === undefined) return [];
  const matches = new Map(pieces.flatMap(({ id, match }) => (match ? [[id, match] as const] : [])));
  const groups = new Map<string, Seen[]>();
  const findings: LayFinding[] = [];
  for (const copy of copies) {
    const match = matches.get(copy.placement.pieceId);
    if (match === undefined) continue;
    const { stock } = copy;
    if (stock.kind === "remnant" && stock.firstLine === undefined) {
      findings.push({ code: "plan-pattern-unknown", path: copy.path, ...copyName(copy), stockId: stock.id });
      continue;
    }
    const [u, v] = stock.firstLine ?? [pattern.firstAlong, pattern.firstAcross];
    groups.set(match.group, [...(groups.get(match.group) ?? []), seen(copy, match, u, v)]);
  }
  for (const [group, members] of groups) {
    findings.push(...wrongWays(pattern, members));
    const fixed = phases?.[group];
    for (const axis of ["along", "across"] as const) {
      // Dropped motifs meet only where both ways meet.
      const here = members.filter(({ match }) => match[axis] || pattern.halfDrop);
      if (pattern[axis] !== null) findings.push(...offPattern(pattern, axis, here, fixed));
    }
  }
  return findings;
}

function seen(copy: CheckedCopy, match: LayMatch, u: number, v: number): Seen {
  const { x, y, turnDeg, mirrored } = copy.placement;
  const angle = (turnDeg / 180) * Math.PI;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const own = mirrored ? -match.x : match.x;
  const at = [x + own * cos - match.y * sin, y + own * sin + match.y * cos] as const;
  // Which way the piece's own axes point on the cloth.
  const xAxis = [mirrored ? -cos : cos, mirrored ? -sin : sin] as const;
  const yAxis = [-sin, cos] as const;
  const isUpright = Math.abs(xAxis[0]) > 0.5;
  const ways = (
    isUpright
      ? [xAxis[0] * match.senseX, yAxis[1] * match.senseY]
      : [yAxis[0] * match.senseY, xAxis[1] * match.senseX]
  ).map((way) => (way < 0 ? -1 : 1)) as [number, number];
  return { copy, match, along: ways[0] * (at[0] - u), across: ways[1] * (at[1] - v), ways, isUpright };
}

function wrongWays(pattern: LayPattern, members: readonly Seen[]): LayFinding[] {
  const [first] = members;
  return members.flatMap((one): LayFinding[] => {
    const isAgainst = (axis: "along" | "across", i: 0 | 1): boolean =>
      !pattern.symmetric && pattern[axis] !== null && one.match[axis] && one.ways[i] !== first!.ways[i];
    return one.isUpright !== first!.isUpright || isAgainst("along", 0) || isAgainst("across", 1)
      ? [
          {
            code: "plan-against-pattern",
            path: one.copy.path,
            ...copyName(one.copy),
            other: copyName(first!.copy),
          },
        ]
      : [];
  });
}

/** How far a place lies beyond another on the pattern along one axis, rows of dropped motifs minded: ± half a repeat. */
function beyond(
  pattern: LayPattern,
  axis: "along" | "across",
  place: Pick<Seen, "along" | "across">,
  from: Pick<Seen, "along" | "across">,
): number {
  const repeat = pattern[axis]!;
  const rows =
    axis === "along" && pattern.halfDrop && pattern.across !== null
      ? Math.round((place.across - from.across) / pattern.across)
      : 0;
  const distance = place[axis] - from[axis] - (rows * repeat) / 2;
  return distance - repeat * Math.round(distance / repeat);
}

function offPattern(
  pattern: LayPattern,
  axis: "along" | "across",
  members: readonly Seen[],
  fixed: LayPhase | undefined,
): LayFinding[] {
  const [first] = members;
  if (first === undefined) return [];
  const most = pattern.tolerance + ROUNDING;
  const finding = (one: Seen, off: number, other: Seen | null): LayFinding => ({
    code: "plan-off-pattern",
    path: one.copy.path,
    ...copyName(one.copy),
    axis,
    offMm: Math.abs(off),
    mostMm: pattern.tolerance,
    ...(other === null ? {} : { other: copyName(other.copy) }),
  });
  const at = fixed?.[axis] ?? null;
  const isDropped = axis === "along" && pattern.halfDrop && pattern.across !== null;
  if (at !== null) {
    const rows = isDropped ? (fixed!.across ?? null) : first.across;
    // Of dropped rows nobody has placed, either is the first: any half repeat will do, as long as all agree.
    const step = rows === null ? { ...pattern, halfDrop: false, along: pattern.along! / 2 } : pattern;
    const wanted = { along: at, across: rows ?? 0, [axis]: at };
    const off = members.flatMap((one) => {
      const by = beyond(step, axis, one, wanted);
      return Math.abs(by) > most ? [finding(one, by, null)] : [];
    });
    if (rows !== null || off.length > 0) return off;
  }
  // No two farther apart than the tolerance: each against the outermost before it.
  let [low, high] = [
    { off: 0, one: first },
    { off: 0, one: first },
  ];
  return members.flatMap((one): LayFinding[] => {
    const off = beyond(pattern, axis, one, first);
    const worst = off - low.off > high.off - off ? low : high;
    if (Math.abs(off - worst.off) > most) return [finding(one, off - worst.off, worst.one)];
    if (off < low.off) low = { off, one };
    if (off > high.off) high = { off, one };
    return [];
  });
}
