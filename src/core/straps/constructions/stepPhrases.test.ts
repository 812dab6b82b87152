import { expect, test } from "vitest";
import { of, type Wish, wish } from "../../../../tests/tools/makersStraps.ts";
import { buildStrap } from "../build/buildStrap.ts";
import type { ConstructionId, StrapWish } from "../wish/strapWish.ts";

const MATERIALS = [of("thin", "vinyl", 0.5), of("cloth", "woven", 0.5), of("foam", "padding", 5)];

function codesOf(id: ConstructionId, outer: string, more: Wish): readonly string[] {
  const size = id === "corded" ? { width: null, core: { cordDiameter: 10 } } : { width: 40 };
  const built = buildStrap(wish(id, outer, { ...size, ...more }), MATERIALS);
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  return built.value.steps.map(({ parts }) => parts.join("+"));
}

test("the order of work of each construction, by its steps", () => {
  const codes = (id: ConstructionId, outer: string, more: Wish = {}) => codesOf(id, outer, more);
  const kinds = { leather: "cut-leather", vinyl: "cut-sheet", cork: "cut-sheet", woven: "cut-pieces" } as const;
  for (const [kind, first] of Object.entries(kinds)) {
    const built = buildStrap(wish("fourfold", "m"), [of("m", kind as keyof typeof kinds, 0.5)]);
    expect(built.ok && built.value.steps[0]!.parts).toEqual([first]);
  }
  expect(codes("tube", "cloth")[0]).toBe("cut-tube");
  expect(codes("bonded", "thin")).toEqual([
    "cut-sheet",
    "bonded-bond",
    "bonded-stitch-layers+from-the-edge+tie-off",
    "bonded-finish",
  ]);
  expect(
    codes("bonded", "thin", { folds: { trim: 1, layers: 1 }, edgeFinish: "paint", stitch: { extraRows: 1 } }),
  ).toEqual([
    "cut-sheet",
    "bonded-stitch+from-the-edge-before-trimming+tie-off",
    "extra-rows",
    "bonded-trim",
    "edge-paint",
  ]);
  expect(codes("bonded", "cloth", { folds: { layers: 1 } })[1]).toBe("bonded-stitch+from-the-edge");
  expect(
    codes("fourfold", "cloth", { stitch: { extraRows: 2 }, ends: [{ style: "seam" }, { style: "raw" }] }),
  ).toEqual([
    "cut-pieces",
    "fourfold-centre",
    "fourfold-edges+how-pressed",
    "fourfold-halve",
    "fourfold-topstitch+from-the-edge",
    "extra-rows",
    "end-seam",
  ]);
  expect(codes("three-raw", "thin", { stitch: { extraRows: 1 } }).slice(-2)).toEqual([
    "three-topstitch",
    "extra-rows",
  ]);
  const padded = { materials: { outer: "thin", padding: "foam" } };
  expect(codes("three-hemmed", "thin")).not.toContain("hemmed-pad");
  expect(codes("three-hemmed", "thin", padded)).toContain("hemmed-pad");
  expect(codes("sewn-turned", "thin", { ...padded, folds: { reveal: 0.5 } })).toEqual([
    "cut-sheet",
    "turned-sew",
    "turned-turn-reveal",
    "turned-pad",
    "turned-topstitch-facing+from-the-edge+tie-off",
  ]);
  expect(codes("sewn-turned", "thin")).toEqual([
    "cut-sheet",
    "turned-sew",
    "turned-turn",
    "topstitch-both+from-the-edge+tie-off",
  ]);
  expect(codes("webbing-overlay", "cloth").slice(1)).toEqual([
    "overlay-edges+how-pressed",
    "overlay-lay+held-clipped",
    "overlay-topstitch+from-the-edge",
  ]);
  expect(codes("two-layer", "thin").slice(1, 3)).toEqual(["two-layer-edges+how-taped", "two-layer-lay+held-taped"]);
  expect(codes("webbing-sleeve", "thin", { folds: { layers: 1 } })[1]).toBe("cover-edges+how-taped");
  expect(codes("webbing-sleeve", "thin")[1]).toBe("sleeve-edges+how-taped");
  const corded = (ends?: StrapWish["ends"]) => codes("corded", "thin", { ends });
  expect(corded()).toContain("corded-ends");
  expect(corded([{ style: "raw" }, { style: "raw" }])).not.toContain("corded-ends");
});
