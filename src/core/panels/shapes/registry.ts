import { rectangle } from "./rectangle.ts";
import { rounded } from "./rounded.ts";
import type { ShapeRecord } from "./shapeRecord.ts";

/** Shapes that are made from their measures, as project files call them. */
export type ShapeId = "rectangle" | "rounded";

export const SHAPES: Readonly<Record<ShapeId, ShapeRecord>> = {
  rectangle,
  rounded,
};

/** In the order they are offered. */
export const SHAPE_IDS: readonly ShapeId[] = Object.keys(SHAPES) as ShapeId[];
