import { spawnSync } from "node:child_process";
import { chmodSync, rmSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { expect, test } from "vitest";
import { freshFolder } from "../tools/programs.ts";

const counts = (high: number, critical: number): object => ({
  metadata: { vulnerabilities: { low: 3, moderate: 2, high, critical }, dependencies: { prod: 40 } },
});

// npm is stood in for by a program that prints what a registry would have answered.
test.each([
  ["findings of high severity", counts(2, 0), 1, "2 holes of high severity or worse in 40 packages"],
  ["critical findings", counts(0, 1), 1, "1 holes of high severity or worse in 40 packages"],
  ["lesser findings only", counts(0, 0), 0, "0 holes of high severity or worse in 40 packages"],
  ["no such service", { message: "405 Method Not Allowed", statusCode: 405 }, 0, "NOT CHECKED"],
  ["a fault of its own", { message: "500 Internal Server Error", statusCode: 500 }, 1, "NOT CHECKED"],
])("where the registry answers with %s", (_, answer, status, line) => {
  const folder = freshFolder();
  const npm = join(folder, "npm");
  writeFileSync(npm, `#!/bin/sh\ncat <<'ANSWER'\n${JSON.stringify(answer)}\nANSWER\n`);
  chmodSync(npm, 0o755);
  const path = `${folder}${delimiter}${process.env["PATH"]}`;
  const run = spawnSync(process.execPath, ["tests/audit.mjs"], {
    encoding: "utf8",
    env: { ...process.env, PATH: path },
  });
  rmSync(folder, { recursive: true });
  expect(run.status).toBe(status);
  expect(run.stdout + run.stderr).toContain(line);
});
