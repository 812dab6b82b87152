import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { bytesOf, PLACES } from "../tools/sameBytes.ts";

const WORDS = ["--import", "tsx", "src/cli/main.ts", "lay", "tests/golden/projects/chart-folder.json"];

test("the system's language and time zone reach a run, and are unlike", () => {
  const shown = PLACES.map((place) => {
    const words = ["--print", "new Date(1.7e12).toString() + (1234.5).toLocaleString()"];
    return spawnSync(process.execPath, words, { encoding: "utf8", env: { ...process.env, LANG: "", ...place } })
      .stdout;
  });
  expect(new Set(shown).size).toBe(PLACES.length);
});

test("a project's files are the same bytes in another time zone and language of the system", () => {
  const here = bytesOf(WORDS, PLACES[0]!);
  expect(Object.keys(here).length).toBeGreaterThan(8);
  expect(bytesOf(WORDS, PLACES[1]!)).toEqual(here);
});
