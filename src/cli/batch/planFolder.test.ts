import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { POUCH_TEMPLATE } from "../../../tests/tools/pouchTemplate.ts";
import { bytesIn } from "../../../tests/tools/programs.ts";
import { runCli } from "../../../tests/tools/runCli.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import type { LayTask } from "./layTask.ts";
import { PlanFolder } from "./planFolder.ts";

const folder = mkdtempSync(join(tmpdir(), "plans-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const TEMPLATE = join(folder, "pouch.json");
writeFileSync(TEMPLATE, JSON.stringify(POUCH_TEMPLATE));
const ORDERS = join(folder, "orders.csv");
writeFileSync(ORDERS, "order,height\n1,\n2,14 cm");

/** Files of plans below a folder, whole ones and others. */
const filesIn = (plans: string): string[] =>
  readdirSync(plans, { recursive: true, encoding: "utf8" })
    .filter((name) => name.includes("."))
    .sort();

test("a plan in the folder is taken when it passes the checker, and one that does not is searched anew", async () => {
  const plans = join(folder, "plans");
  const batch = async (out: string, ...more: string[]): Promise<Record<string, string>> => {
    const words = ["batch", TEMPLATE, ORDERS, "--effort", "0.001", "--out", join(folder, out)];
    expect((await runCli(...words, ...more)).code).toBe(0);
    return bytesIn(join(folder, out));
  };
  const alone = await batch("alone");
  expect(await batch("first", "--plans", plans)).toEqual(alone);
  const files = filesIn(plans);
  expect(files).toHaveLength(2);
  for (const name of files) expect(name).toMatch(/^([0-9a-f]{2})\/\1[0-9a-f]{62}\.json$/u);
  const kept = files.map((name) => readFileSync(join(plans, name), "utf8"));
  // Another batch with the same orders, of which only the plans can come out of the folder.
  expect(await batch("second", "--plans", plans)).toEqual(alone);
  const change = (by: (plan: LayPlan) => LayPlan): void => {
    for (const [i, name] of files.entries())
      writeFileSync(join(plans, name), JSON.stringify(JSON.parse(kept[i]!).map(by)));
  };
  // A sound plan from elsewhere, told by the evaluations it took: it is laid as it stands.
  change((plan) => ({ ...plan, evaluations: 123_456 }));
  const told = await batch("told", "--plans", plans);
  expect(Buffer.from(told["orders/1/plan.json"]!, "base64").toString()).toContain("123456");
  // Pieces over each other; half a file: neither is believed, both are put right.
  change((plan) => ({ ...plan, placements: plan.placements.map((one) => ({ ...one, x: 0, y: 0 })) }));
  writeFileSync(join(plans, files[1]!), kept[1]!.slice(0, 40));
  expect(await batch("wrong", "--plans", plans)).toEqual(alone);
  expect(files.map((name) => readFileSync(join(plans, name), "utf8"))).toEqual(kept);
  expect(filesIn(plans)).toEqual(files);
  // More effort is another plan.
  await batch("more", "--plans", plans, "--seed", "2");
  expect(filesIn(plans)).toHaveLength(4);
  const blocked = await runCli("batch", TEMPLATE, ORDERS, "--out", join(folder, "none"), "--plans", TEMPLATE);
  expect(blocked).toMatchObject({ code: 1, err: expect.stringContaining("pouch.json") });
  expect(readdirSync(folder)).not.toContain("none");
});

test("two processes that keep the same plan again and again: whoever reads finds a whole one", async () => {
  const plans = join(folder, "raced");
  const placement = { pieceId: "front", copy: 0, stockId: "roll", x: 1.5, y: 2.5, turnDeg: 0, mirrored: false };
  const found: LayPlan[] = [
    {
      materialId: "canvas",
      placements: Array.from({ length: 5000 }, (_, copy) => ({ ...placement, copy })),
      unplaced: [],
      uses: [{ stockId: "roll", usedLength: 400, bound: null }],
      evaluations: 7,
      seed: 1,
    },
  ];
  const task: LayTask = {
    folder: "orders/a",
    orders: [{ name: "a", folder: "orders/a", text: "{}" }],
    withheld: {},
    effort: { evaluations: 7, seed: 1, mode: "free" },
    language: "en",
  };
  const source = fileURLToPath(new URL("./planFolder.ts", import.meta.url));
  const code = `const { PlanFolder } = await import(${JSON.stringify(source)});
    const folder = new PlanFolder(${JSON.stringify(plans)}, "1");
    for (let i = 0; i < 60; i++) folder.keep(${JSON.stringify(task)}, ${JSON.stringify(found)});`;
  writeFileSync(join(folder, "keeps.mjs"), code);
  const shared = new PlanFolder(plans, "1");
  shared.prepare();
  const ended = ["one", "two"].map(async () => {
    const words = ["--import", import.meta.resolve("tsx"), join(folder, "keeps.mjs")];
    const [status] = await once(spawn(process.execPath, words, { stdio: "inherit" }), "exit");
    return status;
  });
  let isOver = false;
  const over = Promise.all(ended).finally(() => {
    isOver = true;
  });
  let seen = 0;
  while (!isOver) {
    const plan = shared.find(task);
    // Nothing there yet, or all of it; half a file would be neither.
    if (plan === null) expect(seen).toBe(0);
    else if (seen++ % 20 === 0) expect(plan).toEqual(found);
    await new Promise((resolve) => setImmediate(resolve));
  }
  expect(await over).toEqual([0, 0]);
  expect(shared.find(task)).toEqual(found);
  expect(filesIn(plans)).toHaveLength(1);
  expect(new PlanFolder(plans, "2").find(task)).toBeNull();
  // Two processes that read the sources first.
}, 240_000);
