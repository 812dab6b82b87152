import { LEAST_LAYERS, MOST_LAYERS, type Spread } from "../../../core/materials/spread.ts";
import { ChoiceBlank, CountBlank } from "../../fields/blanks.tsx";
import { useTexts } from "../../texts/texts.ts";
import type { MaterialBlanks } from "./PriceWords.tsx";

const WAYS = ["single", "folded", "up", "together"] as const;
type Way = (typeof WAYS)[number];

/** How a roll lies when several layers are cut at once. A roll with flaws is not laid in layers. */
export function SpreadWords({ material, path, set }: MaterialBlanks) {
  const words = useTexts().cloth.spread;
  const rolls = material.stock.filter((stock) => stock.kind === "roll");
  if (rolls.length === 0) return null;
  const spread = material.spread ?? null;
  const way: Way = spread === null ? "single" : spread.kind === "folded" ? "folded" : spread.faces;
  const layers = spread?.kind === "layers" ? spread.layers : LEAST_LAYERS;
  const isFlawed = rolls.some(({ flaws }) => flaws.length > 0);
  const choice = (
    <ChoiceBlank<Way>
      label={words.label}
      path={path("spread")}
      value={way}
      options={WAYS.filter((id) => id === way || !isFlawed || id === "single" || id === "folded").map(
        (id) => [id, words.ways[id]] as const,
      )}
      onValue={(next) => set({ spread: spreadOfWay(next, layers) }, words.label)}
    />
  );
  if (way !== "up" && way !== "together") return words.sentence(choice);
  return words.layersSentence(
    choice,
    <CountBlank
      label={words.layersLabel}
      path={path("spread.layers")}
      value={layers}
      min={LEAST_LAYERS}
      max={MOST_LAYERS}
      onValue={(count, key) => set({ spread: spreadOfWay(way, count) }, words.layersLabel, key)}
    />,
  );
}

/** Face to face, layers come in twos: an odd number is one more. */
function spreadOfWay(way: Way, layers: number): Spread | null {
  if (way === "single") return null;
  if (way === "folded") return { kind: "folded" };
  return { kind: "layers", layers: way === "together" ? layers + (layers % 2) : layers, faces: way };
}
