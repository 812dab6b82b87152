/** What can be wrong with panels, their shapes and what they follow. */
export type PanelProblem =
  | { readonly code: "notch-off-edge"; readonly path: string; readonly atMm: number; readonly edgeMm: number }
  | { readonly code: "no-such-edge"; readonly path: string; readonly edge: number; readonly edges: number }
  | {
      readonly code: "no-such-edge-name";
      readonly path: string;
      readonly name: string;
      readonly nearest: string | null;
      readonly known: readonly string[];
    }
  | { readonly code: "fold-edge-not-straight"; readonly path: string; readonly edge: number | string }
  | {
      /** A size of a shape that does not go with its other sizes. */
      readonly code: "size-does-not-fit";
      readonly path: string;
      readonly sizeMm: number;
      readonly leastMm: number | null;
      readonly mostMm: number | null;
    }
  | {
      /** A measure follows a panel or a measure that is not there. */
      readonly code: "unknown-measure";
      readonly path: string;
      readonly of: string | null;
      readonly name: string;
      readonly nearest: string | null;
      readonly known: readonly string[];
    }
  | {
      /** A measure follows itself, by way of `names`. */
      readonly code: "measures-in-circle";
      readonly path: string;
      readonly names: readonly string[];
    }
  | {
      /** Names of edges that do not begin at corners of the outline, each once. */
      readonly code: "edge-start-unusable";
      readonly path: string;
      readonly start: number;
      readonly points: number;
    }
  | {
      /** The seam allowance, taken inward from a cut line, leaves nothing to sew. */
      readonly code: "allowance-eats-panel";
      readonly path: string;
      readonly allowanceMm: number;
    }
  | { readonly code: "inset-eats-panel"; readonly path: string; readonly insetMm: number }
  | {
      readonly code: "unknown-panel";
      readonly path: string;
      readonly id: string;
      readonly nearest: string | null;
      readonly known: readonly string[];
    };
