import type { Contour } from "../geometry/contour.ts";
import type { PieceGrain, PieceLine } from "../materials/cutPiece.ts";
import type { Measure } from "./measure.ts";
import type { ShapeId } from "./shapes/registry.ts";
import type { NamedEdge } from "./shapes/shapeRecord.ts";

/** An edge by its name in the shape, or by its number: edge 0 leaves corner 0, counter-clockwise. */
export type EdgeRef = number | string;

/** A shape made from its measures, or an outline drawn, typed or brought in. */
export type PanelShape =
  | {
      readonly kind: "measured";
      readonly shape: ShapeId;
      /** By dimension; those that may be left out can be missing. */
      readonly sizes: Readonly<Record<string, Measure>>;
    }
  | { readonly kind: "outline"; readonly contour: Contour; readonly edges?: readonly NamedEdge[] | undefined };

/** How a notch is made: a slit or a wedge into the seam allowance, or a point standing out of it. */
export type NotchCut = "slit" | "in" | "out";

/** A mark on an edge, `at` so far along it counter-clockwise, or at a share of its length. */
export interface Notch {
  readonly edge: EdgeRef;
  readonly at: Measure | { readonly share: number };
  /** A slit unless said otherwise. */
  readonly cut?: NotchCut | undefined;
  /** Match mark: the notch of the same name on another panel is the one it meets. */
  readonly mark?: string | undefined;
}

/**
 * How the seam allowance ends at a corner. `mitred`: both sides run on until they meet. `square`: cut off square to
 * the edge before it, one allowance beyond the corner. `blunted`: cut off square to the corner's middle, one allowance
 * from its point. `folded-back`: the end mirrors what it lies on once the allowance is turned in.
 */
export type CornerStyle = "mitred" | "square" | "blunted" | "folded-back";

/** What one edge has of its own. */
export interface EdgeWish {
  readonly edge: EdgeRef;
  readonly allowance?: Measure | undefined;
  /** The allowance is turned in along the stitch line, which is drawn as a fold; its ends are folded back. */
  readonly hem?: boolean | undefined;
}

/** The style of the corner that edge `corner` starts at. */
export interface CornerWish {
  readonly corner: EdgeRef;
  readonly style: CornerStyle;
}

/** A place on the panel, from the same corner its outline is measured from. */
export interface PanelPlace {
  readonly x: Measure;
  readonly y: Measure;
}

/** A hole to mark, with a word beside it if any. */
export interface DrillPoint extends PanelPlace {
  readonly text?: string | undefined;
}

/** Words on the panel. */
export interface PanelText extends PanelPlace {
  readonly text: string;
}

/** How large interfacing is cut. */
export const INTERFACING_CUTS = ["full", "net", "inset"] as const;

/**
 * A piece that follows from a panel. `full`: as the panel is cut. `net`: without its seam allowance. `inset`: its
 * stitch line lies inside the panel's by `inset`, and a lining keeps the seam allowance outside it.
 */
export interface FollowingPiece {
  readonly materialId: string;
  readonly cut: (typeof INTERFACING_CUTS)[number];
  /** For `inset`. */
  readonly inset?: Measure | undefined;
}

/** A piece of the bag's body as the maker asks for it. Lengths in mm. */
export interface Panel {
  readonly id: string;
  readonly name: string;
  readonly materialId: string;
  /** Pieces as drawn for one bag. */
  readonly count: number;
  /** Mirror images for one bag besides. */
  readonly mirroredCount: number;
  readonly shape: PanelShape;
  /** Which line the shape is: the stitch line (finished size), where nothing is said, or the cut line. */
  readonly drawn?: "stitch" | "cut" | undefined;
  /** Width between stitch line and cut line of every edge that has none of its own; none on the fold. */
  readonly seamAllowance: Measure;
  readonly edges?: readonly EdgeWish[] | undefined;
  /** Of every corner that has none of its own; mitred where nothing is said. */
  readonly cornerStyle?: CornerStyle | undefined;
  readonly corners?: readonly CornerWish[] | undefined;
  /** Edge of the shape that lies on a fold: the piece is the shape and its mirror image across it. */
  readonly foldEdge: EdgeRef | null;
  /** How the grain arrow lies on the cloth. */
  readonly grain: PieceGrain;
  /** From where to where the grain arrow runs on the outline; the shape's own way where nothing is said. */
  readonly grainArrow?: readonly [number, number, number, number] | undefined;
  readonly notches: readonly Notch[];
  readonly drills?: readonly DrillPoint[] | undefined;
  readonly texts?: readonly PanelText[] | undefined;
  /** What else is drawn on the panel. */
  readonly lines?: readonly PieceLine[] | undefined;
  readonly interfacing: FollowingPiece | null;
  readonly lining?: FollowingPiece | undefined;
}
