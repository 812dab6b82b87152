import {
  type Corner,
  outlineOf,
  QUARTER,
  type ShapeOutline,
  type ShapeRecord,
  type SizeFault,
  type Sizes,
  shapeRecord,
} from "./shapeRecord.ts";

type RoundedSizes = Sizes<"along" | "across" | "lowerLeft" | "lowerRight" | "upperRight" | "upperLeft">;

/** A rectangle with rounded corners, each with a radius of its own where the maker gives one. */
export const rounded: ShapeRecord = shapeRecord({
  dimensions: [
    { id: "along", least: 0.1, most: 100_000, usual: 350 },
    { id: "across", least: 0.1, most: 100_000, usual: 400 },
    { id: "radius", least: 0, most: 100_000, usual: 50 },
    { id: "lowerLeft", least: 0, most: 100_000, usual: 50, otherwise: "radius" },
    { id: "lowerRight", least: 0, most: 100_000, usual: 50, otherwise: "radius" },
    { id: "upperRight", least: 0, most: 100_000, usual: 50, otherwise: "radius" },
    { id: "upperLeft", least: 0, most: 100_000, usual: 50, otherwise: "radius" },
  ],
  outline: (sizes) => radiusFault(sizes) ?? roundedOutline(sizes),
  places: ({ along, across, lowerRight, upperRight }) => [
    { dimension: "along", from: [0, 0], to: [along, 0], off: -1 },
    { dimension: "across", from: [0, 0], to: [0, across], off: 1 },
    {
      dimension: "upperRight",
      from: [along - upperRight, across - upperRight],
      to: [along - upperRight * (1 - Math.SQRT1_2), across - upperRight * (1 - Math.SQRT1_2)],
      off: 0,
    },
    {
      dimension: "lowerRight",
      from: [along - lowerRight, lowerRight],
      to: [along - lowerRight * (1 - Math.SQRT1_2), lowerRight * (1 - Math.SQRT1_2)],
      off: 0,
    },
  ],
});

/** Corners count like edges, counter-clockwise from the lower left. */
function roundedOutline({
  along,
  across,
  lowerLeft,
  lowerRight,
  upperRight,
  upperLeft,
}: RoundedSizes): ShapeOutline {
  const corners: Corner[] = [
    [lowerLeft, 0, 0, "bottom"],
    [along - lowerRight, 0, QUARTER],
    [along, lowerRight, 0, "right"],
    [along, across - upperRight, QUARTER],
    [along - upperRight, across, 0, "top"],
    [upperLeft, across, QUARTER],
    [0, across - upperLeft, 0, "left"],
    [0, lowerLeft, QUARTER],
  ];
  return outlineOf(corners);
}

/** Two radii on one side are together no longer than it. */
function radiusFault(sizes: RoundedSizes): SizeFault | null {
  const { along, across, lowerLeft, lowerRight, upperRight, upperLeft } = sizes;
  const sides = [
    [along, "lowerLeft", lowerLeft, lowerRight],
    [across, "lowerRight", lowerRight, upperRight],
    [along, "upperRight", upperRight, upperLeft],
    [across, "upperLeft", upperLeft, lowerLeft],
  ] as const;
  for (const [side, dimension, one, next] of sides)
    if (one + next > side * (1 + 1e-12)) {
      const alike = lowerLeft === lowerRight && lowerRight === upperRight && upperRight === upperLeft;
      const mostMm = alike ? Math.min(along, across) / 2 : Math.max(0, side - next);
      return { dimension: alike ? "radius" : dimension, mm: one, leastMm: null, mostMm };
    }
  return null;
}
