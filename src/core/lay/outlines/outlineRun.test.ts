import { afterEach, expect, test, vi } from "vitest";
import { solid } from "../../geometry/ring.ts";
import type { RegionJob } from "../problem/region.ts";
import { compileJob } from "./compile/compileJob.ts";
import { PlanVerifier } from "./judge/verifyPlan.ts";
import { OUTLINE_TUNING } from "./outlineEngine.ts";
import { OutlineRun } from "./outlineRun.ts";

afterEach(() => vi.restoreAllMocks());

const wedge = solid(Float64Array.of(0, 0, 80, 0, 50, 45, 0, 60));
const job: RegionJob = {
  region: { width: 200, length: null, outline: null, flaws: [] },
  pieces: [
    {
      id: "wedge",
      outline: wedge,
      count: 9,
      orientations: [0, 180].map((turnDeg) => ({ turnDeg, mirrored: false })),
      freeTurn: false,
    },
  ],
  gap: 0,
  margin: 0,
  pinned: [],
  goal: "shortest",
};

test("starts that the judge sends back are still gone on from, on an open roll", () => {
  const { passes } = PlanVerifier.prototype;
  let refused = 0;
  vi.spyOn(PlanVerifier.prototype, "passes").mockImplementation(function* (this: PlanVerifier, plan) {
    if (refused++ < 3) return false;
    return yield* passes.call(this, plan);
  });
  const run = new OutlineRun(compileJob(job), 1, OUTLINE_TUNING);
  for (const _ of run.run(900_000)) if (run.state.evaluations > 900_000) break;
  for (const _ of run.finish());
  expect(run.dropped).toBe(3);
  expect(run.plan.left).toEqual([0]);
  expect(run.plan.length).toBeGreaterThan(run.bound!);
  expect(run.plan.length).toBeLessThan(4 * 80);
});
