import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../../../geometry/ring.ts";
import type { RegionJob } from "../../../problem/region.ts";
import { BREATH } from "../../../search/breath.ts";
import { rulerEngine } from "../rulerEngine.ts";
import { partedEngine } from "./partedEngine.ts";

const job: RegionJob = {
  region: { width: 500, length: null, outline: null, flaws: [solid(rectangleRing(300, 100, 40, 40))] },
  pieces: [
    {
      id: "strip",
      outline: solid(rectangleRing(0, 0, 450, 80)),
      count: 12,
      orientations: [{ turnDeg: 0, mirrored: false }],
      freeTurn: false,
    },
  ],
  gap: 0,
  margin: 0,
  pinned: [],
  goal: "shortest",
};

test("on an open roll no plan is told that leaves pieces out", () => {
  let told = 0;
  for (const step of partedEngine(rulerEngine, rulerEngine).search(job, { evaluations: 50_000 }, 1)) {
    if (step === BREATH || step.plan === null) continue;
    told++;
    expect(step.plan.left).toEqual([0]);
  }
  expect(told).toBeGreaterThan(0);
});

test("on closed cloth none is told before something lies", () => {
  const closed: RegionJob = { ...job, region: { ...job.region, length: 1000 }, goal: "most" };
  for (const step of partedEngine(rulerEngine, rulerEngine).search(closed, { evaluations: 50_000 }, 1))
    if (step !== BREATH && step.plan !== null) expect(step.plan.placements.length).toBeGreaterThan(0);
});

test("of closed cloth that takes no piece a plan is told all the same: whoever stops the search waits for one", () => {
  const flaws = [100, 500, 900].map((at) => solid(rectangleRing(at, 0, 40, 500)));
  const closed: RegionJob = { ...job, region: { ...job.region, length: 1000, flaws }, goal: "most" };
  const search = partedEngine(rulerEngine, rulerEngine).search(closed, { evaluations: Infinity }, 1);
  const plans = Array.from({ length: 60 }, () => search.next().value).flatMap((step) =>
    step === BREATH || !("plan" in step) || step.plan === null ? [] : [step.plan],
  );
  expect(plans.map(({ left }) => left)).toEqual([[12]]);
});
