import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { checksums, SIZE_LIMITS, sizeFaults } from "../tools/release.ts";

test("checksums are SHA-256, a line a file, in the order of the names", () => {
  // Digest of "abc": FIPS 180-4, example of SHA-256 (published with the standard).
  const abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
  const bytes = new TextEncoder().encode("abc");
  expect(checksums({ "b.txt": bytes, "a.txt": bytes })).toBe(`${abc}  a.txt\n${abc}  b.txt\n`);
});

test("a file over its limit, and one that has none, are told", () => {
  const limit = SIZE_LIMITS["laywright.tgz"]!;
  expect(sizeFaults({ "laywright.tgz": limit })).toEqual([]);
  expect(sizeFaults({ "laywright.tgz": limit + 1, "more.bin": 1 })).toHaveLength(2);
});

test("the package holds what it needs to run, and neither the page nor sources, tests or fixtures", () => {
  const told = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
    encoding: "utf8",
    shell: process.platform === "win32",
  });
  const [{ files }] = JSON.parse(told) as [{ files: { path: string }[] }];
  const paths = files.map(({ path }) => path);
  expect(paths).toEqual(
    expect.arrayContaining(["package.json", "LICENSE", "README.md", "shared/project.schema.json"]),
  );
  for (const path of paths) expect(path).toMatch(/^(?:dist\/(?!web\/)|shared\/|[^/]+$)/u);
  expect(paths.filter((path) => path.includes(".test.") || path.endsWith(".tsbuildinfo"))).toEqual([]);
});
