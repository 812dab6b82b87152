import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { CATALOGUES as OURS } from "../../src/web/texts/texts.ts";
import { freshFolder } from "../tools/programs.ts";

// The recipes of DEVELOPERS.md, read from its own text and carried out in one copy of the house.

/** One edit of a recipe: a new file, or lines behind or in place of a line that is there. */
interface Edit {
  readonly path: string;
  readonly how: "new" | "after" | "in place of";
  readonly line: string;
  readonly text: string;
}

const english = OURS.en;

interface Recipe {
  readonly most: number;
  readonly besidesWords: boolean;
  readonly edits: readonly Edit[];
}

const EDIT =
  /^`(?<path>src\/[^`]+)`, (?:(?<fresh>new)|(?<how>after|in place of) `(?<line>[^`]+)`):\n\n```ts\n(?<text>[\s\S]*?)```/gmu;

function recipesOf(page: string): ReadonlyMap<string, Recipe> {
  const part = page.split("\n## ").find((section) => section.startsWith("Recipes\n"))!;
  const sections = part.split("\n### ").slice(1);
  const limit = /^At most (\d+) files?( besides words)?\./mu;
  return new Map(
    sections
      .filter((section) => limit.test(section))
      .map((section) => {
        const [, most, besidesWords] = limit.exec(section)!;
        const edits = [...section.matchAll(EDIT)].map(({ groups }): Edit => {
          const { path, fresh, how, line, text } = groups as Record<string, string>;
          return { path: path!, how: fresh ? "new" : (how as Edit["how"]), line: line ?? "", text: text! };
        });
        // Every block of code is an edit that was understood.
        expect(edits.length, section).toBe(section.split("```ts").length - 1);
        return [section.split("\n")[0]!, { most: Number(most), besidesWords: besidesWords !== undefined, edits }];
      }),
  );
}

function carryOut(house: string, { path, how, line, text }: Edit): void {
  const file = join(house, path);
  if (how === "new") {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text, { flag: "wx" });
    return;
  }
  const lines = readFileSync(file, "utf8").split("\n");
  const at = lines.indexOf(line);
  expect(at, `${path} has the line ${line}`).toBeGreaterThanOrEqual(0);
  lines.splice(how === "after" ? at + 1 : at, how === "after" ? 0 : 1, ...text.trimEnd().split("\n"));
  writeFileSync(file, lines.join("\n"));
}

const recipes = recipesOf(readFileSync("DEVELOPERS.md", "utf8"));
const copy = freshFolder();

/** What the changed house says when `script` (a module's body that gives `export default`) runs in it. */
function ran(script: string): unknown {
  const file = join(copy, "probe.mjs");
  writeFileSync(file, `${script}\nprocess.stdout.write(JSON.stringify(answer));\n`);
  return JSON.parse(execFileSync("node", [file], { cwd: copy, encoding: "utf8" }));
}

function laywright(...words: string[]): string {
  return execFileSync("node", ["dist/cli/main.js", ...words], { cwd: copy, encoding: "utf8" });
}

const PROJECT = {
  laywright: 1,
  name: "Rope locker",
  unit: "mm",
  materials: [{ id: "canvas", kind: "woven", thickness: 0.6, stock: [{ kind: "roll", id: "roll", width: 1400 }] }],
  panels: [{ id: "flap", material: "canvas", shape: { kind: "kite", width: 120, height: 200, drop: 50 } }],
  output: { paper: "B4" },
};

beforeAll(() => {
  for (const name of ["src", "package.json", "tsconfig.json", ".tsconfig.base.json", "fixtures", "shared"])
    cpSync(name, join(copy, name), { recursive: true });
  symlinkSync(join(process.cwd(), "node_modules"), join(copy, "node_modules"));
  for (const { edits } of recipes.values()) for (const edit of edits) carryOut(copy, edit);
  // Types of every host, so that a table which lacks a row is found wherever it stands.
  execFileSync(join("node_modules", ".bin", "tsc"), ["-b", "src/cli", "src/web"], {
    cwd: copy,
    stdio: ["ignore", "inherit", "inherit"],
  });
  writeFileSync(join(copy, "project.json"), JSON.stringify(PROJECT));
}, 240_000);

