import { CONSTRUCTIONS } from "../../../core/straps/constructions/catalogue.ts";
import type { FoldChoices, StrapWish } from "../../../core/straps/wish/strapWish.ts";
import { OptionalLengthBlank } from "../../fields/blanks.tsx";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import type { StrapBlanks } from "./StrapCore.tsx";

/** Sizes of folds that a maker may set, in the order in which a strap is made; thicknesses are spoken of in mm. */
const SIZES = ["seamAllowance", "hem", "turn", "margin", "reveal", "setback", "trim", "turnedThickness"] as const;

const RANGE = { minMm: 0, maxMm: 100 };
const THICKNESS = { minMm: 0.1, maxMm: 50 };

/** Whether this strap uses a size; only what is not woven can be skived. */
function uses(strap: StrapWish, size: keyof FoldChoices, isWoven: boolean): boolean {
  if (strap.folds?.[size] !== undefined) return true;
  if (size === "turnedThickness" && isWoven) return false;
  return CONSTRUCTIONS[strap.construction].heeds(strap.folds ?? {}).includes(size);
}

/** Seam allowance, hem, reveal and the like: empty is what is usual for the construction. */
export function StrapFolds({ strap, path, set }: StrapBlanks) {
  const words = useTexts().bag.strap;
  const outer = useProject().materials.find(({ id }) => id === strap.materials.outer);
  const sizes = SIZES.filter((size) => uses(strap, size, outer?.kind === "woven"));
  if (sizes.length === 0) return null;
  return (
    <p class="sentence">
      {sizes.map((size) => {
        const label = words.foldSizes[size];
        return (
          <OptionalLengthBlank
            key={size}
            labelled
            label={label}
            path={path(`folds.${size}`)}
            value={strap.folds?.[size] ?? null}
            empty={size === "turnedThickness" ? words.asThick : words.asUsual}
            fine={size === "turnedThickness"}
            range={size === "turnedThickness" ? THICKNESS : RANGE}
            onValue={(mm, key) => set({ folds: foldsWith(strap, size, mm) }, label, key)}
          />
        );
      })}
    </p>
  );
}

/** The folds with one size set or left to the construction; nothing where nothing is said any more. */
function foldsWith({ folds = {} }: StrapWish, size: keyof FoldChoices, mm: number | null): StrapWish["folds"] {
  const { [size]: _, ...rest } = folds;
  const next = mm === null ? rest : { ...rest, [size]: mm };
  return Object.keys(next).length === 0 ? undefined : next;
}
