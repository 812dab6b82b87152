// Shapes of panels against closed formulas of plane geometry (rectangles, trapezoids, regular polygons, circular
// segments: any handbook's mensuration tables, from memory), the perimeter of the ellipse against Ramanujan's second
// approximation (Modular equations and approximations to π, Quarterly Journal of Mathematics 45, 1914): the
// perimeter is π (a + b) (1 + 3h / (10 + √(4 − 3h)) + θ h⁵), h = ((a − b) / (a + b))², with θ from 3 / 2¹⁷ to
// 4 / π − 14 / 11 (Almkvist & Berndt, American Mathematical Monthly 95, 1988); and against numerical integration.
import fc from "fast-check";
import { expect, test } from "vitest";
import type { Contour } from "../../src/core/geometry/contour.ts";
import { contourEdges, edgeDirection, flattenContour } from "../../src/core/geometry/contourArcs.ts";
import { contourArea, contourLength } from "../../src/core/geometry/contourEdgeLengths.ts";
import { firstCrossing } from "../../src/core/geometry/crossing.ts";
import { signedArea } from "../../src/core/geometry/ring.ts";
import {
  biasOfLength,
  biasOfSquare,
  clothForBias,
  joinLoss,
  squareForBias,
} from "../../src/core/panels/bias/biasStrips.ts";
import { edgeRun, runLength } from "../../src/core/panels/edgeRun.ts";
import { SHAPE_IDS, SHAPES, type ShapeId } from "../../src/core/panels/shapes/registry.ts";
import type { ShapeOutline, Sizes } from "../../src/core/panels/shapes/shapeRecord.ts";

type Given = Readonly<Record<string, number>>;

/** Sizes with those that may be left out as they then are. */
function whole(id: ShapeId, sizes: Given): Given {
  const all: Record<string, number> = { ...sizes };
  for (const { id: key, otherwise } of SHAPES[id].dimensions)
    if (!(key in all)) all[key] = typeof otherwise === "number" ? otherwise : all[otherwise!]!;
  return all;
}

function outline(id: ShapeId, sizes: Given): ShapeOutline {
  const made = SHAPES[id].outline(whole(id, sizes) as Sizes);
  if (!("contour" in made)) throw new Error(`${id}: ${JSON.stringify(made)}`);
  return made;
}

const { PI, hypot, sqrt, tan } = Math;

/** Area and perimeter of a circular segment's arc: chord c, rise h. */
function segment(c: number, h: number): { area: number; arc: number } {
  const r = (c * c) / (8 * h) + h / 2;
  const angle = 2 * Math.asin(Math.min(1, c / (2 * r)));
  return { area: (r * r * (angle - Math.sin(angle))) / 2, arc: r * angle };
}

const mm = (min: number, max: number) => fc.double({ min, max, noNaN: true });

interface Formula {
  readonly sizes: fc.Arbitrary<Given>;
  readonly area: (s: Given) => number;
  readonly perimeter: (s: Given) => number;
}
const formula = <K extends string>(
  sizes: fc.Arbitrary<Record<K, number>>,
  area: (s: Record<K, number>) => number,
  perimeter: (s: Record<K, number>) => number,
): Formula => ({ sizes, area: area as Formula["area"], perimeter: perimeter as Formula["perimeter"] });

const withCorners = fc
  .record({ along: mm(20, 900), across: mm(20, 900), shares: fc.array(mm(0, 0.5), { minLength: 4, maxLength: 4 }) })
  .map(({ along, across, shares }) => {
    const [lowerLeft, lowerRight, upperRight, upperLeft] = shares.map(
      (share) => share * Math.min(along, across),
    ) as [number, number, number, number];
    return { along, across, radius: 0, lowerLeft, lowerRight, upperRight, upperLeft };
  });
const radii = (s: Given): number[] => ["lowerLeft", "lowerRight", "upperRight", "upperLeft"].map((key) => s[key]!);

