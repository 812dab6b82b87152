import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { RegionJob, RegionPlan } from "../problem/region.ts";
import type { Engine } from "./engine.ts";
import { raceEngines } from "./raceEngines.ts";

const job: RegionJob = {
  region: { width: 100, length: 100, outline: null, flaws: [] },
  pieces: [
    {
      id: "tab",
      outline: solid(rectangleRing(0, 0, 10, 10)),
      count: 1,
      orientations: [{ turnDeg: 0, mirrored: false }],
      freeTurn: false,
    },
  ],
  gap: 0,
  margin: 0,
  pinned: [],
  goal: "most",
};
const none: RegionPlan = { placements: [], left: [1], length: 0 };

/** Spends `spends` without a plan, then returns one that holds nothing. */
const emptyHanded = (spends: number, isStart: boolean): Engine => ({
  id: isStart ? "start" : "search",
  isStart,
  accepts: () => true,
  *search() {
    yield { plan: null, bound: null, evaluations: spends };
    return none;
  },
});

test("a race whose budget is spent before there is a plan still returns what its engines have", () => {
  const race = raceEngines([emptyHanded(10, true), emptyHanded(1000, false)], job, { evaluations: 500 }, 1);
  let step = race.next();
  while (!step.done) step = race.next();
  expect(step.value).toEqual(none);
});
