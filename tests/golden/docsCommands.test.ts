import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../tools/runCli.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const docs = readdirSync(join(root, "docs"), { recursive: true, encoding: "utf8" }).map((name) =>
  join("docs", name),
);
const pages = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", ...docs.filter((name) => name.endsWith(".md"))].map(
  (name) => ({ name, text: readFileSync(join(root, name), "utf8") }),
);
const folder = mkdtempSync(join(tmpdir(), "docs-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Words of a shell line, quotes taken off, its comment left out. */
const wordsOf = (line: string): string[] =>
  [...line.replace(/\s#\s.*$/u, "").matchAll(/'([^']*)'|"([^"]*)"|(\S+)/gu)].map(
    ([, a, b, c]) => a ?? b ?? c ?? "",
  );

const printed = pages.flatMap(({ name, text }) =>
  [...text.matchAll(/```(?:sh)?\n([\s\S]*?)```/gu)].flatMap(([, block]) =>
    [...block!.matchAll(/^(?:npm run -s laywright --|laywright) (.*)$/gmu)]
      .map(([, line]) => [name, line!] as const)
      .filter(([, line]) => !/^(?:COMMAND|--help)/u.test(line)),
  ),
);

test("the pages print commands of every kind", () => {
  const kinds = new Set(printed.map(([, line]) => wordsOf(line)[0]));
  for (const kind of ["lay", "check", "strap", "yield", "bench"]) expect([...kinds]).toContain(kind);
});

test.each(printed)("%s: laywright %s", async (_, line) => {
  const words = wordsOf(line).map((word) => (word === "first.json" ? join(folder, word) : word));
  const howTo = pages.find(({ name }) => name.endsWith("write-a-project-file.md"))!.text;
  writeFileSync(join(folder, "first.json"), /```json\n(\{\n {2}"laywright"[\s\S]*?)```/u.exec(howTo)![1]!);
  // What searches for long is only asked whether it knows every option.
  const isLong = words[0] === "lay" || words[0] === "bench" || words.some((word) => /^[A-Z]+$/u.test(word));
  const { code, err } = await runCli(...words, ...(isLong ? ["--help"] : []));
  expect(err).toBe("");
  expect(code).toBe(0);
});

test("links between the pages lead somewhere", () => {
  const broken = pages.flatMap(({ name, text }) =>
    [...text.replace(/```[\s\S]*?```/gu, "").matchAll(/\]\(([^)#\s]+)(?:#[^)]*)?\)/gu)]
      .map(([, target]) => target!)
      .filter((target) => !/^[a-z]+:/u.test(target) && !existsSync(join(root, dirname(name), target)))
      .map((target) => `${name}: ${target}`),
  );
  expect(broken).toEqual([]);
});
