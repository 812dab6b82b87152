// The notices that go with the package, the page and what is made with them, held against npm's own list of what an
// install for use (`--omit=dev`) brings.
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { notices, noticesText } from "../tools/thirdParty.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

interface Tree {
  readonly version?: string;
  readonly dependencies?: Readonly<Record<string, Tree>>;
}

/** What a package names as optional: npm installs it on some systems, beside us, and lists it all the same. */
function optionalOf(name: string | null): readonly string[] {
  const file = name === null ? "package.json" : `node_modules/${name}/package.json`;
  // A package of another system is listed and not there; nor is what it would bring.
  if (!existsSync(`${root}${file}`)) return [];
  return Object.keys(JSON.parse(readFileSync(`${root}${file}`, "utf8")).optionalDependencies ?? {});
}

/** Every name@version in a tree of `npm ls`, but for what is optional. */
function namesIn(tree: Tree, parent: string | null = null): string[] {
  const optional = optionalOf(parent);
  // Without a version: a package that another would work with, and that is not there.
  const there = Object.entries(tree.dependencies ?? {}).filter(
    ([name, { version }]) => version !== undefined && !optional.includes(name),
  );
  return there.flatMap(([name, one]) => [`${name}@${one.version}`, ...namesIn(one, name)]);
}

test("every library and font that an install for use brings has its notice, with a licence and its text", () => {
  const npm = process.platform === "win32" ? "npm.cmd" : "npm";
  const listed = execFileSync(
    npm,
    ["ls", "--all", "--omit=dev", "--omit=optional", "--json", "--package-lock-only"],
    {
      cwd: root,
      encoding: "utf8",
    },
  );
  const expected = [...new Set(namesIn(JSON.parse(listed)))].sort();
  const list = notices();
  expect(expected.length).toBeGreaterThan(10);
  expect([...new Set(list.map(({ name, version }) => `${name}@${version}`))].sort()).toEqual(expected);
  for (const { name, licence, text } of list) {
    expect(licence, name).not.toBe("");
    expect(text.length, name).toBeGreaterThan(300);
    // Zlib, OFL, Unlicense and 0BSD have no such words in common; each says what may be done.
    expect(text, name).toMatch(/permi(?:t|ss)|free (?:and|to)|granted|restrictions/iu);
  }
  const whole = noticesText(list);
  for (const font of ["SIL OPEN FONT LICENSE", "Bitstream Vera"])
    expect(whole.toLowerCase()).toContain(font.toLowerCase());
  expect(whole).not.toMatch(/\r|\/(?:root|home|Users|work)\//u);
});

test("what leaves the house carries them: the package's files, the page and its one file", () => {
  const { files, scripts } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
  expect(scripts.build).toContain("thirdParty.ts");
  expect(files).toContain("dist");
  const config = readFileSync(new URL("../../src/web/vite.config.ts", import.meta.url), "utf8");
  expect(config).toMatch(/plugins: \[thirdParty\(\)/u);
});
