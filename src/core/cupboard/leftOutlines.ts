import { offcutsOf } from "../buying/offcuts.ts";
import { isRectangle, ringBox } from "../geometry/box.ts";
import { differenceOf, intersectionOf, offsetOf, ringsOf, unionOf } from "../geometry/clipper.ts";
import { ringContour } from "../geometry/contourShapes.ts";
import { firstCrossing } from "../geometry/crossing.ts";
import { fewerCorners } from "../geometry/fewerCorners.ts";
import { type Polygon, type Ring, rectangleRing, reversedRing, signedArea } from "../geometry/ring.ts";
import type { Shape } from "../geometry/shape.ts";
import { LEAST_OFFCUT } from "../lay/alternatives/layFigures.ts";
import type { Flaw } from "../materials/stock.ts";

/** One connected leftover: where its box starts on the cloth that it was cut from, its shape, and holes in it. mm. */
export interface LeftOutline {
  readonly x: number;
  readonly y: number;
  readonly shape: Shape;
  readonly flaws: readonly Flaw[];
}

/** Half of what is too narrow to keep; a hair less, so that a strip of just that width stays. */
const HALF = LEAST_OFFCUT / 2 - 0.01;
/** Corners nearer than this to a straight line are left out, mm: nobody cuts or measures finer. */
const FINE = 0.1;
/** More corners than this no file has. */
const MOST_CORNERS = 2000;

/**
 * What is left of `cloth` once the pieces are cut out and the flaws left where they are: connected outlines without
 * anything narrower than `LEAST_OFFCUT`, none over another. Edges are true to 0.1 mm.
 *
 * Cost: as polygon booleans of all points.
 */
export function leftOutlines(cloth: Polygon, cutOut: readonly Polygon[]): LeftOutline[] {
  const clip = cutOut.map(({ outer }) => counterClockwise(outer));
  const free = clip.length === 0 ? [cloth] : differenceOf(ringsOf(cloth), clip);
  const rings = free.flatMap(ringsOf);
  // Shrunk and grown again: what is too narrow to be of use is gone, the rest is as it was.
  const kept = offsetOf(offsetOf(rings, -HALF, { kind: "miter", limit: 4 }).flatMap(ringsOf), HALF, {
    kind: "miter",
    limit: 4,
  });
  // Growing rounds off corners that run into something narrow; the rectangles told of as offcuts stay whole.
  const whole = [...kept.flatMap(ringsOf), ...rectanglesLeft(cloth, cutOut)];
  return intersectionOf(whole, rings).flatMap((polygon) => leftOutline(polygon) ?? []);
}

function rectanglesLeft(cloth: Polygon, cutOut: readonly Polygon[]): Ring[] {
  const { minX, minY, maxX, maxY } = ringBox(cloth.outer);
  const outline = isRectangle(cloth.outer) && cloth.holes.length === 0 ? null : movedBy(cloth, -minX, -minY);
  const region = { length: maxX - minX, width: maxY - minY, outline };
  return offcutsOf(
    region,
    cutOut.map((one) => movedBy(one, -minX, -minY)),
  ).map(({ x, y, along, across }) => rectangleRing(x + minX, y + minY, along, across));
}

function movedBy({ outer, holes }: Polygon, x: number, y: number): Polygon {
  const moved = (ring: Ring): Ring => ring.map((value, i) => value + (i % 2 === 0 ? x : y));
  return { outer: moved(outer), holes: holes.map(moved) };
}

/** A cloth folded lengthwise, opened flat: the fold at y = 0 becomes its middle. */
export function openedFlat(folded: readonly Polygon[]): Polygon[] {
  const rings = folded.flatMap(ringsOf);
  return unionOf([...rings, ...rings.map((ring) => mirrored(ring))]);
}

/** The same seen from the back. */
export function mirrored(ring: Ring): Ring {
  return reversedRing(ring.map((value, i) => (i % 2 === 1 ? -value : value)));
}

function leftOutline({ outer, holes }: Polygon): LeftOutline | null {
  const { minX, minY, maxX, maxY } = ringBox(outer);
  if (maxX - minX < LEAST_OFFCUT || maxY - minY < LEAST_OFFCUT) return null;
  const shape = shapeOf(outer, minX, minY);
  if (shape === null) return largestOf({ outer, holes }, minX, minY);
  const flaws = holes.flatMap((hole): Flaw[] => {
    const box = ringBox(hole);
    const inside = shapeOf(reversedRing(hole), box.minX, box.minY) ?? {
      kind: "rectangle",
      along: box.maxX - box.minX,
      across: box.maxY - box.minY,
    };
    return [{ x: rounded(box.minX - minX), y: rounded(box.minY - minY), shape: inside }];
  });
  return { x: rounded(minX), y: rounded(minY), shape, flaws };
}

/** The largest rectangle of an outline that touches itself, which no file could hold. */
function largestOf({ outer, holes }: Polygon, x: number, y: number): LeftOutline | null {
  const outline = movedBy({ outer, holes }, -x, -y);
  const { maxX, maxY } = ringBox(outline.outer);
  const largest = offcutsOf({ length: maxX, width: maxY, outline }, [])[0];
  if (largest === undefined) return null;
  const [along, across] = [rounded(largest.along), rounded(largest.across)];
  return { x: x + largest.x, y: y + largest.y, shape: { kind: "rectangle", along, across }, flaws: [] };
}

/** A ring as a shape whose box starts at the origin; null where its rounded corners would cross. */
function shapeOf(ring: Ring, x: number, y: number): Shape | null {
  const moved = ring.map((value, i) => rounded(value - (i % 2 === 0 ? x : y)));
  const { maxX, maxY } = ringBox(moved);
  const fewer = fewerCorners(ringContour(withoutRepeats(moved)), FINE);
  const corners = fewer.vertices.filter((_, i) => i % 3 !== 2);
  if (isRectangle(corners, 0.01)) return { kind: "rectangle", along: maxX, across: maxY };
  if (corners.length < 6 || corners.length / 2 > MOST_CORNERS || firstCrossing(corners) !== null) return null;
  return { kind: "outline", contour: fewer };
}

function withoutRepeats(ring: Ring): Ring {
  const n = ring.length / 2;
  const stays = Array.from({ length: n }, (_, i) => {
    const before = (i + n - 1) % n;
    return ring[2 * i] !== ring[2 * before] || ring[2 * i + 1] !== ring[2 * before + 1];
  });
  return ring.filter((_, i) => stays[Math.floor(i / 2)]);
}

function counterClockwise(ring: Ring): Ring {
  return signedArea(ring) < 0 ? reversedRing(ring) : ring;
}

/** To a thousandth of a millimetre: the library's own grid is hardly finer on a long roll. */
function rounded(mm: number): number {
  return Math.round(mm * 1000) / 1000 || 0;
}

/** A rectangle of cloth with its corner at (x, y). */
export function clothBox(x: number, y: number, along: number, across: number): Polygon {
  return { outer: rectangleRing(x, y, along, across), holes: [] };
}
