import { expect, test } from "vitest";
import { flattenContour } from "../geometry/contourArcs.ts";
import { signedArea } from "../geometry/ring.ts";
import { cutListOf } from "./cutList.ts";
import { edited, withPanel } from "./edits.ts";
import { readProject } from "./file/readProject.ts";
import { writeProject } from "./file/writeProject.ts";
import type { Project } from "./project.ts";

function projectWith(points: unknown, more: object = {}): Project {
  const read = readProject(
    JSON.stringify({
      laywright: 1,
      name: "Test",
      materials: [
        { id: "cloth", kind: "woven", thickness: 0.5, stock: [{ kind: "roll", id: "roll", width: 1500 }] },
      ],
      panels: [{ id: "panel", material: "cloth", shape: { kind: "outline", points }, ...more }],
    }),
  );
  if (!read.ok) throw new Error("the project cannot be read");
  return read.value;
}

/** The project with corner 2 of its panel at (x, y). */
function cornerMoved(project: Project, x: number, y: number): Project {
  const { shape } = project.panels[0]!;
  if (shape.kind !== "outline") throw new Error("the panel is not drawn");
  const vertices = shape.contour.vertices.slice();
  vertices[6] = x;
  vertices[7] = y;
  const result = edited(project, (before) =>
    withPanel(before, "panel", { shape: { ...shape, contour: { ...shape.contour, vertices } } }),
  );
  if (!result.ok) throw new Error("the edit was refused");
  return result.value;
}

test("a corner moved across its triangle keeps the seam allowance outside, and the fold on its edge", () => {
  const triangle = projectWith(
    [
      [0, 0],
      [100, 0],
      [0, 80],
    ],
    { seamAllowance: 10, fold: 0 },
  );
  const moved = cornerMoved(triangle, 0, -80);
  const panel = moved.panels[0]!;
  if (panel.shape.kind !== "outline") throw new Error("the panel is not drawn");
  expect(signedArea(flattenContour(panel.shape.contour))).toBeCloseTo(4000, 6);
  const list = cutListOf(moved);
  if (!list.ok) throw new Error("there is no cut list");
  // Folded out, a triangle of 100 mm on either side of the fold; the allowance makes it larger, never smaller.
  const { outline } = list.value.pieces[0]!;
  expect(signedArea(outline.outer)).toBeGreaterThan(2 * 4000);
  const again = readProject(writeProject(moved));
  expect(again).toEqual({ ok: true, value: moved });
});

test("arcs that bow out further than the corners reach are written as they were read", () => {
  // Corners run clockwise, the arcs round them the other way.
  const crescent = projectWith([
    [0, 0],
    [50, 4],
    [100, 0, -45],
  ]);
  const text = writeProject(crescent);
  const again = readProject(text);
  expect(again.ok && writeProject(again.value)).toBe(text);
  expect(again.ok && again.value.panels).toEqual(crescent.panels);
});
