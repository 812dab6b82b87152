import type { PatternProblem } from "../problems/patternProblems.ts";
import { type RoleWishes, saidRole } from "./assignRoles.ts";
import type { Curve, CurvePart } from "./curve.ts";
import { doubledLines } from "./doubledLines.ts";
import { partlyDoubledLines } from "./partlyDoubled.ts";
import type { Work } from "./patternWork.ts";

/** Indices of lines that lie on an earlier one all along. */
export function doublesOf(
  work: readonly Work[],
  names: readonly string[],
  mended: boolean,
  problems: PatternProblem[],
): number[] {
  const found = doubledLines(work.map((one) => ({ ...one, closed: one.line.curve.closed })));
  for (const [i, other] of found)
    problems.push({ code: "pattern-doubled", path: names[i]!, other: names[other]!, mended });
  return [...found.keys()];
}

/** What is left of lines that lie on others in part; nothing where that is only told. */
export function partDoublesOf(
  work: readonly Work[],
  names: readonly string[],
  roles: RoleWishes,
  mended: boolean,
  whole: ReadonlySet<number>,
  problems: PatternProblem[],
): ReadonlyMap<number, readonly Curve[]> {
  const lines = work.map((one) => {
    const { curve, ...look } = one.line;
    const role = saidRole(look, roles);
    return {
      ...one,
      closed: curve.closed,
      look: JSON.stringify([look.layer, look.color, look.dash]),
      mayLie: look.dash.length > 0 || (role !== null && role !== "cut"),
    };
  });
  const out = new Map<number, readonly Curve[]>();
  for (const [i, { other, doubledMm, rest }] of partlyDoubledLines(lines, whole)) {
    problems.push({ code: "pattern-partly-doubled", path: names[i]!, other: names[other]!, doubledMm, mended });
    if (mended) out.set(i, rest.map(openCurve));
  }
  return out;
}

function openCurve(points: readonly number[]): Curve {
  const parts: CurvePart[] = [];
  for (let i = 2; i < points.length; i += 2) parts.push({ kind: "straight", x: points[i]!, y: points[i + 1]! });
  return { x: points[0]!, y: points[1]!, parts, closed: false };
}