const FORMULAS: Readonly<Record<Exclude<ShapeId, "ellipse">, Formula>> = {
  rectangle: formula(
    fc.record({ along: mm(1, 900), across: mm(1, 900) }),
    (s) => s.along * s.across,
    (s) => 2 * (s.along + s.across),
  ),
  rounded: formula(
    withCorners,
    (s) => s.along * s.across - radii(s).reduce((sum, r) => sum + (1 - PI / 4) * r * r, 0),
    (s) => 2 * (s.along + s.across) - radii(s).reduce((sum, r) => sum + (2 - PI / 2) * r, 0),
  ),
  trapezoid: formula(
    fc.record({ bottomWidth: mm(10, 800), topWidth: mm(10, 800), height: mm(10, 800) }),
    (s) => ((s.bottomWidth + s.topWidth) / 2) * s.height,
    (s) => s.bottomWidth + s.topWidth + 2 * hypot(s.height, (s.topWidth - s.bottomWidth) / 2),
  ),
  "box-corners": formula(
    fc.record({ width: mm(10, 800), height: mm(10, 800), depth: mm(2, 400) }),
    (s) => (s.width + s.depth) * (s.height + s.depth / 2) - (s.depth * s.depth) / 2,
    (s) => 2 * (s.width + s.depth + s.height + s.depth / 2),
  ),
  "round-bottom": formula(
    fc.record({ width: mm(50, 400), height: mm(50, 400), radius: mm(0, 25) }),
    (s) => s.width * s.height - (2 - PI / 2) * s.radius ** 2,
    (s) => 2 * (s.width + s.height) - (4 - PI) * s.radius,
  ),
  "curved-top": formula(
    fc
      .record({ width: mm(10, 800), height: mm(10, 800), share: mm(0.05, 0.5) })
      .map(({ width, height, share }) => ({ width, height, rise: width * share })),
    (s) => s.width * s.height + segment(s.width, s.rise).area,
    (s) => s.width + 2 * s.height + segment(s.width, s.rise).arc,
  ),
  "flap-round": formula(
    fc.record({ width: mm(10, 800), height: mm(405, 800) }),
    (s) => s.width * (s.height - s.width / 2) + (PI * s.width * s.width) / 8,
    (s) => s.width + 2 * (s.height - s.width / 2) + (PI * s.width) / 2,
  ),
  "flap-pointed": formula(
    fc.record({ width: mm(10, 800), height: mm(200, 800), point: mm(5, 190) }),
    (s) => s.width * (s.height - s.point / 2),
    (s) => s.width + 2 * (s.height - s.point) + 2 * hypot(s.width / 2, s.point),
  ),
  wrap: formula(
    fc.record({ width: mm(10, 800), height: mm(10, 800), depth: mm(2, 400), flap: mm(1, 300) }),
    (s) => s.width * (2 * s.height + s.depth + s.flap),
    (s) => 2 * (s.width + 2 * s.height + s.depth + s.flap),
  ),
  gusset: formula(
    fc.record({ length: mm(10, 2000), width: mm(2, 400) }),
    (s) => s.length * s.width,
    (s) => 2 * (s.length + s.width),
  ),
  "gusset-tapered": formula(
    fc.record({ base: mm(10, 800), side: mm(250, 800), width: mm(2, 240), endWidth: mm(2, 240) }),
    (s) => s.base * s.width + (s.width + s.endWidth) * sqrt(s.side ** 2 - ((s.width - s.endWidth) / 2) ** 2),
    (s) => 2 * (s.base + 2 * s.side + s.endWidth),
  ),
  "gusset-boxed": formula(
    fc.record({ side: mm(10, 800), base: mm(10, 800), width: mm(2, 400) }),
    (s) => (2 * s.side + s.base) * s.width,
    (s) => 2 * (2 * s.side + s.base + s.width),
  ),
  circle: formula(
    fc.record({ diameter: mm(5, 900) }),
    (s) => (PI / 4) * s.diameter ** 2,
    (s) => PI * s.diameter,
  ),
  oval: formula(
    fc.record({ width: mm(200, 800), depth: mm(5, 199) }),
    (s) => (s.width - s.depth) * s.depth + (PI / 4) * s.depth ** 2,
    (s) => 2 * (s.width - s.depth) + PI * s.depth,
  ),
  "rounded-base": formula(
    fc.record({ width: mm(50, 800), depth: mm(50, 300), radius: mm(0, 25) }),
    (s) => s.width * s.depth - (4 - PI) * s.radius ** 2,
    (s) => 2 * (s.width + s.depth) - (8 - 2 * PI) * s.radius,
  ),
  hexagon: formula(
    fc.record({ side: mm(2, 400) }),
    (s) => (3 * sqrt(3) * s.side ** 2) / 2,
    (s) => 6 * s.side,
  ),
  polygon: formula(
    fc.record({ side: mm(2, 200), corners: fc.integer({ min: 3, max: 100 }) }),
    (s) => (s.corners * s.side ** 2) / (4 * tan(PI / s.corners)),
    (s) => s.corners * s.side,
  ),
  "slip-pocket": formula(
    fc.record({ width: mm(50, 400), height: mm(50, 400), radius: mm(0, 25) }),
    (s) => s.width * s.height - (2 - PI / 2) * s.radius ** 2,
    (s) => 2 * (s.width + s.height) - (4 - PI) * s.radius,
  ),
  "zip-pocket": formula(
    fc.record({ width: mm(120, 400), height: mm(80, 400), window: mm(30, 110) }),
    (s) => 2 * s.width * s.height,
    (s) => 2 * s.width + 4 * s.height,
  ),
  "zip-panel": formula(
    fc.record({ length: mm(50, 900), width: mm(30, 200), zip: mm(0, 20) }),
    (s) => (s.length * (s.width - s.zip)) / 2,
    (s) => 2 * s.length + s.width - s.zip,
  ),
  tab: formula(
    fc.record({ length: mm(60, 200), width: mm(20, 60), radius: mm(0, 10) }),
    (s) => s.length * s.width - (2 - PI / 2) * s.radius ** 2,
    (s) => 2 * (s.length + s.width) - (4 - PI) * s.radius,
  ),
  binding: formula(
    fc.record({ length: mm(100, 1400), width: mm(10, 80) }),
    (s) => s.length * s.width,
    (s) => 2 * (s.length + s.width),
  ),
  "bias-binding": formula(
    fc.record({ length: mm(100, 1400), width: mm(10, 80) }),
    (s) => s.length * s.width,
    (s) => 2 * (s.length + Math.SQRT2 * s.width),
  ),
  piping: formula(
    fc.record({ length: mm(100, 1400), cord: mm(2, 8), seam: mm(5, 15) }),
    (s) => s.length * (PI * s.cord + 2 * s.seam),
    (s) => 2 * (s.length + Math.SQRT2 * (PI * s.cord + 2 * s.seam)),
  ),
};

