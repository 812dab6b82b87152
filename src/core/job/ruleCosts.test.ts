import { expect, test } from "vitest";
import { inOneGo } from "../lay/search/breath.ts";
import { readProject } from "../project/file/readProject.ts";
import type { Project } from "../project/project.ts";
import { type RuleCost, ruleCosts } from "./ruleCosts.ts";

const panel = (id: string, along: number, across: number) => ({
  ...{ id, name: id, material: "v", count: 2, seamAllowance: 0 },
  shape: { kind: "rectangle", along, across },
});

/** Made up: per bag two fronts of 400 × 500 and two bases of 200 × 500 on a roll that takes two of them side by side. */
function projectOf(material: object, more: object = {}): Project {
  const read = readProject(
    JSON.stringify({
      ...{ laywright: 1, name: "Velvet bags", bags: 2, gap: 0, margin: 0 },
      materials: [
        {
          ...{ id: "v", kind: "woven", thickness: 0.8, grain: "lengthwise", ...material },
          stock: [{ kind: "roll", id: "r", width: 1000, selvedge: 0, squaring: 0 }],
        },
      ],
      panels: [panel("front", 400, 500), panel("base", 200, 500)],
      ...more,
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const costs = (project: Project): readonly RuleCost[] => inOneGo(ruleCosts(project, "v"));

// By hand: one bag lies within 400 + 200 mm, so a band of 600 costs nothing. Of bags with one of each, both fronts and
// both bases lie side by side over 600 mm; within 400 mm each bag's front lies beside its base, over 800 mm.
test("a band that the plan keeps to anyway costs nothing, and one that parts the pieces costs what it parts", () => {
  expect(costs(projectOf({ shadeBand: 600 }))).toEqual([{ rule: { kind: "band" }, extraLength: 0 }]);
  const single = projectOf(
    { shadeBand: 400 },
    {
      panels: [
        { ...panel("front", 400, 500), count: 1 },
        { ...panel("base", 200, 500), count: 1 },
      ],
    },
  );
  expect(costs(single)).toEqual([{ rule: { kind: "band" }, extraLength: 200 }]);
}, 240_000);

test("one way costs what pieces that would nest head to foot lose; each rule is measured with the others kept", () => {
  // Right triangles of 400 × 500, two of which make a box where one may be turned: 4 take 800, else more.
  const wedge = {
    ...panel("front", 0, 0),
    shape: {
      kind: "outline",
      points: [
        [0, 0],
        [400, 0],
        [0, 500],
      ],
    },
  };
  const project = projectOf({ oneWay: "up", shadeBand: 2000 }, { panels: [{ ...wedge, count: 4 }], bags: 2 });
  const [oneWay, band] = costs(project);
  expect(oneWay!.rule).toEqual({ kind: "one-way" });
  expect(oneWay!.extraLength).toBeGreaterThan(100);
  expect(band).toEqual({ rule: { kind: "band" }, extraLength: expect.closeTo(0, 0) });
}, 240_000);

test("where bands are not kept nothing is said of their cost, and many matches do not crowd out the other rules", () => {
  const spread = { layers: 2, faces: "up" };
  expect(costs(projectOf({ shadeBand: 600, spread }, { bags: 3 }))).toEqual([]);
  expect(costs(projectOf({ shadeBand: 600, spread }))).toEqual([{ rule: { kind: "band" }, extraLength: 0 }]);
  const names = Array.from({ length: 12 }, (_, i) => `p${i}`);
  const crowd = projectOf(
    { oneWay: "up", shadeBand: 9000, repeat: 50 },
    {
      panels: names.map((id) => panel(id, 60, 100)),
      centred: names.map((part) => ({ part, on: "same-place" })),
      bags: 1,
    },
  );
  const kinds = costs(crowd).map(({ rule }) => rule.kind);
  expect(kinds.slice(-2)).toEqual(["one-way", "band"]);
  expect(kinds.filter((kind) => kind === "centred")).toHaveLength(8);
}, 240_000);

test("what the rules cost is nothing to say where a piece finds no place", () => {
  const [cost] = costs(
    projectOf({ oneWay: "up" }, { panels: [panel("front", 400, 500), panel("huge", 300, 1200)] }),
  );
  expect(cost).toEqual({ rule: { kind: "one-way" }, extraLength: null });
}, 240_000);
