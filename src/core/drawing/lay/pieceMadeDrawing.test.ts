import { expect, test } from "vitest";
import { linesOf, runTogether, standOut, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { fromPiece } from "../../job/shopping/fromPiece.ts";
import { inOneGo } from "../../lay/search/breath.ts";
import { readProject } from "../../project/file/readProject.ts";
import { pieceMadeDrawing } from "./pieceMadeDrawing.ts";

const read = readProject(
  JSON.stringify({
    ...{ laywright: 1, name: "Quay", unit: "mm", bags: 1, gap: 0, margin: 0 },
    materials: [
      { id: "canvas", kind: "woven", thickness: 0.5, spread: { layers: 4 } },
      { id: "lining", kind: "woven", thickness: 0.3 },
    ].map((one) => ({ ...one, stock: [{ kind: "roll", id: `roll-${one.id}`, width: 2000 }] })),
    straps: [
      {
        ...{ id: "s", name: "Strap", construction: "fourfold", width: { cut: 100 }, length: { cut: 400 } },
        materials: { outer: "canvas" },
      },
    ],
    panels: [
      { id: "p", name: "Body", material: "canvas", shape: { kind: "rectangle", along: 300, across: 400 } },
      { id: "q", name: "Pocket", material: "lining", shape: { kind: "rectangle", along: 100, across: 100 } },
    ],
  }),
);
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const project = read.value;
const material = project.materials[0]!;
const search = { mode: "free", evaluations: 60_000, seed: 1 } as const;
const made = inOneGo(fromPiece(project, material, { length: 400, width: 700 }, search));

// By hand: the bag's body of 300 × 400 and its strap of 100 × 400 fill 400 × 400 of the piece; three more straps
// lie beside them.
test("what a piece makes is drawn on it, every copy by its name alone, whatever is laid beside the bags", () => {
  const laid = made.straps[0]!.besides.laid!;
  const drawing = pieceMadeDrawing(project, material, laid, "en");
  const words = wordsOf(drawing);
  const names = words.filter(({ bold }) => bold).map(({ text }) => text);
  expect(names.sort()).toEqual(["Body", "Strap", "Strap", "Strap", "Strap"]);
  expect(runTogether(words)).toEqual([]);
  expect(standOut(words, { minX: 0, minY: 0, maxX: 400, maxY: 700 })).toEqual([]);
  const boxes = linesOf(drawing.items, "cut").map((line) => {
    const at = line.split(/,? /u).map(Number);
    const [xs, ys] = [0, 1].map((k) => at.filter((_, i) => i % 2 === k)) as [number[], number[]];
    return [Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)].sort((a, b) => a - b).join(" × ");
  });
  expect(boxes.sort()).toEqual(["100 × 400", "100 × 400", "100 × 400", "100 × 400", "300 × 400"]);
  // Folds of straps are drawn with them, and the grain of this cloth: it lies either way along.
  expect(linesOf(drawing.items, "fold").length).toBeGreaterThan(0);
  expect(linesOf(drawing.items, "grain").length).toBeGreaterThan(0);
  const free = pieceMadeDrawing(project, { ...material, grain: "free", oneWay: false }, laid, "en");
  expect(linesOf(free.items, "grain")).toEqual([]);
});
