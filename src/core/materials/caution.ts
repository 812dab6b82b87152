/**
 * A stack under the needle from here on is thick for a home machine, mm: the more careful of two usual values, 3 and
 * 4 mm. Common practice, no source.
 */
export const THICK_STACK = 3;

/**
 * Every caution there is, what hurts most first: the order in which they are shown. Common practice, no source, but
 * for hydrogen chloride from heated PVC: Energy & Fuels 17(4), 896–900 (2003).
 */
const CAUTION_CODES = [
  "laser-pvc",
  "laser-fumes",
  "cutting-machine",
  "rotary-cutter",
  "sharp-blades",
  "thick-stack",
  "hot-iron",
  "iron-melts",
  "solvents",
  "webbing-ends",
  "not-load-rated",
  "small-children",
  "tape-gums",
  "raw-edge-frays",
  "cork-cracks",
  "slow-hem",
  "tube-ends",
  "tab-hump",
  "local-rules",
] as const;

export type CautionCode = (typeof CAUTION_CODES)[number];

/** Cautions that need no facts. */
export type PlainCautionCode = Exclude<CautionCode, "laser-pvc">;

/** A caution as data; the sentences are in one table for each language. */
export type Caution =
  | { readonly [C in PlainCautionCode]: { readonly code: C } }[PlainCautionCode]
  /** Names of the materials that must not be cut with a laser; none when the maker has not named hers. */
  | { readonly code: "laser-pvc"; readonly materials: readonly string[] };

/** One sentence for each caution; a missing one does not compile. */
export type CautionTable = {
  readonly [C in CautionCode]: (caution: Extract<Caution, { readonly code: C }>) => string;
};

/** Each caution once, those that hurt most first; materials named in several are named together. */
export function mergedCautions(cautions: readonly Caution[]): readonly Caution[] {
  return CAUTION_CODES.flatMap((code): Caution[] => {
    const same = cautions.filter((caution) => caution.code === code);
    if (same.length === 0 || code !== "laser-pvc") return same.slice(0, 1);
    const materials = same.flatMap((caution) => (caution.code === "laser-pvc" ? caution.materials : []));
    return [{ code, materials: [...new Set(materials)] }];
  });
}

/** A caution in a sentence. */
export function cautionText(caution: Caution, table: CautionTable): string {
  // The table is complete by its type: the row for a code takes that code's caution.
  const row = table[caution.code] as (of: Caution) => string;
  return row(caution);
}
