import { expect, test } from "vitest";
import { rectangleContour, segmentContour, straightContour } from "../../geometry/contourShapes.ts";
import { signedArea, solid } from "../../geometry/ring.ts";
import type { CutPiece } from "../../materials/cutPiece.ts";
import { pieceArt } from "./pieceArt.ts";

const triangle = [0, 0, 100, 0, 0, 50];
const piece: CutPiece = {
  id: "gusset",
  name: "Gusset",
  partId: "gusset",
  materialId: "canvas",
  kind: "panel",
  contour: straightContour(triangle, true),
  outline: solid(Float64Array.from(triangle)),
  lines: [{ role: "fold", contour: segmentContour(10, 0, 10, 45) }],
  count: 2,
  mirroredCount: 1,
  grain: "lengthwise",
};

test("mirror images are drawn as pieces of their own, back in the first quadrant", () => {
  const art = pieceArt([piece], "cm");
  expect([...art.keys()]).toEqual(["gusset", "gusset~mirrored"]);
  const mirrored = art.get("gusset~mirrored")!;
  expect([mirrored.name, mirrored.count, mirrored.detail]).toEqual(["Gusset, mirrored", 1, "10 cm × 5 cm"]);
  expect(signedArea(mirrored.outline.outer)).toBe(2500);
  // Across its grain arrow: what stood x along it still does.
  expect([...mirrored.lines[0]!.contour.vertices]).toEqual([10, 50, -0, 10, 5, -0]);
  const corners = mirrored.contour.vertices.filter((_, i) => i % 3 < 2);
  expect([0, 2, 4].map((i) => `${corners[i]} ${corners[i + 1]}`).sort()).toEqual(["0 0", "0 50", "100 50"]);
});

test("a piece without mirror images is one piece", () => {
  const plain = { ...piece, contour: rectangleContour(0, 0, 30, 20), mirroredCount: 0 };
  expect([...pieceArt([plain], "mm").keys()]).toEqual(["gusset"]);
});
