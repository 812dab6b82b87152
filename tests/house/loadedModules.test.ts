// What the built program reads of itself and of its packages, as V8 tells at the end of a process (NODE_V8_COVERAGE lists
// every script that was compiled, in all threads): who only asks for help, or lays, pays for no queue and no service.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "loaded-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Packages by their names, and the program's own files below `dist`, that a run of it reads. */
function loadedBy(...words: string[]): { readonly packages: string[]; readonly files: string[] } {
  const told = mkdtempSync(join(folder, "told-"));
  const env = { ...process.env, NODE_V8_COVERAGE: told };
  const { status, stderr } = spawnSync(process.execPath, ["dist/cli/main.js", ...words], {
    cwd: root,
    env,
    encoding: "utf8",
  });
  expect({ status, stderr: status === 0 ? "" : stderr }).toEqual({ status: 0, stderr: "" });
  const urls = readdirSync(told).flatMap((name) =>
    JSON.parse(readFileSync(join(told, name), "utf8")).result.map(({ url }: { url: string }) => url),
  );
  const matches = (pattern: RegExp): string[] => [
    ...new Set(urls.flatMap((url: string) => pattern.exec(url)?.[1] ?? [])),
  ];
  return {
    packages: matches(/.*\/node_modules\/((?:@[^/]+\/)?[^/]+)\//u).sort(),
    files: matches(/\/dist\/(?!.*node_modules)(.*)$/u),
  };
}

const FOR_MANY = ["@hono/node-server", "bullmq", "hono", "ioredis", "tinypool"];

test("the program's help reads no package at all", () => {
  const { packages, files } = loadedBy("--help");
  expect(packages).toEqual([]);
  expect(files).toContain("cli/main.js");
  // Words are read with what is wrong with a command line, of every language there is.
  expect(files.filter((file) => !file.startsWith("core/words/")).length).toBeLessThan(25);
});

test("laying one project reads neither queue nor service, and no package of theirs", () => {
  const project = join(folder, "pouch.json");
  writeFileSync(project, JSON.stringify(POUCH_TEMPLATE));
  const out = join(folder, "out");
  const { packages, files } = loadedBy("lay", project, "--out", out, "--effort", "0.001");
  // What it does need is there: the list is not empty for another reason.
  expect(packages).toEqual(expect.arrayContaining(["pdf-lib", "zod"]));
  expect(packages.filter((name) => FOR_MANY.includes(name))).toEqual([]);
  expect(files).toContain("cli/lay/runLay.js");
  expect(files.filter((name) => /^cli\/(?:queue|serve|batch)\//u.test(name))).toEqual([]);
});

test.each(["lay", "batch", "worker", "serve"])(
  "the help of %s reads no engine, no reader and no package",
  (name) => {
    const { packages, files } = loadedBy(name, "--help");
    // The kinds of files, which two of the pages list, stand beside what draws them with it; it is small.
    expect(packages.filter((one) => one !== "clipper-lib")).toEqual([]);
    expect(
      files.filter((file) =>
        /^(?:core\/(?:project\/file|lay\/(?:boxes\/(?:rectangles|straps|matched)|outlines|engines))|reading|worker)\//u.test(
          file,
        ),
      ),
    ).toEqual([]);
  },
);
