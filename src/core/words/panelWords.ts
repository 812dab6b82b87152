import type { BagBody, BagMeasureId, BagPart } from "../bags/bagWish.ts";
import type { Starter } from "../bags/starters.ts";
import type { ShapeId } from "../panels/shapes/registry.ts";
import type { DimensionId, EdgeName } from "../panels/shapes/shapeNames.ts";
import type { PatternRole } from "../patterns/patternOutline.ts";

/** Panels, their shapes, and the bags they make. */
export interface PanelWords {
  /** Pieces that follow from a panel. */
  readonly interfacing: string;
  readonly lining: string;
  readonly shapes: Readonly<Record<ShapeId, string>>;
  readonly dimensions: Readonly<Record<DimensionId, string>>;
  readonly edges: Readonly<Record<EdgeName, string>>;
  readonly bodies: Readonly<Record<BagBody, string>>;
  /** What a body is, in a few words. */
  readonly about: Readonly<Record<BagBody, string>>;
  readonly starters: Readonly<Record<Starter, string>>;
  readonly measures: Readonly<Record<BagMeasureId, string>>;
  /** Parts of a bag as its pieces are called. */
  readonly parts: Readonly<Record<BagPart, string>>;
  /** What the lines of a pattern are for. */
  readonly lines: Readonly<Record<PatternRole, string>>;
  readonly cloths: { readonly outer: string; readonly lining: string; readonly interfacing: string };
  readonly straps: { readonly handle: string; readonly shoulder: string; readonly wrist: string };
}
