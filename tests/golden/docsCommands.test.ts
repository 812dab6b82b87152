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

test("what is printed as code is closed again before the next heading", () => {
  const open = pages.flatMap(({ name, text }) => {
    let fenced = false;
    const faults: string[] = [];
    for (const [at, line] of text.split("\n").entries()) {
      if (/^\s*```/u.test(line)) fenced = !fenced;
      else if (fenced && /^#{2,} /u.test(line)) faults.push(`${name}:${at + 1} ${line}`);
    }
    return fenced ? [...faults, `${name} ends within code`] : faults;
  });
  expect(open).toEqual([]);
});

test("the pages print commands of every kind", () => {
  const kinds = new Set(printed.map(([, line]) => wordsOf(line)[0]));
  for (const kind of ["lay", "check", "strap", "yield", "bench"]) expect([...kinds]).toContain(kind);
});

const howTo = pages.find(({ name }) => name.endsWith("write-a-project-file.md"))!.text;
const first = join(folder, "first.json");
writeFileSync(first, /```json\n(\{\n {2}"laywright"[\s\S]*?)```/u.exec(howTo)![1]!);
/** Outputs go beside the first project; of a data set one small part is run. */
const STANDS_FOR: Readonly<Record<string, string>> = {
  "first.json": first,
  "out/bags": join(folder, "bags"),
  "out/orders": join(folder, "orders"),
  "out/next": join(folder, "next"),
  "out/bags/plan.json": join(folder, "bags/plan.json"),
  "out/next/plan.json": join(folder, "next/plan.json"),
  "cupboard.json": join(folder, "cupboard.json"),
  "labels.pdf": join(folder, "shelf-labels.pdf"),
  "first-out": join(folder, "first-out"),
  "photo-sheet.pdf": join(folder, "photo-sheet.pdf"),
  "flap-bag.json": join(folder, "flap-bag.json"),
  "flap-out": join(folder, "flap-out"),
  "fixtures/open/rect": "fixtures/open/rect/christofides-whitlock-cgcut.json",
  "fixtures/open/irregular": "fixtures/open/irregular/fu.json",
};

/** A printed command as it is run here: the same, with a small budget that no clock decides. */
function asRun(line: string): string[] {
  const words = wordsOf(line).map((word) => STANDS_FOR[word] ?? word);
  // Threads run what is built, not these sources; one thread finds plans that are as good.
  for (const option of ["--seconds", "--evaluations", "--threads"])
    while (words.includes(option)) words.splice(words.indexOf(option), 2);
  if (words[0] === "lay") words.push("--effort", "0.02");
  if (words[0] === "bench") words.push("--evaluations", "20000");
  return words;
}

/**
 * Commands whose words stand for others (`PROJECT`), growing jobs that are long at any budget, and what waits for others
 * or needs a store: `tests/outside` runs those for real.
 */
const isPattern = (line: string): boolean =>
  wordsOf(line).some((word) => /^[A-Z]+$|^--scale$|^--queue$|^worker$|^serve$/u.test(word));
const [patterns, whole] = [
  printed.filter(([, line]) => isPattern(line)),
  printed.filter(([, line]) => !isPattern(line)),
];

test.each(patterns)("%s: laywright %s knows every option", async (_, line) => {
  expect(await runCli(...wordsOf(line), "--help")).toMatchObject({ code: 0, err: "" });
});

test.each(whole)(
  "%s: laywright %s runs",
  async (_, line) => {
    const words = asRun(line);
    const { code, out, err } = await runCli(...words);
    expect({ code, err }).toMatchObject({ code: 0 });
    expect((out + err).length, words.join(" ")).toBeGreaterThan(20);
    const folderOf = words[words.indexOf("--out") + 1]!;
    if (words[0] === "lay" && words.includes("--out")) expect(readdirSync(folderOf)).toContain("plan.json");
  },
  300_000,
);

/** A block of one command, and the block right under it that holds its answer. */
const answered = pages.flatMap(({ name, text }) =>
  [
    ...text.matchAll(
      /```(?:sh)?\n(?:npm run -s laywright --|laywright) ([^\n]*)\n```\s*```(?:text)?\n([\s\S]*?)\n```/gu,
    ),
  ].map(([, line, lines]) => [name, line!, lines!.split("\n").filter((one) => one.trim() !== "")] as const),
);

test("pages print what their commands answer", () => {
  expect(answered.length).toBeGreaterThanOrEqual(3);
});

test.each(answered)("%s: laywright %s answers what the page prints", async (_, line, lines) => {
  const { out } = await runCli(...asRun(line));
  const said = out.split("\n").map((one) => one.trimEnd());
  // A page may leave lines out, and says so with three dots.
  let from = 0;
  for (const shown of lines.filter((one) => one.trim() !== "…")) {
    const found = said.indexOf(shown.trimEnd(), from);
    expect(found, `${shown}\n--- is not in ---\n${out}`).toBeGreaterThanOrEqual(0);
    from = found + 1;
  }
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
