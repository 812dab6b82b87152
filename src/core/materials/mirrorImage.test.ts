import { expect, test } from "vitest";
import { straightContour } from "../geometry/contourShapes.ts";
import { solid } from "../geometry/ring.ts";
import type { CutPiece } from "./cutPiece.ts";
import { mirrorImage } from "./mirrorImage.ts";

// A right triangle whose blunt end is where its arrow starts: its partner has the blunt end there too.
test("the mirror image keeps the arrow's way: both sides of a pair have their pile the same way up", () => {
  const points = [0, 0, 100, 0, 0, 40];
  const side: CutPiece = {
    ...{ id: "side", name: "Side", partId: "side", materialId: "velvet", kind: "panel" },
    contour: straightContour(points, true),
    outline: solid(Float64Array.from(points)),
    lines: [],
    ...{ count: 1, mirroredCount: 1, grain: "lengthwise" },
  };
  const image = mirrorImage(side)!;
  const corners = Array.from({ length: 3 }, (_, i) => [...image.outline.outer.slice(2 * i, 2 * i + 2)].join(" "));
  expect(corners.sort()).toEqual(["0 0", "0 40", "100 40"]);
});