afterAll(() => rmSync(copy, { recursive: true }));

test("the recipes are these, and each touches no more files than it says", () => {
  expect([...recipes.keys()]).toEqual([
    "A strap construction",
    "A shape of panels",
    "A paper size",
    "A line's colour",
    "A German word",
    "A language",
    "An engine",
    "An export format",
  ]);
  const limits = [4, 4, 3, 1, 1, 3, 3, 4];
  for (const [i, [name, { most, besidesWords, edits }]] of [...recipes].entries()) {
    const paths = edits.map(({ path }) => path).filter((path) => !besidesWords || !path.includes("/core/words/"));
    expect(most, name).toBe(limits[i]);
    expect(new Set(paths).size, name).toBeGreaterThan(0);
    expect(new Set(paths).size, name).toBeLessThanOrEqual(most);
  }
});

test("a strap of the new construction has a cut width, two layers and an order of work", () => {
  const strap = JSON.parse(
    laywright("strap", "--construction", "doubled", "--width", "25 mm", "--length", "60 cm", "--json"),
  ) as { title: string; layers: number; cutWidthMm: number; steps: string[] };
  expect(strap).toMatchObject({ title: "Folded in half, raw edges (2 layers)", layers: 2 });
  // Twice the width, less or more the fold's share of a 0.3 mm cloth.
  expect(Math.abs(strap.cutWidthMm - 50)).toBeLessThan(1);
  expect(strap.steps.length).toBeGreaterThan(1);
  expect(
    laywright("strap", "--construction", "doubled", "--width", "25 mm", "--length", "60 cm", "--lang", "de"),
  ).toContain("zur Hälfte gefaltet, offene Kanten".slice(1));
});

test("the new shape is cut from a project file, the paper is known, the German word is said", () => {
  const answer = ran(`
    import { readFileSync } from "node:fs";
    import { readProject } from "./dist/core/project/file/readProject.js";
    import { cutListOf } from "./dist/core/project/cutList.js";
    import { polygonArea } from "./dist/core/geometry/ring.js";
    import { paperOf } from "./dist/core/project/papers.js";
    import { PANEL_WORDS } from "./dist/core/words/words.js";
    const project = readProject(readFileSync("project.json", "utf8"));
    const pieces = cutListOf(project.value).value.pieces;
    const answer = {
      areas: pieces.map(({ outline }) => polygonArea(outline)),
      paper: paperOf(project.value.output.paper),
      words: [PANEL_WORDS.de.shapes.kite, PANEL_WORDS.de.shapes.tab],
    };`);
  expect(answer).toEqual({
    // Half the product of a kite's diagonals.
    areas: [expect.closeTo((120 * 200) / 2, 6)],
    // ISO 216: B4.
    paper: { id: "B4", width: 250, height: 353 },
    words: ["Drachenviereck", "Ringlasche"],
  });
});

test("the new language is spoken by problems, constructions, cut sheet and page; what it lacks is English", async () => {
  const answer = ran(`
    import { problemLine } from "./dist/core/problems/describeProblem.js";
    import { LANGUAGE_NAMES, READ_LANGUAGES, SENTENCES } from "./dist/core/words/words.js";
    const said = (problem) => problemLine(problem, SENTENCES.eo);
    const answer = {
      name: LANGUAGE_NAMES.eo,
      read: READ_LANGUAGES,
      own: said({ code: "text-empty", path: "name" }),
      english: said({ code: "plan-leaves-nothing", path: "" }),
    };`);
  expect(answer).toEqual({
    name: "Esperanto (malneto)",
    read: ["en", "de"],
    own: "name: La teksto estas malplena. Skribu nomon.",
    english: "This plan leaves nothing that is worth keeping. A leftover is kept from 60 mm wide and long.",
  });
  const strap = ["strap", "--construction", "fourfold", "--width", "25 mm", "--length", "60.5 cm", "--lang", "eo"];
  expect(laywright(...strap)).toMatch(/Kvarfoje faldita \(4 layers\)[\s\S]*\d,\d mm/u);
  laywright("lay", "project.json", "--out", "sheets", "--effort", "1000", "--lang", "eo");
  const sheets = readdirSync(join(copy, "sheets"))
    .filter((name) => name.endsWith(".txt"))
    .map((name) => readFileSync(join(copy, "sheets", name), "utf8"));
  expect(sheets.join("\n")).toMatch(/Tondofolio[\s\S]*along × across/u);
  const { CATALOGUES } = (await import(join(copy, "src/web/texts/texts.ts"))) as {
    CATALOGUES: Record<string, typeof english>;
  };
  const { shell, constructions } = CATALOGUES["eo"]!;
  expect(shell.places).toEqual({ ...english.shell.places, bag: "Sako" });
  expect(constructions.fourfold).toEqual({ name: "kvarfoje faldita", layers: "4 layers" });
});

