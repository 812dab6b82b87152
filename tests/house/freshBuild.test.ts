import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { isStale } from "../tools/freshBuild.ts";

test("what was compiled is stale once a source is newer; a test of a source is none", () => {
  const folder = mkdtempSync(join(tmpdir(), "laywright-stale-"));
  const stamp = join(folder, "stamp");
  const sources = join(folder, "src");
  const put = (name: string, second: number): void => {
    writeFileSync(join(folder, name), "");
    utimesSync(join(folder, name), second, second);
  };
  mkdirSync(join(sources, "deep"), { recursive: true });
  put("src/deep/a.ts", 100);
  expect(isStale(sources, stamp)).toBe(true);
  put("stamp", 200);
  expect(isStale(sources, stamp)).toBe(false);
  put("src/deep/a.test.ts", 300);
  expect(isStale(sources, stamp)).toBe(false);
  put("src/deep/b.tsx", 300);
  expect(isStale(sources, stamp)).toBe(true);
  rmSync(folder, { recursive: true });
});