test.each(Object.entries(FORMULAS))(
  "%s: area and perimeter as the formula has them, simple, named all round",
  (id, { sizes, area, perimeter }) => {
    fc.assert(
      fc.property(sizes, (given) => {
        const { contour, edges } = outline(id as ShapeId, given);
        expect(contourArea(contour) / area(given)).toBeCloseTo(1, 9);
        expect(contourLength(contour) / perimeter(given)).toBeCloseTo(1, 9);
        sound(contour);
        const named = edges.reduce(
          (sum, { name }) => sum + runLength(contour, edgeRun({ contour, edges }, name)!),
          0,
        );
        expect(named / perimeter(given)).toBeCloseTo(1, 9);
      }),
      { numRuns: 60, endOnFailure: true },
    );
  },
);

/** Counter-clockwise, simple, its box at the origin. */
function sound(contour: Contour): void {
  const ring = flattenContour(contour);
  expect(signedArea(ring)).toBeGreaterThan(0);
  expect(firstCrossing(ring)).toBeNull();
}

test("a low round flap is one arc of its rise", () => {
  const { contour } = outline("flap-round", { width: 300, height: 90 });
  expect(contourArea(contour)).toBeCloseTo(segment(300, 90).area, 6);
  expect(contourLength(contour)).toBeCloseTo(300 + segment(300, 90).arc, 9);
});

/** Perimeter of an ellipse by the trapezoid rule on its smooth, periodic speed: error falls faster than any power. */
function integrated(a: number, b: number): number {
  const n = 20_000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const t = (2 * PI * i) / n;
    sum += hypot(a * Math.sin(t), b * Math.cos(t));
  }
  return (sum * 2 * PI) / n;
}

test("an ellipse has the perimeter that Ramanujan and integration find, and arcs that meet in one direction", () => {
  fc.assert(
    fc.property(mm(20, 900), mm(0.15, 1), (width, share) => {
      const depth = width * share;
      const { contour } = outline("ellipse", { width, depth });
      const [a, b] = [width / 2, depth / 2];
      const h = ((a - b) / (a + b)) ** 2;
      const ramanujan = PI * (a + b) * (1 + (3 * h) / (10 + sqrt(4 - 3 * h)));
      const exact = integrated(a, b);
      const least = PI * (a + b) * h ** 5 * (3 / 2 ** 17);
      const error = PI * (a + b) * h ** 5 * (4 / PI - 14 / 11);
      // Ramanujan's own error first, so that the bound below means something.
      expect(exact - ramanujan).toBeGreaterThan(least - 1e-9);
      expect(exact - ramanujan).toBeLessThan(error + 1e-9);
      const length = contourLength(contour);
      // Arcs within 0.005 mm of the curve: 0.005 mm times the whole turn is the most that can add up.
      expect(Math.abs(length - exact)).toBeLessThan(2 * PI * 0.005);
      expect(Math.abs(length - ramanujan)).toBeLessThan(2 * PI * 0.005 + error);
      expect(Math.abs(contourArea(contour) - PI * a * b)).toBeLessThan(0.005 * exact);
      sound(contour);
      const edges = contourEdges(contour);
      for (const [i, edge] of edges.entries()) {
        const [x0, y0] = edgeDirection(edges.at(i - 1)!, 1);
        const [x1, y1] = edgeDirection(edge, 0);
        expect(Math.abs(x0 * y1 - y0 * x1)).toBeLessThan(1e-7);
      }
      for (let i = 0; i < contour.vertices.length; i += 3) {
        const [x, y] = [contour.vertices[i]! - a, contour.vertices[i + 1]! - b];
        expect(Math.abs(hypot(x / a, y / b) - 1) * b).toBeLessThan(0.006);
      }
    }),
    { numRuns: 40, endOnFailure: true },
  );
});

