import { expect, test } from "vitest";
import { ringBox } from "../geometry/box.ts";
import { cutListOf } from "./cutList.ts";
import { readProject } from "./file/readProject.ts";

/** Lengths of the strips of a strap on an open roll with 1,000 mm between its selvedges. */
function strips(strap: object, more: object = {}, roll: object = {}): number[] {
  const stock = [{ kind: "roll", id: "roll", width: 1000, ...roll }];
  const own = { id: "strap", name: "Strap", construction: "fourfold", width: { cut: 100 }, count: 1 };
  const file = {
    ...{ laywright: 1, name: "Test" },
    materials: [{ id: "cloth", kind: "woven", thickness: 0.5, stock }],
    straps: [{ ...own, materials: { outer: "cloth" }, ...strap }],
    ...more,
  };
  const project = readProject(JSON.stringify(file));
  if (!project.ok) throw new Error(JSON.stringify(project.problems));
  const cut = cutListOf(project.value);
  if (!cut.ok) throw new Error(JSON.stringify(cut.problems));
  return cut.value.pieces
    .filter(({ partId }) => partId === "strap")
    .flatMap(({ outline, count, joined }) =>
      Array<number>(count).fill((joined ? 1 : -1) * ringBox(outline.outer).maxX),
    );
}

const allowed = { joins: { allowed: true, seam: "straight", seamAllowance: 10 } };

// Own arithmetic: 2,400 mm on cloth of 1,000 mm take three lengths; each of the two joins loses 2 × 10 mm.
test("a strap that may be joined is joined on an open roll that it alone would lengthen", () => {
  const parts = strips({ length: 2400, ...allowed });
  expect(parts.length).toBe(3);
  expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(2440, 6);
  expect(Math.max(...parts)).toBeLessThanOrEqual(1000);
  expect(strips({ length: 2400 })).toEqual([-2400]);
  expect(strips({ length: 2400, ...allowed, joins: { allowed: false } })).toEqual([-2400]);
});

test("it stays whole where it fits across, or where the roll is bought as long anyway", () => {
  expect(strips({ length: 990, ...allowed })).toEqual([-990]);
  // 3,000 mm of panel lengthwise is bought in any case.
  const shape = { kind: "rectangle", along: 3000, across: 500 };
  const panels = [{ id: "panel", material: "cloth", grain: "lengthwise", shape }];
  expect(strips({ length: 2400, ...allowed }, { panels })).toEqual([-2400]);
  expect(strips({ length: 2400, count: 40, ...allowed }).every((mm) => mm === -2400)).toBe(true);
});

test("an adjustable strap, which has no place for a join, stays whole", () => {
  const slider = { adjustment: "one-piece", hardware: [{ kind: "slider", innerWidth: 26, opening: 12 }] };
  expect(strips({ length: { cut: 2400 }, ...slider, ...allowed })).toEqual([-2400]);
});

test("lengths leave room for the margin and the wash", () => {
  const margin = strips({ length: 2400, ...allowed }, { margin: 30 });
  expect(Math.max(...margin)).toBeLessThanOrEqual(940);
  const shrinkage = { crosswise: "5 %", lengthwise: 0, when: "after-making" };
  const stock = [{ kind: "roll", id: "roll", width: 1000 }];
  const materials = [{ id: "cloth", kind: "woven", thickness: 0.5, shrinkage, stock }];
  const washed = strips({ length: 2400, grain: "crosswise", ...allowed }, { materials });
  expect(washed.length).toBe(3);
  expect(Math.max(...washed)).toBeLessThanOrEqual(1000);
});
