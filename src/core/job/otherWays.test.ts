import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { cutListOf } from "../project/cutList.ts";
import { readProject } from "../project/file/readProject.ts";
import { writeProject } from "../project/file/writeProject.ts";
import { layProblemsOf } from "./layProblems.ts";
import { inOtherWay, otherWays } from "./otherWays.ts";

const read = readProject(readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8"));
if (!read.ok) throw new Error("the demo cannot be read");
const demo = read.value;

test("every other way is a project that differs in that one thing and can be kept when its grain leaves pieces a way to lie", () => {
  for (const material of demo.materials) {
    for (const way of otherWays(demo, material.id)) {
      const other = inOtherWay(demo, material.id, way);
      const [changed, rest] =
        way.kind === "construction" ? [other.straps, other.materials] : [other.materials, other.straps];
      expect(changed).not.toEqual(way.kind === "construction" ? demo.straps : demo.materials);
      expect(rest).toBe(way.kind === "construction" ? demo.materials : demo.straps);
      if (way.kind !== "grain") expect(readProject(writeProject(other)).ok).toBe(true);
    }
  }
});

test("another construction is offered only when it takes less of the cloth", () => {
  const area = (project: typeof demo, id: string) => {
    const list = cutListOf(project);
    if (!list.ok) throw new Error("no cut list");
    const strap = list.value.straps.find(({ wish }) => wish.id === id)!;
    return strap.pieces
      .filter(({ materialId }) => materialId === strap.wish.materials.outer)
      .reduce((sum, { count, outline }) => sum + count * Math.abs(ringArea(outline.outer)), 0);
  };
  const ways = demo.materials.flatMap(({ id }) => otherWays(demo, id).map((way) => ({ id, way })));
  const constructions = ways.flatMap(({ id, way }) => (way.kind === "construction" ? [{ id, way }] : []));
  expect(constructions.length).toBeGreaterThan(0);
  for (const { id, way } of constructions) {
    const { kind } = demo.materials.find((material) => material.id === id)!;
    if (kind === "woven") expect(["three-raw", "bonded"]).not.toContain(way.construction);
    expect(area(inOtherWay(demo, id, way), way.strapId)).toBeLessThan(area(demo, way.strapId));
  }
});

test("a leftover kept back is left out of the lay and comes back; a leftover job can be bought from a roll", () => {
  const stocksOf = (project: typeof demo, materialId: string) => {
    const list = cutListOf(project);
    if (!list.ok) throw new Error("no cut list");
    return layProblemsOf(project, list.value).find((each) => each.materialId === materialId)!.stocks;
  };
  const ids = (project: typeof demo, materialId: string) => stocksOf(project, materialId).map(({ id }) => id);
  expect(ids(demo, "sailcloth")).toEqual(["sailcloth leftover", "sailcloth roll"]);
  const bought = inOtherWay(demo, "sailcloth", { kind: "roll" });
  expect(ids(bought, "sailcloth")).toEqual(["sailcloth roll"]);
  const use = { kind: "leftover", stockId: "sailcloth leftover", use: true } as const;
  expect(otherWays(bought, "sailcloth")).toContainEqual(use);
  expect(stocksOf(inOtherWay(bought, "sailcloth", use), "sailcloth")).toEqual(stocksOf(demo, "sailcloth"));

  const noRoll = (project: typeof demo) => ({
    ...project,
    materials: project.materials.map((material) => ({
      ...material,
      stock: material.stock.filter(({ kind }) => kind !== "roll"),
    })),
  });
  expect(otherWays(noRoll(demo), "sailcloth")).toContainEqual({ kind: "roll" });
  expect(stocksOf(inOtherWay(noRoll(demo), "sailcloth", { kind: "roll" }), "sailcloth")).toMatchObject([
    { kind: "roll", length: null },
  ]);
  const hide = demo.materials.find(({ kind }) => kind === "leather")!;
  expect(otherWays(noRoll(demo), hide.id)).not.toContainEqual({ kind: "roll" });
});

/** Shoelace, in its plain form. */
function ringArea(ring: Float64Array): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i += 2) {
    const j = (i + 2) % ring.length;
    twice += ring[i]! * ring[j + 1]! - ring[j]! * ring[i + 1]!;
  }
  return twice / 2;
}
