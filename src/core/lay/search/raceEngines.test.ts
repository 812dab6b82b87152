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

test("a plan told before an engine's first turn is heard at its second, unless its own is better", () => {
  const laid: RegionPlan = {
    placements: [{ pieceId: "tab", copy: 0, x: 0, y: 0, turnDeg: 0, mirrored: false }],
    left: [0],
    length: 10,
  };
  const start: Engine = {
    id: "start",
    isStart: true,
    accepts: () => true,
    *search() {
      yield { plan: laid, bound: null, evaluations: 1 };
      return laid;
    },
  };
  const heardBy = (own: RegionPlan | null): (RegionPlan | undefined)[] => {
    const heard: (RegionPlan | undefined)[] = [];
    const listener: Engine = {
      id: "listener",
      accepts: () => true,
      *search() {
        heard.push(yield { plan: own, bound: null, evaluations: 1 });
        heard.push(yield { plan: null, bound: null, evaluations: 2 });
        return none;
      },
    };
    const race = raceEngines([start, listener], { ...job, goal: "shortest" }, { evaluations: 1000 }, 1);
    for (let step = race.next(); !step.done; ) step = race.next();
    return heard;
  };
  expect(heardBy(null)).toEqual([laid, undefined]);
  expect(heardBy({ ...laid, length: 9 })).toEqual([undefined, undefined]);
});
