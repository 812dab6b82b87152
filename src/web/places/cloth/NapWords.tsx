import { ONE_WAYS, type OneWay } from "../../../core/materials/material.ts";
import { ChoiceBlank, OptionalLengthBlank } from "../../fields/blanks.tsx";
import { useTexts } from "../../texts/texts.ts";
import type { MaterialBlanks } from "./PriceWords.tsx";

/** Shortest and longest stretch of roll for one bag, mm. */
const BAND = { minMm: 10, maxMm: 100_000 };

/** The way that all pieces lie on a nap or print, and the stretch of roll that the parts of one bag come from. */
export function NapWords({ material, path, set }: MaterialBlanks) {
  const words = useTexts().nap;
  return (
    <p class="sentence">
      {words.waySentence(
        <ChoiceBlank<OneWay | "both">
          label={words.wayLabel}
          path={path("oneWay")}
          value={material.oneWay === false ? "both" : material.oneWay}
          options={(["both", ...ONE_WAYS] as const).map((way) => [way, words.ways[way]] as const)}
          onValue={(way) => set({ oneWay: way === "both" ? false : way }, words.wayLabel)}
        />,
      )}{" "}
      {words.bandSentence(
        <OptionalLengthBlank
          label={words.bandLabel}
          path={path("shadeBand")}
          value={material.shadeBand ?? null}
          empty={words.bandAnywhere}
          range={BAND}
          onValue={(band, key) => set({ shadeBand: band ?? undefined }, words.bandLabel, key)}
        />,
      )}
    </p>
  );
}
