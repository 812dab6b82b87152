import { expect, test } from "vitest";
import { sampleMaterial } from "../../../tests/tools/sampleMaterial.ts";
import { USUAL_OUTPUT } from "../project/outputSettings.ts";
import type { Project } from "../project/project.ts";
import { PANEL_WORDS } from "../words/words.ts";
import { usualBag } from "./bagWish.ts";
import { startBag } from "./startBag.ts";

const bare: Project = {
  ...{ name: "Made up", unit: "mm", bags: 1, currency: "EUR", gap: 0, margin: 0 },
  ...{ materials: [], straps: [], panels: [], pins: [] },
  output: { paper: "A4", ...USUAL_OUTPUT, lengths: "mm" },
};
const wish = { ...usualBag("boxed", false), straps: "handles" as const };

test("a project's own cloth stays, and the bag is made of it", () => {
  const own = sampleMaterial("quay", { thickness: 0.9 });
  const padding = sampleMaterial("foam", { kind: "padding" });
  const bag = startBag({ ...bare, materials: [padding, own] }, wish, PANEL_WORDS.en);
  expect(bag.materials.slice(0, 2)).toEqual([padding, own]);
  expect(bag.panels.find(({ id }) => id === "front")?.materialId).toBe("quay");
  expect(bag.straps[0]?.materials["outer"]).toBe("quay");
  expect(bag.materials.map(({ id }) => id)).not.toContain("outer");
});

test("without a cloth it gets a usual one, and keeps it when the bag is made anew", () => {
  const bag = startBag(bare, wish, PANEL_WORDS.en);
  const again = startBag(bag, { ...wish, body: "flat" }, PANEL_WORDS.en);
  expect(again.materials).toEqual(bag.materials);
  expect(new Set(again.panels.map(({ materialId }) => materialId)).size).toBe(2);
});
