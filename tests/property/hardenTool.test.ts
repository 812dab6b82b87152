// What `npm run harden` is made of finds the faults that are put in, and says how far it came.
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test, vi } from "vitest";
import { layProblemsOf } from "../../src/core/job/layProblems.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { BREATH } from "../../src/core/lay/search/breath.ts";
import { cutListOf } from "../../src/core/project/cutList.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import { hostileFilesOf } from "../harden/hostileFiles.ts";
import { faultsOf } from "../harden/judgePlan.ts";
import { type Draw, drawOf, type Kind, runCases } from "../harden/kind.ts";
import { freshPlace, readPlace, writePlace } from "../harden/place.ts";
import { caseNow, runRange } from "../harden/runRange.ts";
import { smallProject } from "../harden/smallProjects.ts";
import { watchRun } from "../harden/watchRun.ts";

const numbers: Kind = {
  name: "numbers",
  about: "",
  limitMs: 1000,
  run: (draw) => {
    const drawn = draw.below(1000);
    if (drawn % 10 === 3) throw new Error(`drew ${drawn}`);
    return drawn % 2 === 0 ? "even" : "odd";
  },
};
const drawn = (seed: number, index: number): number => drawOf(seed, index).below(1000);

async function inFolder<T>(use: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "laywright-harden-"));
  const said = vi.spyOn(console, "log").mockImplementation(() => {});
  try {
    return await use(folder);
  } finally {
    said.mockRestore();
    rmSync(folder, { recursive: true, force: true });
  }
}

test("a case that throws is told with its number, and the same number draws the same case", async () => {
  const all = await runCases(numbers, 5, 0, 200);
  const wrong = Array.from({ length: 200 }, (_, index) => index).filter((index) => drawn(5, index) % 10 === 3);
  expect(wrong.length).toBeGreaterThan(5);
  expect(all.faults.map(({ index }) => index)).toEqual(wrong);
  const [first] = all.faults;
  const again = await runCases(numbers, 5, first!.index, first!.index + 1);
  expect(again.faults[0]!.reason.split("\n")[0]).toBe(first!.reason.split("\n")[0]);
});

test("a run in two parts comes to the sums of one", () =>
  inFolder(async (folder) => {
    const [whole, parts] = [join(folder, "whole.json"), join(folder, "parts.json")];
    writePlace(whole, freshPlace(8, 100, 400));
    await runRange(numbers, whole);
    writePlace(parts, freshPlace(8, 100, 230));
    await runRange(numbers, parts);
    writePlace(parts, { ...readPlace(parts)!, to: 400 });
    await runRange(numbers, parts);
    const [one, two] = [readPlace(whole)!, readPlace(parts)!];
    expect(two.outcomes).toEqual(one.outcomes);
    expect(two.faults.map(({ index }) => index)).toEqual(one.faults.map(({ index }) => index));
    expect(one.faults.length).toBeGreaterThan(10);
    expect([one.from, one.next]).toEqual([100, 400]);
  }));

test(
  "a case without an end and one that takes the process with it are told by number, and the rest is run",
  () =>
    inFolder(async (folder) => {
      const file = join(folder, "odd.json");
      const script = fileURLToPath(new URL("../harden/oddRunner.ts", import.meta.url));
      const bad = [3, 9, 14].map((index) => drawn(2, index));
      expect(new Set(Array.from({ length: 20 }, (_, index) => drawn(2, index))).size).toBe(20);
      writePlace(file, freshPlace(2, 0, 20));
      const words = [file, ...bad.map(String)];
      await watchRun({ script, words, file, limitMs: 1500, flags: ["--import", "tsx"] });
      const { faults, outcomes, next } = readPlace(file)!;
      expect(faults.map(({ index }) => index)).toEqual([3, 9, 14]);
      expect(faults[0]!.what).toContain(`drew ${bad[0]}`);
      expect(faults[1]!.what).toBe("no end within 1.5 s");
      expect(faults[2]!.what).toContain("took the process with it");
      expect(Object.values(outcomes).reduce((sum, times) => sum + times, 0)).toBe(17);
      expect([next, caseNow(file)]).toEqual([20, null]);
    }),
  60_000,
);

test("a reader that throws at one value is found", async () => {
  const reader: typeof readProject = (text) => {
    if (text.includes("⅜ in")) throw new Error("put in");
    return readProject(text);
  };
  const { faults } = await runCases(hostileFilesOf(reader), 4, 0, 150);
  expect(faults.length).toBeGreaterThan(0);
  expect(faults.every(({ reason }) => reason.includes("put in"))).toBe(true);
});

/** The first plan of a drawn project, and its problem; null where it cannot be laid. */
function firstPlan(draw: Draw): { problem: LayProblem; plan: LayPlan } | null {
  const read = readProject(JSON.stringify(smallProject(draw)));
  const cut = read.ok ? cutListOf(read.value) : read;
  if (!read.ok || !cut.ok) return null;
  const [problem] = layProblemsOf(read.value, cut.value);
  if (problem === undefined) return null;
  const search = arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 1000 }, 1);
  for (;;) {
    const step = search.next();
    const plan = step.done ? step.value : step.value === BREATH ? null : step.value.plan;
    if (plan !== null) return { problem, plan };
  }
}

test("a piece put elsewhere is found by the quick judge just as by the slow one", () => {
  let [moved, bad] = [0, 0];
  for (let index = 0; index < 60; index++) {
    const draw = drawOf(31, index);
    const found = firstPlan(draw);
    if (found === null || found.plan.placements.length === 0) continue;
    const { problem, plan } = found;
    expect(faultsOf(problem, plan, true)).toEqual([]);
    const which = draw.below(plan.placements.length);
    const by = draw.one([0.01, 0.1, 1, 10]);
    const [dx, dy] = draw.one([
      [by, 0],
      [-by, 0],
      [0, by],
      [0, -by],
      [by, by],
    ] as const);
    const placements = plan.placements.map((one, i) =>
      i === which ? { ...one, x: one.x + dx, y: one.y + dy } : one,
    );
    const faults = faultsOf(problem, { ...plan, placements });
    expect(faults).toEqual(faultsOf(problem, { ...plan, placements }, true));
    moved++;
    if (faults.length > 0) bad++;
  }
  expect(moved).toBeGreaterThan(30);
  expect(bad).toBeGreaterThan(10);
});
