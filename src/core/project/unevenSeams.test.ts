import { expect, test } from "vitest";
import { PANEL_WORDS } from "../words/words.ts";
import { readProject } from "./file/readProject.ts";
import { measuredSeams, unevenSeams } from "./unevenSeams.ts";

test("both sides of a seam in words and measured; what is meant to be eased in is no difference", () => {
  const read = readProject(
    JSON.stringify({
      laywright: 1,
      name: "Test",
      materials: [{ id: "cloth", kind: "woven", thickness: 0.5 }],
      panels: [
        { id: "front", name: "Front", material: "cloth", shape: { kind: "rectangle", along: 300, across: 200 } },
        { id: "gusset", name: "Gusset", material: "cloth", shape: { kind: "rectangle", along: 297, across: 80 } },
      ],
      seams: [0, 3].map((ease) => ({
        first: [{ panel: "front", edge: "bottom" }],
        second: [{ panel: "gusset", edge: "top" }],
        ease,
      })),
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const sides = { first: "Front (bottom)", second: "Gusset (top)" };
  expect(measuredSeams(read.value, PANEL_WORDS.en)).toEqual([
    { ...sides, firstMm: 300, secondMm: 297, overMm: 3, isEven: false },
    { ...sides, firstMm: 300, secondMm: 297, overMm: 0, isEven: true },
  ]);
  expect(unevenSeams(read.value, PANEL_WORDS.en)).toEqual([{ ...sides, overMm: 3 }]);
});
