/** What a file can be that is no pattern. */
export type UnreadableReason =
  | "not-xml"
  | "not-svg"
  | "entities"
  | "not-dxf"
  | "binary-dxf"
  | "packed"
  | "not-pdf"
  | "no-such-page"
  | "not-image"
  | "damaged"
  | "unknown-kind";

/** What a pattern can hold too much of. */
export type PatternLimit =
  | "megabytes"
  | "lines"
  | "points"
  | "style-rules"
  | "nesting"
  | "copies"
  | "pages"
  | "megapixels"
  | "seconds"
  | "memory";

/** What is in a file and not taken over. */
export type LeftOutThing =
  | "picture"
  | "script"
  | "outside-reference"
  | "entity"
  | "hidden"
  | "off-layer"
  | "frame-of-text"
  | "unknown-shape"
  | "solid"
  | "dimension";

/**
 * What can be wrong with a maker's own pattern, or has to be said of it. `path` names the outline or the place in the
 * file. Lengths in mm, areas in mm². `mended` says that it was put right, as asked for.
 */
export type PatternProblem =
  | {
      readonly code: "pattern-unreadable";
      readonly path: string;
      readonly reason: UnreadableReason;
      /** 0 when no line can be told. */
      readonly line: number;
    }
  | { readonly code: "pattern-encrypted"; readonly path: string }
  | { readonly code: "pattern-empty"; readonly path: string }
  | { readonly code: "pattern-photo-unscaled"; readonly path: string }
  | {
      /** How far an outline of a picture may be off; `hasPerspective` when it was taken out. */
      readonly code: "pattern-photo-error";
      readonly path: string;
      readonly errorMm: number;
      readonly hasPerspective: boolean;
    }
  | {
      /** Pages of which nothing says how they belong together. */
      readonly code: "pattern-pages-apart";
      readonly path: string;
      readonly count: number;
    }
  | {
      readonly code: "pattern-too-much";
      readonly path: string;
      readonly of: PatternLimit;
      readonly limit: number;
    }
  | {
      /** Nothing in the file says how large it is; `unit` is what one step was taken for, `ofMm` its size. */
      readonly code: "pattern-unit-assumed";
      readonly path: string;
      readonly unit: string;
      readonly ofMm: number;
    }
  | {
      /** The sizes would be whole numbers at another scale. */
      readonly code: "pattern-scale-doubtful";
      readonly path: string;
      readonly sideMm: number;
      readonly wouldBeMm: number;
      readonly unit: string;
      readonly mended: boolean;
    }
  | {
      readonly code: "pattern-size-unlikely";
      readonly path: string;
      readonly sizeMm: number;
      readonly unit: string;
    }
  | {
      readonly code: "pattern-path-broken";
      readonly path: string;
      /** Characters into the path. */
      readonly at: number;
    }
  | { readonly code: "pattern-numbers-unusable"; readonly path: string; readonly count: number }
  | { readonly code: "pattern-flat"; readonly path: string; readonly count: number }
  | {
      readonly code: "pattern-left-out";
      readonly path: string;
      readonly thing: LeftOutThing;
      readonly count: number;
    }
  | {
      readonly code: "pattern-gap";
      readonly path: string;
      readonly gapMm: number;
      readonly xMm: number;
      readonly yMm: number;
      readonly mended: boolean;
    }
  | {
      readonly code: "pattern-doubled";
      readonly path: string;
      readonly other: string;
      readonly mended: boolean;
    }
  | {
      /** So much of an open line lies on another one. */
      readonly code: "pattern-partly-doubled";
      readonly path: string;
      readonly other: string;
      readonly doubledMm: number;
      readonly mended: boolean;
    }
  | {
      readonly code: "pattern-crosses-itself";
      readonly path: string;
      readonly xMm: number;
      readonly yMm: number;
      readonly count: number;
      /** Whether there may be more than were counted. */
      readonly more: boolean;
      readonly mended: boolean;
    }
  | {
      readonly code: "pattern-sliver";
      readonly path: string;
      readonly widthMm: number;
      readonly lengthMm: number;
      readonly mended: boolean;
    };