test("a picture has the new colour and no more of the old one", () => {
  const drawn = ran(`
    import { ROLE_STYLES, styledAs } from "./dist/core/drawing/list/roleStyles.js";
    const answer = [ROLE_STYLES.fold.color, styledAs({}).fold.color];`);
  expect(drawn).toEqual(["#5b3a8c", "#5b3a8c"]);
  laywright(
    "strap",
    "--construction",
    "fourfold",
    "--width",
    "25 mm",
    "--length",
    "60 cm",
    "--picture",
    "fold.svg",
  );
  expect(readFileSync(join(copy, "fold.svg"), "utf8")).not.toContain("#8a4b12");
});

test("the new engine is asked for rectangles on an open roll, and the checker passes its plan", () => {
  const answer = ran(`
    import { chooseEngines } from "./dist/core/lay/engines/chooseEngines.js";
    import { oneRowEngine } from "./dist/core/lay/boxes/rectangles/oneRowEngine.js";
    import { arrange } from "./dist/core/lay/search/arrange/arrange.js";
    import { inOneGo } from "./dist/core/lay/search/breath.js";
    import { checkPlan } from "./dist/core/lay/check/checkPlan.js";
    import { layProblemsOf } from "./dist/core/job/layProblems.js";
    import { readProject } from "./dist/core/project/file/readProject.js";
    import { cutListOf } from "./dist/core/project/cutList.js";
    const text = JSON.stringify({
      ...${JSON.stringify({ ...PROJECT, output: {} })},
      panels: [{ id: "a", material: "canvas", count: 3, shape: { kind: "rectangle", along: 200, across: 100 } }],
    });
    const project = readProject(text).value;
    const [problem] = layProblemsOf(project, cutListOf(project).value);
    const asked = new Set();
    inOneGo(arrange(problem, (job) => {
      const engines = chooseEngines(job, "free");
      for (const { id } of engines) asked.add(id);
      return engines;
    }, { evaluations: 1000 }, 1));
    const plan = inOneGo(arrange(problem, () => [oneRowEngine], { evaluations: 1000 }, 1));
    const answer = {
      asked: [...asked], faults: checkPlan(problem, plan), laid: plan.placements.length,
      long: plan.uses[0].usedLength >= 3 * 100,
    };`);
  expect(answer).toMatchObject({ faults: [], laid: 3, long: true });
  expect((answer as { asked: string[] }).asked).toContain("one-row");
});

test("the new kind of file is written with the others", () => {
  laywright("lay", "project.json", "--out", "files", "--effort", "1000");
  const rows = readFileSync(join(copy, "files", "canvas-corners.csv"), "utf8")
    .trimEnd()
    .split("\r\n");
  expect(rows[0]).toBe("line,x_mm,y_mm");
  const corners = rows.slice(1).map((row) => row.split(",").map(Number));
  const [xs, ys] = [1, 2].map((column) => corners.map((row) => row[column]!));
  const spans = [xs!, ys!].map((values) => Math.max(...values) - Math.min(...values)).sort((a, b) => a - b);
  // The kite is 120 by 200 mm, its seam allowance left out: the file says none.
  expect(spans).toEqual([expect.closeTo(120, 3), expect.closeTo(200, 3)]);
});
