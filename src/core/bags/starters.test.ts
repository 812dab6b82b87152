import { expect, test } from "vitest";
import { seamLengths } from "../panels/seams.ts";
import { sizePanels } from "../panels/sizePanels.ts";
import { cutListOf } from "../project/cutList.ts";
import { USUAL_OUTPUT } from "../project/outputSettings.ts";
import type { Project } from "../project/project.ts";
import { PANEL_WORDS } from "../words/words.ts";
import { startBag } from "./startBag.ts";
import { STARTERS, starterBag } from "./starters.ts";

const bare: Project = {
  ...{ name: "Made up", unit: "mm", bags: 1, currency: "EUR", gap: 0, margin: 0 },
  ...{ materials: [], straps: [], panels: [], pins: [] },
  output: { paper: "A4", ...USUAL_OUTPUT, lengths: "mm" },
};

test.each(STARTERS.flatMap((starter) => [[starter, false] as const, [starter, true] as const]))(
  "%s (inches %s) gives outside, lining, interfacing, straps, and every seam meets",
  (starter, inches) => {
    const bag = startBag(bare, starterBag(starter, inches), PANEL_WORDS.en);
    const list = cutListOf(bag);
    if (!list.ok) throw new Error(JSON.stringify(list.problems));
    const cloths = new Set(list.value.pieces.map(({ materialId }) => materialId));
    expect(cloths.size).toBe(3);
    expect(bag.straps).toHaveLength(1);
    const sized = sizePanels(bag.panels, bag.measures);
    if (!sized.ok) throw new Error(JSON.stringify(sized.problems));
    const seams = seamLengths(sized.value, bag.seams ?? []);
    if (!seams.ok) throw new Error(JSON.stringify(seams.problems));
    expect(seams.value.length).toBeGreaterThan(2);
    for (const { over } of seams.value) expect(Math.abs(over)).toBeLessThan(0.01);
  },
);
