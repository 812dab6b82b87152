/** What can be wrong with the wish for a strap. Lengths in mm. */
export type StrapProblem =
  | {
      readonly code: "strap-too-narrow";
      readonly path: string;
      readonly widthMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: "strap-strip-too-narrow";
      readonly path: string;
      readonly cutMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: "strap-too-thick";
      readonly path: string;
      readonly construction: string;
      readonly thicknessMm: number;
      readonly mostMm: number;
    }
  | { readonly code: "strap-width-missing"; readonly path: string; readonly construction: string }
  | { readonly code: "strap-cord-missing"; readonly path: string }
  | {
      readonly code: "strap-width-conflict";
      readonly path: string;
      readonly core: "cord" | "webbing";
      readonly widthMm: number;
      readonly followsMm: number;
    }
  | {
      readonly code: "strap-too-short";
      readonly path: string;
      readonly lengthMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: "strap-hardware-narrow";
      readonly path: string;
      readonly kind: "ring" | "slider" | "clasp";
      readonly innerMm: number;
      readonly widthMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: "strap-material-missing";
      readonly path: string;
      readonly role: string;
      readonly id: string | null;
    }
  | {
      readonly code: "strap-role-unused";
      readonly path: string;
      readonly role: string;
      readonly construction: string;
    }
  | {
      readonly code: "strap-choice-out-of-range";
      readonly path: string;
      readonly value: number;
      readonly least: number;
      readonly most: number;
    }
  | {
      readonly code: "strap-turned-edge-wide";
      readonly path: string;
      readonly allowanceMm: number;
      readonly mostMm: number;
      readonly widthMm: number;
    }
  | {
      readonly code: "strap-stitch-off";
      readonly path: string;
      readonly fromEdgeMm: number;
      readonly mostMm: number;
      readonly widthMm: number;
    }
  | {
      readonly code: "strap-short-part-short";
      readonly path: string;
      readonly lengthMm: number;
      readonly leastMm: number;
    }
  | {
      readonly code: "strap-choice-unused";
      readonly path: string;
      /** A word for a choice of a strap. */
      readonly choice: string;
      readonly construction: string;
      /** Constructions that would use it. */
      readonly heededBy: readonly string[];
    }
  | { readonly code: "strap-fold-test-open"; readonly path: string; readonly construction: string }
  | { readonly code: "strap-on-bias"; readonly path: string }
  | {
      readonly code: "strap-fold-test-unreadable";
      readonly path: string;
      readonly neutral: number;
      readonly clearance: number;
    };
