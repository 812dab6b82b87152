/** Dimensions that shapes take, as project files call them. */
export const DIMENSION_IDS = [
  "along",
  "across",
  "radius",
  "lowerLeft",
  "lowerRight",
  "upperRight",
  "upperLeft",
] as const;

export type DimensionId = (typeof DIMENSION_IDS)[number];

/** Edges of shapes, as project files call them. */
export const EDGE_NAMES = ["bottom", "right", "top", "left"] as const;

export type EdgeName = (typeof EDGE_NAMES)[number];