test("a tapered gusset's edges are as long as what they are sewn to", () => {
  const { contour, edges } = outline("gusset-tapered", { base: 300, side: 220, width: 100, endWidth: 40 });
  for (const name of ["front", "back"])
    expect(runLength(contour, edgeRun({ contour, edges }, name)!)).toBeCloseTo(740, 9);
});

test("strips out of a square: together they have its area where they use it up, and fit it always", () => {
  for (const n of [1, 2, 5, 9]) {
    const [side, width] = [500, 500 / (n * Math.SQRT2)];
    const { strips, joined } = biasOfSquare(side, width, 0);
    expect(strips).toHaveLength(2 * n);
    expect(joined * width).toBeCloseTo(side * side, 6);
  }
  fc.assert(
    fc.property(mm(100, 1500), mm(10, 90), mm(0, 10), (side, width, seam) => {
      const { strips, joined } = biasOfSquare(side, width, seam);
      const all = biasOfSquare(side, width, 0).strips;
      const area = all.reduce((sum, length) => sum + length * width, 0);
      expect(strips.length).toBeLessThanOrEqual(all.length);
      expect(area).toBeLessThanOrEqual(side * side * (1 + 1e-9));
      // What is left is two corners, each less than a strip high.
      expect(side * side - area).toBeLessThan(2 * width * width * (1 + 1e-9));
      if (joined <= 0) return;
      const back = squareForBias(joined, width, seam);
      expect(back).toBeLessThanOrEqual(side * (1 + 1e-9));
      expect(biasOfSquare(back * (1 + 1e-9), width, seam).joined).toBeGreaterThanOrEqual(joined * (1 - 1e-6));
    }),
    { numRuns: 200, endOnFailure: true },
  );
});

test("no square gives a length that is none", () => {
  for (const [length, width] of [
    [Number.NaN, 40],
    [Infinity, 40],
    [500, 0],
  ] as const)
    expect(() => squareForBias(length, width, 6)).toThrow(RangeError);
});

test("strips out of a length of cloth, and the length for a binding", () => {
  // By hand: cloth 1000 wide, 1500 long, strips of 50: (1500 − 1000) / 70.7 gives 7 strips of 1414.2.
  expect(biasOfLength(1500, 1000, 50, 0).strips).toHaveLength(7);
  expect(biasOfLength(1500, 1000, 50, 0).joined).toBeCloseTo(7 * 1414.2135623731, 6);
  fc.assert(
    fc.property(mm(200, 20_000), mm(300, 1500), mm(10, 80), mm(0, 10), (length, cloth, width, seam) => {
      const needed = clothForBias(length, cloth, width, seam)!;
      expect(biasOfLength(needed, cloth, width, seam).joined).toBeGreaterThanOrEqual(length * (1 - 1e-9));
      expect(biasOfLength(needed - 0.01, cloth, width, seam).joined).toBeLessThan(length);
    }),
    { numRuns: 200, endOnFailure: true },
  );
});

test("a long binding is cut as equal strips that come to its length once joined", () => {
  fc.assert(
    fc.property(mm(1500, 20_000), mm(300, 1400), mm(0, 12), (length, longest, join) => {
      const { contour, edges, copies } = outline("bias-binding", { length, width: 40, longest, join });
      const one = runLength(contour, edgeRun({ contour, edges }, "bottom")!);
      expect(one).toBeLessThanOrEqual(longest * (1 + 1e-9));
      expect(copies! * one - (copies! - 1) * joinLoss(join)).toBeCloseTo(length, 6);
    }),
    { numRuns: 100, endOnFailure: true },
  );
});

test("every shape has a place in the picture for each of its dimensions, starts sound, and refuses what does not fit", () => {
  for (const id of SHAPE_IDS) {
    const record = SHAPES[id];
    const usual = Object.fromEntries(record.dimensions.map(({ id: key, usual }) => [key, usual])) as Sizes;
    const made = record.outline(usual);
    if (!("contour" in made)) throw new Error(id);
    sound(made.contour);
    const starts = made.edges.map(({ start }) => start);
    expect(starts, id).toEqual([...new Set(starts)].sort((a, b) => a - b));
    expect(new Set(made.edges.map(({ name }) => name)).size).toBe(made.edges.length);
  }
});
