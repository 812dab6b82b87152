import { laserRisk, mayBePlastic } from "../../../core/materials/laser.ts";
import { BACKINGS, COATINGS, type Material, PLAIN_REPEAT, POLYMERS } from "../../../core/materials/material.ts";
import { ChoiceBlank, OptionalLengthBlank } from "../../fields/blanks.tsx";
import { Term } from "../../parts/Term.tsx";
import { useTexts } from "../../texts/texts.ts";
import type { MaterialBlanks } from "./PriceWords.tsx";
import { ShrinkageWords } from "./ShrinkageWords.tsx";
import { SpreadWords } from "./SpreadWords.tsx";

/** Coating, repeat, layers, distances and shrinkage: what a material also may say. */
export function MaterialMore({ material, path, set }: MaterialBlanks) {
  const texts = useTexts();
  const words = texts.cloth;
  const isCoated = material.kind === "vinyl" || material.coating !== "none";
  return (
    <details class="more">
      <summary>{words.more}</summary>
      <p class="sentence">
        {isCoated &&
          words.coatedSentence(
            <ChoiceBlank<Material["coating"]>
              label={words.coatingLabel}
              path={path("coating")}
              value={material.coating}
              options={COATINGS.map((id) => [id, words.coatings[id]] as const)}
              onValue={(coating) => set({ coating }, words.coatingLabel)}
            />,
            <ChoiceBlank<Material["backing"]>
              label={words.backingLabel}
              path={path("backing")}
              value={material.backing}
              options={BACKINGS.map((id) => [id, words.backings[id]] as const)}
              onValue={(backing) => set({ backing }, words.backingLabel)}
            />,
          )}{" "}
        {mayBePlastic(material.kind) &&
          words.polymerSentence(
            <ChoiceBlank<Material["polymer"]>
              label={words.polymerLabel}
              path={path("polymer")}
              value={material.polymer}
              options={POLYMERS.map((id) => [id, words.polymers[id]] as const)}
              onValue={(polymer) => set({ polymer }, words.polymerLabel)}
            />,
          )}{" "}
        {words.repeatSentence(
          <Term id="repeat" />,
          <OptionalLengthBlank
            label={words.repeatLabel}
            path={path("repeat")}
            value={material.repeat?.along ?? null}
            empty={words.noRepeat}
            range={{ minMm: 1, maxMm: 3000 }}
            onValue={(along, key) => set({ repeat: withAlong(material.repeat, along) }, words.repeatLabel, key)}
          />,
        )}{" "}
        <SpreadWords material={material} path={path} set={set} />{" "}
        {words.distances(
          <OptionalLengthBlank
            label={words.gapLabel}
            path={path("gap")}
            value={material.gap}
            empty={words.asProject}
            range={{ minMm: 0, maxMm: 100 }}
            onValue={(gap, key) => set({ gap }, words.gapLabel, key)}
          />,
          <OptionalLengthBlank
            label={words.marginLabel}
            path={path("margin")}
            value={material.margin}
            empty={words.asProject}
            range={{ minMm: 0, maxMm: 200 }}
            onValue={(margin, key) => set({ margin }, words.marginLabel, key)}
          />,
        )}
      </p>
      {laserRisk(material) !== null && <p class="caution">{words.vinylCaution}</p>}
      <ShrinkageWords material={material} path={path} set={set} />
    </details>
  );
}

/** The repeat with another length along the roll; none when nothing is left of it. */
function withAlong(repeat: Material["repeat"], along: number | null): Material["repeat"] {
  if (along === null && (repeat?.across ?? null) === null) return null;
  return { ...(repeat ?? PLAIN_REPEAT), along };
}
