import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { planCut } from "../../core/job/planCut.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import type { Io } from "../command.ts";
import { readProjectFile } from "../inOut/editProjectFile.ts";
import { InputProblem, type ToldProblem } from "../inOut/toldProblem.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { outlivedFiles, rememberedFiles, writtenFile } from "./earlierFiles.ts";
import { tellAndWrite } from "./runLay.ts";

const folder = mkdtempSync(join(tmpdir(), "lay-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const pouch = {
  laywright: 1,
  name: "Jetty pouch",
  unit: "mm",
  bags: 1,
  materials: [
    {
      id: "canvas",
      name: "Canvas",
      kind: "woven",
      thickness: 0.5,
      stock: [{ kind: "roll", id: "roll", width: 500 }],
    },
  ],
  panels: [
    {
      id: "front",
      name: "Front",
      material: "canvas",
      count: 2,
      shape: { kind: "rectangle", along: 180, across: 120 },
    },
  ],
};
const project = readProjectFile(JSON.stringify(pouch));

test("a plan that the checker refuses ends with 3: it is kept, nothing to cut from is written", async () => {
  const problem = project.lays[0]!.problem;
  const at = (copy: number, x: number) => ({
    ...{ pieceId: "front", copy, stockId: problem.stocks[0]!.id, x, y: 10, turnDeg: 0, mirrored: false },
  });
  const plan: LayPlan = {
    materialId: "canvas",
    // The second copy lies on the first.
    placements: [at(0, 10), at(1, 100)],
    unplaced: [],
    uses: [{ stockId: problem.stocks[0]!.id, usedLength: 280 + problem.margin, bound: null }],
    evaluations: 0,
    seed: 1,
  };
  let [out, err] = ["", ""];
  const io: Io = {
    language: "de",
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    progress: () => {},
  };
  const faults = checkPlan(problem, plan);
  const laid = {
    ...{ material: project.project.materials[0]!, problem, plan, faults, leftOut: [], offcuts: [] },
    cut: planCut(problem, plan, "free"),
    purchase: { materialId: "canvas", bills: [], buyLength: 0, toPay: 0, ownWorth: 0 },
  };
  const dir = join(folder, "out");
  const args = { values: new Map([["out", dir]]), switches: new Set<string>(), operands: [] };
  expect(await tellAndWrite(args, io, project, [laid], 1)).toBe(3);
  expect(out).toBe("");
  expect(err).toMatch(/Schneiden Sie nicht danach/u);
  expect(err).toMatch(/überdecken sich um/u);
  expect(JSON.parse(readFileSync(join(dir, "plan.json"), "utf8")).materials).toHaveLength(1);
  expect(existsSync(join(dir, "cut-sheet.pdf"))).toBe(false);
});

test.each([
  ["over one another", [0, 10, 0], [1, 100, 0], ["plan-overlap pins[2]"]],
  ["over the edge", [0, -10, 0], [1, 200, 0], ["plan-outside-stock pins[1]"]],
  ["at a turn the grain forbids", [0, 200, 0], [1, 200, 30], ["plan-turn-not-allowed pins[2]"]],
  ["soundly", [0, 10, 0], [1, 200, 0], null],
])("pieces pinned %s", (_, first, second, faults) => {
  const pin = ([copy, x, turn]: readonly number[]) => {
    return { material: "canvas", stock: "roll", piece: "front", copy, x, y: turn === 0 ? 10 : 250, turn };
  };
  // A pin of what is not there any more is passed over, and counts.
  const pins = [{ ...pin([0, 0, 0]), piece: "gone" }, pin(first), pin(second)];
  const read = () => readProjectFile(JSON.stringify({ ...pouch, pins }));
  if (faults === null) expect(read().lays[0]!.problem.pinned).toHaveLength(2);
  else {
    let told: readonly ToldProblem[] = [];
    try {
      read();
    } catch (error) {
      if (error instanceof InputProblem) told = error.told("en");
    }
    expect(told.map(({ code, path }) => `${code} ${path}`)).toEqual(faults);
  }
});

test("files that only an earlier plan had are taken away, unless somebody changed them", () => {
  const dir = join(folder, "twice");
  const first = ["old-ruler.pdf", "mine.txt", "both.svg"].map((name) => ({ name, data: `first ${name}` }));
  writeFiles(dir, [{ name: "plan.json", data: JSON.stringify({ files: first.map(writtenFile) }) }, ...first]);
  writeFileSync(join(dir, "mine.txt"), "with a note of hers");
  const earlier = rememberedFiles(join(dir, "plan.json"));
  const done = outlivedFiles(dir, earlier, [{ name: "both.svg" }]);
  expect(done).toEqual({ removed: ["old-ruler.pdf"], kept: ["mine.txt"] });
  writeFiles(dir, [{ name: "plan.json", data: "{}" }], done.removed);
  expect(readdirSync(dir).sort()).toEqual(["both.svg", "mine.txt", "plan.json"]);
});

test("a plan that names files outside its folder takes nothing away", () => {
  const dir = join(folder, "elsewhere");
  writeFiles(dir, [{ name: "plan.json", data: JSON.stringify({ files: [{ name: "../twice/both.svg" }, 7] }) }]);
  expect(rememberedFiles(join(dir, "plan.json"))).toEqual([]);
  expect(rememberedFiles(join(dir, "none.json"))).toEqual([]);
});
