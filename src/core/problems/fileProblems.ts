/** Why a text is not JSON. */
export type JsonFaultReason =
  | "ended-early"
  | "more-after-end"
  | "value-expected"
  | "key-expected"
  | "colon-expected"
  | "comma-expected"
  | "comma-too-many"
  | "bad-number"
  | "bad-text"
  | "too-deep";

/** Kinds of value a place in the file can ask for. */
export type Expected =
  | "one-way"
  | "length"
  | "length-or-open"
  | "share"
  | "count"
  | "money"
  | "number"
  | "text"
  | "yes-or-no"
  | "list"
  | "group"
  | "place"
  | "point"
  | "size"
  | "measure"
  | "edge"
  | "paper";

/** What can be wrong with a project file. `value` is the offending value as short JSON. */
export type FileProblem =
  | { readonly code: "file-empty"; readonly path: string }
  | { readonly code: "workshop-missing"; readonly path: string; readonly name: string }
  | {
      readonly code: "workshop-material-unknown";
      readonly path: string;
      readonly id: string;
      readonly known: readonly string[];
    }
  | {
      readonly code: "file-not-json";
      readonly path: string;
      readonly line: number;
      readonly column: number;
      readonly reason: JsonFaultReason;
    }
  | { readonly code: "file-too-large"; readonly path: string; readonly characters: number; readonly limit: number }
  | { readonly code: "file-too-deep"; readonly path: string; readonly limit: number }
  | { readonly code: "file-newer"; readonly path: string; readonly version: number; readonly known: number }
  | {
      readonly code: "file-version-unknown";
      readonly path: string;
      readonly value: string | null;
      readonly known: number;
    }
  | { readonly code: "unknown-key"; readonly path: string; readonly key: string; readonly nearest: string | null }
  | { readonly code: "key-missing"; readonly path: string; readonly key: string }
  | { readonly code: "key-repeated"; readonly path: string; readonly key: string }
  | { readonly code: "wrong-type"; readonly path: string; readonly expected: Expected; readonly value: string }
  | {
      readonly code: "not-one-of";
      readonly path: string;
      readonly value: string;
      readonly choices: readonly string[];
      readonly nearest: string | null;
    }
  | {
      readonly code: "number-out-of-range";
      readonly path: string;
      readonly value: string;
      readonly min: number | null;
      readonly max: number | null;
    }
  | { readonly code: "text-empty"; readonly path: string }
  /** How many problems are not told beyond those that are. */
  | { readonly code: "more-problems"; readonly path: string; readonly count: number }
  | { readonly code: "text-too-long"; readonly path: string; readonly characters: number; readonly limit: number }
  | { readonly code: "text-unprintable"; readonly path: string; readonly value: string }
  | {
      readonly code: "list-length";
      readonly path: string;
      readonly count: number;
      readonly least: number | null;
      readonly most: number | null;
    }
  | { readonly code: "duplicate-id"; readonly path: string; readonly id: string; readonly firstPath: string }
  | {
      readonly code: "unknown-material";
      readonly path: string;
      readonly id: string;
      readonly nearest: string | null;
      readonly known: readonly string[];
    }
  | { readonly code: "bias-refused"; readonly path: string }
  | { readonly code: "color-unreadable" | "layer-name-unusable"; readonly path: string; readonly value: string }
  | { readonly code: "layer-is-cut"; readonly path: string; readonly layer: string; readonly role: string }
  | { readonly code: "laser-has-no-blade"; readonly path: string; readonly key: string }
  | { readonly code: "knife-takes-no-kerf"; readonly path: string; readonly kerfMm: number }
  | { readonly code: "grip-eats-bed"; readonly path: string; readonly gripMm: number; readonly sideMm: number }
  | {
      /** Nothing useful is left of a sheet between its margins and its overlap. */
      readonly code: "paper-too-small";
      readonly path: string;
      readonly sideMm: number;
      readonly marginMm: number;
      readonly overlapMm: number;
    }
  | {
      readonly code: "outline-crosses-itself";
      readonly path: string;
      /** Index of the points the two crossing edges start from. */
      readonly edges: readonly [number, number];
      readonly xMm: number;
      readonly yMm: number;
    }
  | { readonly code: "outline-no-area"; readonly path: string; readonly points: number }
  | {
      readonly code: "outline-repeats-point";
      readonly path: string;
      readonly point: number;
      readonly xMm: number;
      readonly yMm: number;
    }
  | {
      readonly code: "selvedges-eat-width";
      readonly path: string;
      readonly widthMm: number;
      readonly selvedgeMm: number;
    }
  /** Layers face to face that cannot be put in twos. */
  | { readonly code: "layers-not-in-twos"; readonly path: string; readonly count: number }
  /** A roll with flaws that is to lie in layers. */
  | { readonly code: "flaws-under-layers"; readonly path: string }
  | { readonly code: "repeat-without-length" | "half-drop-one-way"; readonly path: string }
  | {
      /** What may lie apart by half a repeat is matched by nothing. */
      readonly code: "tolerance-eats-repeat";
      readonly path: string;
      readonly toleranceMm: number;
      readonly repeatMm: number;
    }
  | { readonly code: "radius-too-large"; readonly path: string; readonly radiusMm: number; readonly mostMm: number }
  | { readonly code: "bow-too-large"; readonly path: string; readonly bowMm: number; readonly mostMm: number }
  | {
      /** A piece asks for a direction that its material is not used in. */
      readonly code: "grain-conflict";
      readonly path: string;
      readonly wish: string;
      readonly materialId: string;
      readonly rule: string;
    }
  | { readonly code: "too-many-pieces"; readonly path: string; readonly count: number; readonly most: number };
