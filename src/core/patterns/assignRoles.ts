import type { Ring } from "../geometry/ring.ts";
import { distanceToRing, type NestedLine } from "./nesting.ts";
import type { LineLook, PatternKind } from "./patternDrawing.ts";
import type { PatternRole, RoleReason } from "./patternOutline.ts";
import { roleOfName, roleOfNumber } from "./roleWords.ts";

/** A line with everything that its role is told by. */
export interface RoleLine extends NestedLine {
  readonly look: LineLook;
  readonly inside: number | null;
  /** One straight part and nothing else. */
  readonly isStraight: boolean;
}

/** What a maker says a layer or colour is for, by its name (lower case) or `#rrggbb`. */
export type RoleWishes = ReadonlyMap<string, PatternRole>;

export interface RoleFound {
  readonly role: PatternRole;
  readonly reason: RoleReason;
}

/** A hole that is punched or marked with an awl is at most so wide, mm. Common practice, no source. */
const DRILL_MOST = 6;
/** A notch is at most so long, mm. Common practice, no source. */
const NOTCH_MOST = 13;
/** A seam allowance is at most so wide, mm. Common practice, no source. */
const ALLOWANCE_MOST = 30;
const GRAIN_LEAST = 20;

/**
 * What each line is for: what the maker asked for goes first, then its name, its layer's, its dashes (ISO 128: a
 * chain line for an axis or fold, dashes for what is hidden or sewn), then where it lies.
 */
export function assignRoles(
  lines: readonly RoleLine[],
  wishes: RoleWishes,
  kind: PatternKind = "svg",
): readonly RoleFound[] {
  // A boundary on layer 1 and more than one numbered layer: a pattern by the standard, not somebody's "layer 2".
  const layers = new Set(kind === "dxf" ? lines.map(({ look }) => look.layer) : []);
  const isNumbered = layers.has("1") && [...layers].filter((layer) => roleOfNumber(layer) !== null).length > 1;
  const roles = lines.map((line) => roleOf(line, lines, wishes, isNumbered));
  markArrows(lines, roles);
  return roles;
}

/** What the maker, a line's names or its dashes say it is for, wherever it lies; null when nothing does. */
export function saidRole(look: LineLook, wishes: RoleWishes): PatternRole | null {
  for (const name of [...look.names, look.layer, look.color ?? ""]) {
    const role = wishes.get(name.toLowerCase());
    if (role) return role;
  }
  for (const name of [...look.names, look.layer]) {
    const role = roleOfName(name);
    if (role) return role;
  }
  return null;
}

function roleOf(line: RoleLine, lines: readonly RoleLine[], wishes: RoleWishes, isNumbered: boolean): RoleFound {
  const { look } = line;
  for (const name of [...look.names, look.layer, look.color ?? ""]) {
    const role = wishes.get(name.toLowerCase());
    if (role) return { role, reason: "asked" };
  }
  for (const [i, name] of [...look.names, look.layer].entries()) {
    const role = roleOfName(name);
    // A closed line cannot be folded along: "fold-over flap" names a piece.
    if (role && !(line.closed && role === "fold"))
      return { role, reason: i === 0 && name !== look.layer ? "name" : "layer" };
  }
  const numbered = isNumbered ? roleOfNumber(look.layer) : null;
  if (numbered) return { role: numbered, reason: "layer" };
  const home = line.inside === null ? null : lines[line.inside]!;
  if (line.closed) return closedRole(line, home);
  return openRole(line, home);
}

function closedRole(line: RoleLine, home: RoleLine | null): RoleFound {
  if (home === null) return { role: line.look.dash.length > 0 ? "stitch" : "cut", reason: "nesting" };
  const { box } = line;
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  if (size <= DRILL_MOST) return { role: "drill", reason: "size" };
  if (line.look.dash.length > 0) return { role: "stitch", reason: "dash" };
  return { role: followsEdge(line, home) ? "stitch" : "cut", reason: "nesting" };
}

/** Whether a closed line keeps beside the edge of what holds it, as a seam does. */
function followsEdge(line: RoleLine, home: RoleLine): boolean {
  if (line.areaMm2 < home.areaMm2 / 2) return false;
  const apart = spread(line.points, 64).map(([x, y]) => distanceToRing(home.points, x, y));
  return Math.max(...apart) <= ALLOWANCE_MOST;
}

function openRole(line: RoleLine, home: RoleLine | null): RoleFound {
  const { dash } = line.look;
  if (dash.length >= 4) return { role: "fold", reason: "dash" };
  if (dash.length > 0) return { role: "stitch", reason: "dash" };
  if (home === null) return { role: "cut", reason: "place" };
  const { box, points } = line;
  const size = Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
  const ends = [0, points.length - 2].map((i) => distanceToRing(home.points, points[i]!, points[i + 1]!));
  if (size <= NOTCH_MOST && Math.min(...ends) <= 1) return { role: "notch", reason: "place" };
  return { role: "mark", reason: "place" };
}

/** A straight line with short lines at an end is an arrow, and on a pattern that is the grain. */
function markArrows(lines: readonly RoleLine[], roles: RoleFound[]): void {
  const isFree = (i: number): boolean => roles[i]!.reason === "place" || roles[i]!.reason === "size";
  const short = lines.flatMap(({ box }, i) =>
    isFree(i) && Math.hypot(box.maxX - box.minX, box.maxY - box.minY) <= NOTCH_MOST ? [i] : [],
  );
  if (short.length === 0) return;
  for (const [i, line] of lines.entries()) {
    const { box, points } = line;
    const size = Math.hypot(box.maxX - box.minX, box.maxY - box.minY);
    if (!isFree(i) || !line.isStraight || line.inside === null || size < GRAIN_LEAST) continue;
    const heads = short.filter((k) => touchesEnd(points, lines[k]!.points));
    if (heads.length === 0) continue;
    for (const k of [i, ...heads]) roles[k] = { role: "grain", reason: "place" };
  }
}

function touchesEnd(line: Ring, head: Ring): boolean {
  for (let e = 0; e < line.length; e += line.length - 2)
    for (let i = 0; i < head.length; i += 2)
      if (Math.hypot(head[i]! - line[e]!, head[i + 1]! - line[e + 1]!) <= 1) return true;
  return false;
}

/** Up to `most` points spread over a line, corners and middles of its edges. */
function spread(points: Ring, most: number): readonly (readonly [number, number])[] {
  const n = points.length / 2;
  const step = Math.max(1, Math.floor(n / most));
  const out: (readonly [number, number])[] = [];
  for (let i = 0; i < n; i += step) {
    const a = 2 * i;
    const b = (2 * (i + 1)) % points.length;
    out.push([points[a]!, points[a + 1]!], [(points[a]! + points[b]!) / 2, (points[a + 1]! + points[b + 1]!) / 2]);
  }
  return out;
}
