import type { Box } from "../../core/geometry/box.ts";
import { isInsideRing } from "../../core/geometry/inside.ts";
import type { Curve } from "../../core/patterns/curve.ts";
import { fitPolyline } from "../../core/patterns/fitPolyline.ts";
import { distanceToRing } from "../../core/patterns/nesting.ts";
import type { PatternDrawing, PatternLine } from "../../core/patterns/patternDrawing.ts";
import { CHECK_LINE, PHOTO_PAPER, PHOTO_WINDOW, RING_CORNERS } from "../../core/patterns/photoSheet.ts";
import type { PatternProblem } from "../../core/problems/patternProblems.ts";
import { ReadingEnds } from "../readingEnds.ts";
import { grayImage } from "./grayImage.ts";
import { type Homography, homographyOf, mapByHomography } from "./homography.ts";
import { photoMarks } from "./photoMarks.ts";
import { sheetCorners } from "./sheetCorners.ts";
import { straightened } from "./straighten.ts";
import { traceEdges } from "./traceEdges.kernel.ts";
import type { GrayImage } from "./uprightImage.ts";

type Point = readonly [number, number];

/** What says how large things in a picture are. Pixels count from its upper left corner. */
export interface ImageOptions {
  /** Size of a sheet of paper in the picture, mm. */
  readonly sheet?: { readonly widthMm: number; readonly heightMm: number } | undefined;
  /** Its corners, clockwise from the upper left; found when left out. */
  readonly corners?: readonly Point[] | undefined;
  /** Two points and how far they are apart, mm; the camera looked straight down. */
  readonly points?: readonly [Point, Point] | undefined;
  readonly apartMm?: number | undefined;
  /** What the line of 100 mm on our photo sheet measures in print, mm; 100 when not said. */
  readonly lineMm?: number | undefined;
  /** The straightened photograph is wanted besides. */
  readonly withPicture?: boolean | undefined;
}

/** Less than this on the table is a speck, a letter or a stitch hole, mm². */
const SPECK = 60;
/** The two sides of a drawn line are at most so far apart, mm. */
const STROKE_MOST = 2.5;
/** So near the rim of the sheet its own edge is seen, mm. */
const RIM = 1;

/** So far from where its paper ends, the rim of our photo sheet may be seen, mm. */
const SHEET_RIM = 4;

/** How the picture lies on the table. */
interface Lie {
  readonly map: Homography;
  readonly sheet: { readonly widthMm: number; readonly heightMm: number } | null;
  readonly hasPerspective: boolean;
  /** By our photo sheet: how far its rings are off, mm, and how many times larger it is printed. */
  readonly marked?: { readonly offMm: number; readonly scale: number };
}

/**
 * The outlines in a photograph or scan, in mm: the perspective is taken out by our photo sheet or another sheet of known
 * size, or the scale by two points; light is parted from dark in the middle between the two (Otsu), the edge traced between the pixels, both
 * sides of a drawn line brought together, and straight edges and arcs fitted.
 *
 * Errors: `ReadingEnds` when the picture cannot be read, or nothing says how large it is.
 * Source: Otsu 1979, IEEE Transactions on Systems, Man and Cybernetics 9(1); homography after Hartley & Zisserman.
 */
export async function readImage(bytes: Uint8Array, options: ImageOptions): Promise<PatternDrawing> {
  const image = await grayImage(bytes);
  const level = otsuLevel(image.values);
  const edges = traceEdges(image.values, image.width, image.height, level, 24);
  const lie = lieOf(image, edges, options);
  if (lie === null) throw new ReadingEnds({ code: "pattern-photo-unscaled", path: "" });
  // What runs into the rim is the table, or not all in the picture; a sheet of known size has a rim of its own.
  const inPicture = lie.sheet === null ? edges.filter((edge) => !touchesRim(edge, image)) : edges;
  const onTable = inPicture.map((edge) => mapped(edge, lie.map)).filter((line) => isPattern(line, lie));
  const kept = onTable.filter((line) => Math.abs(areaOf(line)) >= SPECK);
  const pixelMm = pixelSize(image, lie);
  const tolerance = Math.max(0.12, 1.2 * pixelMm);
  const lines = middles(kept).map((points): PatternLine => {
    const curve: Curve = fitPolyline(points, tolerance);
    return { name: "", layer: "", names: [], color: null, dash: [], curve };
  });
  const problems: PatternProblem[] = [
    {
      code: "pattern-photo-error",
      path: "",
      errorMm: Math.max(0.1, pixelMm) + tolerance + offBeyond(kept, lie),
      hasPerspective: lie.hasPerspective,
    },
  ];
  const seen = options.withPicture ? boxRound(kept) : null;
  const picture = seen && straightened(image, lie.map, seen, pixelMm);
  return {
    kind: "image",
    unit: { name: "mm", ofMm: 1 },
    lines,
    marks: [],
    problems,
    ...(picture ? { picture } : {}),
  };
}

