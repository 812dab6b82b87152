import type { Box } from "../geometry/box.ts";
import type { Contour } from "../geometry/contour.ts";
import { contourBox, contourEdges, edgeCircle } from "../geometry/contourArcs.ts";
import { contourArea } from "../geometry/contourEdgeLengths.ts";
import type { Curve, CurvePart } from "./curve.ts";
import type { PatternOutline, UnderstoodPattern } from "./patternOutline.ts";

/** Outlines put right by hand, each by the key of the line it stands for. */
export type Corrections = ReadonlyMap<string, Contour>;

/**
 * What a line is known by while its file is understood in other ways: its corners. A line that comes out otherwise is
 * another line, and no correction of the old one is laid over it.
 */
export function lineKey({ contour }: Pick<PatternOutline, "contour">): string {
  return contour.vertices.map((value) => Math.round(value * 1e4) / 1e4).join(" ");
}

/** What a line is now known by, and where its points are: `scale` times as far out, then shifted. */
export interface LineNow {
  readonly key: string;
  readonly scale: number;
  readonly dx: number;
  readonly dy: number;
}

/** So much of two boxes must be common for their lines to be one line, as a share of both together. */
const SAME_LINE = 0.6;
/** mm within which a line read in another unit is the same line. */
const SAME_POINT = 1e-3;

/**
 * Which closed line became which when a file was understood in another way: by the key before. A line all of whose
 * points were scaled alike is that line at another size; else the one that lies where it lay. O(lines² · points).
 */
export function linesNow(
  before: readonly PatternOutline[],
  after: readonly PatternOutline[],
): ReadonlyMap<string, LineNow> {
  const oldKeys = new Set(before.map(lineKey));
  const freshKeys = new Set(after.map(lineKey));
  const fresh = after.filter((line) => line.closed && !oldKeys.has(lineKey(line)));
  const became = new Map<string, LineNow>();
  const taken = new Set<PatternOutline>();
  for (const line of before) {
    if (freshKeys.has(lineKey(line))) continue;
    const open = fresh.filter((other) => !taken.has(other));
    const other = open.find((one) => scaledTo(line, one) !== null) ?? mostCommon(line, open);
    if (other === undefined) continue;
    taken.add(other);
    became.set(lineKey(line), { key: lineKey(other), ...(scaledTo(line, other) ?? { scale: 1, dx: 0, dy: 0 }) });
  }
  return became;
}

/** The scale and shift that lay a line on another, or null. */
function scaledTo(line: PatternOutline, other: PatternOutline): Omit<LineNow, "key"> | null {
  const [from, to] = [line.contour.vertices, other.contour.vertices];
  const wide = line.box.maxX - line.box.minX;
  if (from.length !== to.length || line.name !== other.name || wide <= 0) return null;
  const scale = (other.box.maxX - other.box.minX) / wide;
  const [dx, dy] = [other.box.minX - scale * line.box.minX, other.box.minY - scale * line.box.minY];
  for (let i = 0; i < from.length; i += 3) {
    const isThere =
      Math.abs(from[i]! * scale + dx - to[i]!) <= SAME_POINT &&
      Math.abs(from[i + 1]! * scale + dy - to[i + 1]!) <= SAME_POINT;
    if (!isThere) return null;
  }
  return { scale, dx, dy };
}

function mostCommon(line: PatternOutline, others: readonly PatternOutline[]): PatternOutline | undefined {
  const [best] = others
    .map((other) => ({ other, share: commonShare(line.box, other.box) }))
    .filter(({ share }) => share >= SAME_LINE)
    .sort((a, b) => b.share - a.share);
  return best?.other;
}

function commonShare(a: Box, b: Box): number {
  const across = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  const up = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
  if (across <= 0 || up <= 0) return 0;
  const area = ({ minX, minY, maxX, maxY }: Box): number => (maxX - minX) * (maxY - minY);
  return (across * up) / (area(a) + area(b) - across * up);
}

/** Corrections under the keys that their lines have now; those before stay, for a way that is taken back. */
export function carriedOver(corrections: Corrections, became: ReadonlyMap<string, LineNow>): Corrections {
  const moved = [...became].flatMap(([old, { key, scale, dx, dy }]) => {
    const contour = corrections.get(old);
    if (contour === undefined) return [];
    const shift = [dx, dy];
    const vertices = contour.vertices.map((value, i) => (i % 3 === 2 ? value : value * scale + shift[i % 3]!));
    return [[key, { ...contour, vertices }] as const];
  });
  return moved.length === 0 ? corrections : new Map([...corrections, ...moved]);
}

/** The pattern with lines as they were put right, their sizes with them. */
export function correctedPattern(pattern: UnderstoodPattern, corrections: Corrections): UnderstoodPattern {
  if (corrections.size === 0) return pattern;
  return {
    ...pattern,
    outlines: pattern.outlines.map((outline) => {
      const contour = corrections.get(lineKey(outline));
      if (contour === undefined || !outline.closed) return outline;
      const areaMm2 = Math.abs(contourArea(contour));
      return { ...outline, contour, curve: curveOf(contour), box: contourBox(contour), areaMm2 };
    }),
  };
}

/** A contour as a drawn line. */
export function curveOf(contour: Contour): Curve {
  const parts = contourEdges(contour).map((edge): CurvePart => {
    const { x1: x, y1: y } = edge;
    if (edge.bulge === 0) return { kind: "straight", x, y };
    const { x: centreX, y: centreY, radius, start: from, sweep } = edgeCircle(edge);
    return { kind: "arc", centreX, centreY, ux: radius, uy: 0, vx: 0, vy: radius, from, sweep, x, y };
  });
  return { x: contour.vertices[0]!, y: contour.vertices[1]!, parts, closed: contour.closed };
}
