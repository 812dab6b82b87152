import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { inOtherWay, type OtherWay } from "../../core/lay/choices/otherWays.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Project } from "../../core/project/project.ts";
import type { WeighedWay } from "./protocol.ts";
import { weigh } from "./weigh.ts";

function demo(): Project {
  const read = readProject(readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8"));
  if (!read.ok) throw new Error("the demo cannot be read");
  // Key straps alone: few pieces, and the leftover holds all of them.
  return { ...read.value, straps: read.value.straps.filter(({ id }) => id === "key strap"), panels: [] };
}

function weighed(project: Project, wanted: (way: OtherWay) => boolean): WeighedWay | undefined {
  const weighing = weigh({ kind: "ways", project, materialId: "sailcloth" });
  for (let step = weighing.next(); ; step = weighing.next())
    if (step.done) return (step.value as readonly WeighedWay[]).find(({ way }) => wanted(way));
}

test("a leftover is weighed in metres of roll, kept back and used again", () => {
  const roll = weighed(demo(), ({ kind }) => kind === "roll");
  // Three strips of 250 by 78.3 mm with their gaps and margins side by side, from the demo's own sums.
  expect(roll?.length).toBeGreaterThan(78);
  expect(roll?.length).toBeLessThan(270);
  const bought = inOtherWay(demo(), "sailcloth", { kind: "roll" });
  expect(weighed(bought, ({ kind }) => kind === "leftover")).toEqual({
    way: { kind: "leftover", stockId: "sailcloth leftover", use: true },
    length: 0,
  });
});
