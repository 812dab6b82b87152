import { type Shrinkage, WASHED_WHEN } from "../../../core/materials/material.ts";
import { ChoiceBlank, ShareBlank } from "../../fields/blanks.tsx";
import { useTexts } from "../../texts/texts.ts";
import type { MaterialBlanks } from "./PriceWords.tsx";

/** What the wash takes, along and across. */
export function ShrinkageWords({ material, path, set }: MaterialBlanks) {
  const words = useTexts().cloth;
  const { shrinkage } = material;
  const share = (field: "lengthwise" | "crosswise", label: string) => (
    <ShareBlank
      label={label}
      path={path(`shrinkage.${field}`)}
      value={shrinkage[field]}
      max={0.3}
      onValue={(value, key) => set({ shrinkage: { ...shrinkage, [field]: value } }, label, key)}
    />
  );
  const shrinks = shrinkage.lengthwise > 0 || shrinkage.crosswise > 0;
  return (
    <p class="sentence">
      {words.shrinks(share("lengthwise", words.shrinksAlong), share("crosswise", words.shrinksAcross))}{" "}
      {shrinks &&
        words.washed(
          <ChoiceBlank<Shrinkage["when"]>
            label={words.washedLabel}
            path={path("shrinkage.when")}
            value={shrinkage.when}
            options={WASHED_WHEN.map((when) => [when, words.washedWhen[when]] as const)}
            onValue={(when) => set({ shrinkage: { ...shrinkage, when } }, words.washedLabel)}
          />,
        )}
    </p>
  );
}
