import type { Shape } from "../geometry/shape.ts";
import type { PieceGrain } from "../materials/cutPiece.ts";

/** A mark on the edge that starts at corner `edge`, `at` mm along it, counter-clockwise. */
export interface Notch {
  readonly edge: number;
  readonly at: number;
}

/** Interfacing for a panel. `full`: as the panel is cut; `net`: without its seam allowance. */
export interface PanelInterfacing {
  readonly materialId: string;
  readonly cut: "full" | "net";
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
  /** On its stitch line (finished size); `along` and x run with the grain arrow. */
  readonly shape: Shape;
  /** Width added outside the stitch line, all round. */
  readonly seamAllowance: number;
  /** Edge of the shape that lies on a fold: the piece is the shape and its mirror image across it. */
  readonly foldEdge: number | null;
  readonly grain: PieceGrain;
  readonly notches: readonly Notch[];
  readonly interfacing: PanelInterfacing | null;
}