/** Room that is shown round the lines, mm. */
const ROUND = 25;

function boxRound(lines: readonly Float64Array[]): Box | null {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const line of lines)
    for (let i = 0; i < line.length; i += 2) {
      box.minX = Math.min(box.minX, line[i]! - ROUND);
      box.maxX = Math.max(box.maxX, line[i]! + ROUND);
      box.minY = Math.min(box.minY, line[i + 1]! - ROUND);
      box.maxY = Math.max(box.maxY, line[i + 1]! + ROUND);
    }
  return box.minX < box.maxX ? box : null;
}

/** The grey between light and dark that parts the picture's values best. */
export function otsuLevel(values: Uint8Array): number {
  const counts = new Float64Array(256);
  for (const value of values) counts[value]!++;
  const total = values.length;
  const sum = counts.reduce((all, count, value) => all + count * value, 0);
  let below = 0;
  let sumBelow = 0;
  let best = -1;
  let from = 127;
  let to = 127;
  for (let level = 0; level < 255; level++) {
    below += counts[level]!;
    sumBelow += counts[level]! * level;
    const above = total - below;
    if (below === 0 || above === 0) continue;
    const apart = sumBelow / below - (sum - sumBelow) / above;
    const between = below * above * apart * apart;
    if (between > best * (1 + 1e-9)) {
      best = between;
      from = level;
    }
    if (between >= best * (1 - 1e-9)) to = level;
  }
  return (from + to) / 2 + 0.5;
}

function lieOf(image: GrayImage, edges: readonly Float64Array[], options: ImageOptions): Lie | null {
  const { sheet, points, apartMm } = options;
  if (sheet) {
    const corners = options.corners ?? cornersOfLargest(image, edges);
    return corners && lieOfSheet(corners, sheet);
  }
  if (!points || !apartMm) return lieByMarks(edges, options.lineMm ?? CHECK_LINE);
  const [a, b] = points;
  const pixels = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (pixels === 0) return null;
  const scale = apartMm / pixels;
  return { map: [scale, 0, 0, 0, -scale, scale * image.height, 0, 0, 1], sheet: null, hasPerspective: false };
}

/** By the rings of our photo sheet, the origin in its middle. */
function lieByMarks(edges: readonly Float64Array[], lineMm: number): Lie | null {
  const found = photoMarks(edges);
  if (found === null) return null;
  const scale = lineMm / CHECK_LINE;
  const map = found.map.map((value, i) => (i < 6 ? scale * value : value));
  return { map, sheet: null, hasPerspective: true, marked: { offMm: found.offMm * scale, scale } };
}

/** What the rings are off, and more where the pattern lies beyond them: it grows as the distance does. */
function offBeyond(lines: readonly Float64Array[], { marked }: Lie): number {
  if (marked === undefined) return 0;
  const [x, y] = RING_CORNERS[1];
  const reach = Math.hypot(x, y) * marked.scale;
  let far = reach;
  for (const line of lines)
    for (let i = 0; i < line.length; i += 2) far = Math.max(far, Math.hypot(line[i]!, line[i + 1]!));
  return (marked.offMm * far) / reach;
}

function lieOfSheet(corners: readonly Point[], given: NonNullable<ImageOptions["sheet"]>): Lie | null {
  const side = (i: number): number => {
    const [a, b] = [corners[i]!, corners[(i + 1) % 4]!];
    return Math.hypot(b[0] - a[0], b[1] - a[1]);
  };
  const isWide = side(0) + side(2) > side(1) + side(3);
  const [short, long] = [given.widthMm, given.heightMm].sort((a, b) => a - b) as [number, number];
  const [widthMm, heightMm] = isWide ? [long, short] : [short, long];
  const onTable: readonly Point[] = [
    [0, heightMm],
    [widthMm, heightMm],
    [widthMm, 0],
    [0, 0],
  ];
  const map = homographyOf(corners.map((from, i) => ({ from, to: onTable[i]! })));
  return map && { map, sheet: { widthMm, heightMm }, hasPerspective: true };
}

/** The sheet is the largest thing in the picture that does not reach all four sides of it, as the ground does. */
function cornersOfLargest(image: GrayImage, edges: readonly Float64Array[]): readonly Point[] | null {
  const sizes = edges.map((edge) => (touchesRim(edge, image) ? 0 : Math.abs(areaOf(edge))));
  const largest = sizes.reduce((best, size, i) => (size > sizes[best]! ? i : best), 0);
  const isSheet = (sizes[largest] ?? 0) > (image.width * image.height) / 10;
  return isSheet ? sheetCorners(edges[largest]!) : null;
}

