// A few of the cases of `npm run harden` in every run, and a check that a fault is told.
import { expect, test } from "vitest";
import { readProject } from "../../src/core/project/file/readProject.ts";
import { BUILT, batchKillsOf } from "../harden/batchKills.ts";
import { commandLines } from "../harden/commandLines.ts";
import { cupboardKillsOf, SOURCE_MODULES } from "../harden/cupboardKills.ts";
import { hostileFilesOf } from "../harden/hostileFiles.ts";
import { hostileLays } from "../harden/hostileLays.ts";
import { intoKillsOf, killsOf } from "../harden/kills.ts";
import { runCases } from "../harden/kind.ts";
import { patternFiles } from "../harden/patternFiles.ts";
import { smallProjects } from "../harden/smallProjects.ts";

test.each([
  [hostileFilesOf(readProject), 150, ["read", "told"]],
  [commandLines, 120, ["lay exit 0", "check exit 1", "strap exit 2"]],
  [smallProjects, 40, ["laid"]],
  [hostileLays, 40, ["laid", "laid, pieces left out", "refused"]],
  [patternFiles, 60, ["svg: told", "dxf: told", "pdf: told", "image: told"]],
] as const)("hardening, $name: no fault", async (kind, count, outcomes) => {
  const tally = await runCases(kind, 20_077, 0, count);
  expect(tally.faults).toEqual([]);
  expect([...tally.outcomes.keys()]).toEqual(expect.arrayContaining([...outcomes]));
});

test("a batch that is killed and run again gives the bytes of one that nobody stopped", async () => {
  const fromSource = ["--import", "tsx", "src/cli/main.ts"];
  const tally = await runCases(batchKillsOf(fromSource, 1), 20_077, 0, 3);
  expect(tally.faults).toEqual([]);
  expect([...tally.outcomes.keys()].some((outcome) => outcome !== "killed 0 times")).toBe(true);
}, 240_000);

test.each([killsOf(BUILT), intoKillsOf(BUILT)])(
  "$about: whole files, and nothing in the way",
  async (kind) => {
    const tally = await runCases(kind, 20_077, 0, 2);
    expect(tally.faults).toEqual([]);
    expect([...tally.outcomes.values()].reduce((sum, count) => sum + count, 0)).toBe(2);
  },
  240_000,
);

test("two writers on one cupboard, both killed: the file is whole, nothing taken twice, nothing lost", async () => {
  const tally = await runCases(cupboardKillsOf(SOURCE_MODULES), 20_077, 0, 4);
  expect(tally.faults).toEqual([]);
  expect([...tally.outcomes.values()].reduce((sum, count) => sum + count, 0)).toBe(4);
}, 240_000);