function touchesRim(edge: Float64Array, { width, height }: GrayImage): boolean {
  let [left, right, top, bottom] = [false, false, false, false];
  for (let i = 0; i < edge.length; i += 2) {
    left ||= edge[i]! < 0.5;
    right ||= edge[i]! > width - 1.5;
    top ||= edge[i + 1]! < 0.5;
    bottom ||= edge[i + 1]! > height - 1.5;
  }
  return left && right && top && bottom;
}

function mapped(edge: Float64Array, map: Homography): Float64Array {
  const out = new Float64Array(edge.length);
  for (let i = 0; i < edge.length; i += 2) {
    const [x, y] = mapByHomography(map, edge[i]!, edge[i + 1]!);
    out[i] = x;
    out[i + 1] = y;
  }
  return out;
}

/** Whether a line is the maker's: on the sheet of known size, or not of our photo sheet's own print and rim. */
function isPattern(line: Float64Array, { sheet, marked }: Lie): boolean {
  if (marked !== undefined) {
    const within = ({ x, y }: { readonly x: number; readonly y: number }): boolean =>
      line.every((value, i) => Math.abs(value) <= marked.scale * (i % 2 === 0 ? x : y));
    // What goes round the sheet is the table, not a pattern.
    if (!within(PHOTO_WINDOW) && isInsideRing(line, 0, 0)) return false;
    return within(PHOTO_WINDOW) || !within({ x: PHOTO_PAPER.x + SHEET_RIM, y: PHOTO_PAPER.y + SHEET_RIM });
  }
  if (sheet === null) return true;
  for (let i = 0; i < line.length; i += 2) {
    const x = line[i]!;
    const y = line[i + 1]!;
    if (x < RIM || y < RIM || x > sheet.widthMm - RIM || y > sheet.heightMm - RIM) return false;
  }
  return true;
}

function areaOf(line: Float64Array): number {
  let twice = 0;
  for (let i = 0, j = line.length - 2; i < line.length; j = i, i += 2)
    twice += line[j]! * line[i + 1]! - line[i]! * line[j + 1]!;
  return twice / 2;
}

/** Size of a pixel on the table in the middle of the picture, mm. */
function pixelSize({ width, height }: GrayImage, { map }: Lie): number {
  const [x, y] = [width / 2, height / 2];
  const at = mapByHomography(map, x, y);
  const right = mapByHomography(map, x + 1, y);
  const down = mapByHomography(map, x, y + 1);
  return Math.max(Math.hypot(right[0] - at[0], right[1] - at[1]), Math.hypot(down[0] - at[0], down[1] - at[1]));
}

/** The two edges of a drawn line, one in the other at a stroke's width, become the line between them. */
function middles(lines: readonly Float64Array[]): readonly Float64Array[] {
  const sorted = [...lines].sort((a, b) => Math.abs(areaOf(b)) - Math.abs(areaOf(a)));
  const taken = new Set<Float64Array>();
  return sorted.flatMap((outer) => {
    if (taken.has(outer)) return [];
    const inner = sorted.find((line) => line !== outer && !taken.has(line) && isOtherSide(outer, line));
    if (!inner) return [outer];
    taken.add(inner);
    return [between(outer, inner)];
  });
}

function isOtherSide(outer: Float64Array, inner: Float64Array): boolean {
  // Dark lies to the left of both, so that they run round opposite ways.
  const a = areaOf(outer);
  const b = areaOf(inner);
  if (a * b >= 0 || Math.abs(b) > Math.abs(a)) return false;
  const step = 2 * Math.max(1, Math.floor(inner.length / 80));
  for (let i = 0; i < inner.length; i += step)
    if (distanceToRing(outer, inner[i]!, inner[i + 1]!) > STROKE_MOST) return false;
  return true;
}

function between(outer: Float64Array, inner: Float64Array): Float64Array {
  const out = new Float64Array(outer.length);
  for (let i = 0; i < outer.length; i += 2) {
    let best = Infinity;
    let at = 0;
    for (let k = 0; k < inner.length; k += 2) {
      const apart = (inner[k]! - outer[i]!) ** 2 + (inner[k + 1]! - outer[i + 1]!) ** 2;
      if (apart < best) {
        best = apart;
        at = k;
      }
    }
    out[i] = (outer[i]! + inner[at]!) / 2;
    out[i + 1] = (outer[i + 1]! + inner[at + 1]!) / 2;
  }
  return out;
}
