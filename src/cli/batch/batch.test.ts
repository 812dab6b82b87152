import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { afterAll, expect, test } from "vitest";
import { POUCH_TEMPLATE } from "../../../tests/tools/pouchTemplate.ts";
import { bytesIn } from "../../../tests/tools/programs.ts";
import { runCli } from "../../../tests/tools/runCli.ts";
import { doLayTask, type LayTask } from "./layTask.ts";
import { readOrders } from "./readOrders.ts";
import { removeOutlived } from "./records.ts";
import { runTasks } from "./runTasks.ts";

const folder = mkdtempSync(join(tmpdir(), "batch-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const TEMPLATE = join(folder, "pouch.json");
writeFileSync(TEMPLATE, JSON.stringify(POUCH_TEMPLATE));

function table(name: string, ...rows: string[]): string {
  const path = join(folder, name);
  writeFileSync(path, rows.join("\r\n"));
  return path;
}

const ORDERS = table(
  "orders.csv",
  "order,due,shade,bags,loop.width,height",
  "1,2027-03-12,navy,1,,",
  "2,2027-03-12,navy,2,20 mm,14 cm",
  "3,2027-03-12,rust,1,wide,",
  "=4,2027-04-12,rust,1,,5000 m",
  "5,2027-03-12,navy,1,,",
);

test("one wrong order never stops the others; the summary tells each with its reason", async () => {
  const out = join(folder, "one bad");
  const { code, out: said, err } = await runCli("batch", TEMPLATE, ORDERS, "--out", out, "--together", "due");
  expect({ code, said }).toMatchObject({ code: 1, said: expect.stringContaining("3 of 5 orders laid, in 1 lay.") });
  expect(err).toMatch(/Row 4, column "loop.width": .*wide/u);
  expect(err).toMatch(/Row 5, column "height": /u);
  const [heads, ...rows]: string[][] = parse(readFileSync(join(out, "summary.csv"), "utf8"));
  expect(heads).toHaveLength(12);
  expect(rows.map((row) => [row[0], row[3], row[4], row[10]])).toEqual([
    ["1", "1", "laid", "lays/1+2"],
    ["2", "2", "laid", "lays/1+2"],
    ["3", "", "not laid", ""],
    ["'=4", "", "not laid", ""],
    ["5", "1", "laid", "lays/1+2"],
  ]);
  const page = readFileSync(join(out, "summary.html"), "utf8");
  expect(page).toContain('<a href="lays/1+2/">');
  // The lay has each order's pieces, its folder the order's own.
  const lay = JSON.parse(readFileSync(join(out, "lays/1+2/plan.json"), "utf8"));
  const counts = lay.materials[0].pieces.map(({ id, count }: { id: string; count: number }) => `${id} ${count}`);
  expect(counts).toEqual([
    "1: loop-outer 1",
    "1: front 2",
    "2: loop-outer 2",
    "2: front 4",
    "5: loop-outer 1",
    "5: front 2",
  ]);
  const list: string[][] = parse(readFileSync(join(out, "orders/2/cut-sheet.csv"), "utf8"), { bom: true });
  expect(list.slice(1).map((row) => [row[1], row[4]])).toEqual([
    ["Wrist loop", "2"],
    ["Front", "4"],
  ]);
  // Metres of the orders are the lay's, shared out.
  const metres = rows.reduce((sum, row) => sum + Number(row[6]), 0);
  expect(metres).toBeCloseTo(
    lay.materials[0].stock.find(({ id }: { id: string }) => id === "roll").lengthUsed / 1000,
    2,
  );
});

test("the same command does nothing twice; what is damaged or no longer wanted is put right", async () => {
  const out = join(folder, "again");
  const words = ["batch", TEMPLATE, ORDERS, "--out", out, "--together", "none"];
  await runCli(...words);
  const first = bytesIn(out);
  const made = statSync(join(out, "orders/1/plan.json")).mtimeMs;
  const again = await runCli(...words);
  expect(again.err).toContain("3 lays were there already and stay.");
  expect(statSync(join(out, "orders/1/plan.json")).mtimeMs).toBe(made);
  expect(bytesIn(out)).toEqual(first);
  // What a killed run can leave behind: a lay without its record, passing names, half a folder.
  const [record] = readdirSync(join(out, "records"));
  rmSync(join(out, "records", record!));
  writeFileSync(join(out, "records", `${record}.999999999.laywright-part`), "{");
  writeFileSync(join(out, "orders/2/cut-sheet.txt"), "damaged");
  rmSync(join(out, "orders/5/cut-sheet.pdf"));
  await runCli(...words);
  expect(bytesIn(out)).toEqual(first);
  // Laid together instead: the folders of the single lays are gone but for what somebody wrote there.
  writeFileSync(join(out, "orders/1/cut-sheet.txt"), "with a note of hers");
  const { err } = await runCli(...words.slice(0, -1), "all");
  expect(err).toContain("orders/1/cut-sheet.txt");
  expect(readdirSync(join(out, "orders/2"))).not.toContain("plan.json");
  expect(readdirSync(join(out, "lays/1+2"))).toContain("plan.json");
});

test("a record that names files elsewhere takes nothing away", () => {
  const out = join(folder, "trap");
  mkdirSync(join(out, "records"), { recursive: true });
  writeFileSync(join(folder, "outside.txt"), "");
  const sha256 = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";
  const files = ["../outside.txt", "orders/../../outside.txt", "orders/../outside.txt"].map((name) => ({
    name,
    sha256,
  }));
  writeFileSync(join(out, "records", `${"0".repeat(64)}.json`), JSON.stringify({ files }));
  expect(removeOutlived(out, new Set())).toEqual([]);
  expect(readdirSync(folder)).toContain("outside.txt");
  expect(readdirSync(join(out, "records"))).toEqual([]);
});

test("two threads give the bytes of one", async () => {
  const task = (name: string, height: number): LayTask => ({
    folder: `orders/${name}`,
    orders: [
      {
        name,
        folder: `orders/${name}`,
        text: JSON.stringify({ ...POUCH_TEMPLATE, measures: [{ ...POUCH_TEMPLATE.measures[0], length: height }] }),
      },
    ],
    withheld: {},
    effort: { evaluations: 1000, seed: 1, mode: "free" },
    language: "en",
  });
  const tasks = [task("a", 120), task("b", 150), task("c", 90)];
  const one: unknown[] = [];
  for (const each of tasks) one.push(await doLayTask(each, join(folder, "one")));
  const two = new Map<string, unknown>();
  const entry = new URL("../../../tests/tools/batchWorkerFromSource.mjs", import.meta.url);
  const keep = (each: LayTask, result: unknown): void => void two.set(each.folder, result);
  await runTasks(tasks, { out: join(folder, "two"), threads: 2, plans: null, entry }, keep).ended;
  expect(tasks.map((each) => two.get(each.folder))).toEqual(one.map((laid) => ({ laid })));
  expect(bytesIn(join(folder, "two"))).toEqual(bytesIn(join(folder, "one")));
  // Two threads that compile the sources first.
}, 240_000);

test("a bug in one lay is told and the others go on; stopping hands out no more", async () => {
  const bad = { folder: "orders/x", orders: [{ name: "x", folder: "orders/x", text: "{" }] };
  const rest = { withheld: {}, effort: { evaluations: 1000, seed: 1, mode: "free" }, language: "en" } as const;
  const good = {
    folder: "orders/y",
    orders: [{ name: "y", folder: "orders/y", text: JSON.stringify(POUCH_TEMPLATE) }],
  };
  const ended: string[] = [];
  const running = runTasks(
    [
      { ...bad, ...rest },
      { ...good, ...rest },
      { ...good, ...rest, folder: "orders/z" },
    ],
    { out: join(folder, "bug"), threads: 1, plans: null },
    ({ folder }, result) => {
      ended.push(`${folder} ${"bug" in result}`);
      if (folder === "orders/y") running.stop();
    },
  );
  await running.ended;
  expect(ended).toEqual(["orders/x true", "orders/y false"]);
});

test("a folder of projects; a file that is none is one bad order", async () => {
  const projects = join(folder, "projects");
  mkdirSync(projects);
  writeFileSync(join(projects, "pouch.json"), JSON.stringify(POUCH_TEMPLATE));
  writeFileSync(join(projects, "broken.json"), "{");
  writeFileSync(join(projects, "notes.txt"), "");
  const out = join(folder, "from folder");
  const { code, out: said, err } = await runCli("batch", projects, "--out", out, "--json");
  expect(code).toBe(1);
  expect(err).toContain("broken.json: ");
  const { orders } = JSON.parse(said);
  expect(orders.map(({ order, state }: Record<string, string>) => `${order} ${state}`)).toEqual([
    "broken refused",
    "pouch laid",
  ]);
  const alone = await runCli(
    "lay",
    join(projects, "pouch.json"),
    "--out",
    join(folder, "alone"),
    "--effort",
    "0.2",
  );
  expect(alone.code).toBe(0);
  // The very files that `lay` writes with the same effort.
  expect(bytesIn(join(out, "orders/pouch"))).toEqual(bytesIn(join(folder, "alone")));
});

test("only the files that are asked for are written, for the lay and for each order in it", async () => {
  const out = join(folder, "few files");
  const words = ["batch", TEMPLATE, ORDERS, "--out", out, "--together", "due"];
  await runCli(...words, "--write", "labels, cut-list,dxf");
  expect(readdirSync(join(out, "lays/1+2")).sort()).toEqual([
    "canvas-leftover.dxf",
    "canvas-roll.dxf",
    "cut-sheet.csv",
    "labels.pdf",
    "plan.json",
  ]);
  expect(readdirSync(join(out, "orders/2")).sort()).toEqual(["cut-sheet.csv", "labels.pdf", "order.json"]);
  expect((await runCli(...words, "--write", "label")).err).toMatch(/--write must be one of cut-sheet, .*"label"/u);
});

test("wrong words and tables are told before anything is written", async () => {
  const out = join(folder, "nothing");
  const run = async (...words: string[]) => {
    const { code, err } = await runCli("batch", ...words, "--out", out);
    return `${code} ${err.split("\n")[0]}`;
  };
  expect(await run(TEMPLATE)).toMatch(/^2 .*needs TEMPLATE ORDERS/u);
  expect(await run(folder, ORDERS)).toMatch(/^2 /u);
  expect(await run(TEMPLATE, table("odd.csv", "order,loop.widt", "1,2"))).toMatch(
    /^1 .*Did you mean "loop.width"/u,
  );
  expect(await run(TEMPLATE, table("open.csv", "order,bags", '1,"2'))).toMatch(/^1 .*cannot be read from line/u);
  expect(await run(TEMPLATE, table("empty.csv", ""))).toMatch(/^1 .*no order in it/u);
  expect(await run(TEMPLATE, table("word.json", "{}"))).toMatch(/^1 .*no list of orders/u);
  expect(await run(TEMPLATE, table("all.csv", "order,loop.width", "1,wide", "2,9 ells"))).toMatch(/^1 Row 2/u);
  expect(readdirSync(folder)).not.toContain("nothing");
  const file = table("file", "");
  expect((await runCli("batch", TEMPLATE, ORDERS, "--out", file)).code).toBe(1);
});

test("tables with semicolons, tabs, quoted cells, byte order marks and blank lines are read as they look", () => {
  const read = (text: string) => {
    const found = readOrders(text);
    return "code" in found ? found.code : [found.heads, ...found.rows.map(({ row, cells }) => [row, ...cells])];
  };
  expect(read("\ufefforder;loop.width\r\n\r\n1;2,5 cm\r\n")).toEqual([
    ["order", "loop.width"],
    [2, ""],
    [3, "1", "2,5 cm"],
  ]);
  expect(read("order\tnote\n1\ta, b; c")).toEqual([
    ["order", "note"],
    [2, "1", "a, b; c"],
  ]);
  expect(read('order,"a;b;c;d",,\n"1 ""x""","two\nlines"')).toEqual([
    ["order", "a;b;c;d"],
    [2, '1 "x"', "two\nlines"],
  ]);
});

// By hand: two panels of 500 × 900 take 1 m of the narrow roll at 10.00, half a metre of the wide one.
test.each([
  [12, "wide", "Canvas: Buy 0.5 m of wide, €6.00. In all €6.00: no other way that was looked at costs less."],
  [24, "narrow", "Canvas: Buy 1 m of narrow, €10.00. In all €10.00: no other way that was looked at costs less."],
] as const)(
  "of several stocks a lay cuts into those for least money and says so (wide at %d)",
  async (wide, used, said) => {
    const roll = { kind: "roll", squaring: 0 };
    const canvas = { id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, price: { amount: 10, per: "m" } };
    const stock = [
      { ...roll, id: "narrow", width: 1000 },
      { ...roll, id: "wide", width: 2000, price: { amount: wide, per: "m" } },
    ];
    const shape = { kind: "rectangle", along: 500, across: 900 };
    const text = JSON.stringify({
      ...{ laywright: 1, name: "Quay", unit: "mm", currency: "EUR", gap: 0, margin: 0 },
      materials: [{ ...canvas, stock }],
      panels: [{ id: "front", material: "canvas", count: 2, seamAllowance: 0, grain: "lengthwise", shape }],
    });
    const task: LayTask = {
      folder: `rolls/${wide}`,
      orders: [{ name: "1", folder: `rolls/${wide}`, text }],
      ...{ withheld: {}, language: "en", write: [] },
      effort: { evaluations: 2000, seed: 1, mode: "free" },
    };
    const { faults, notes } = await doLayTask(task, folder);
    expect(faults).toEqual([]);
    expect(notes).toEqual([said]);
    const plan = JSON.parse(readFileSync(join(folder, `rolls/${wide}/plan.json`), "utf8"));
    const stocks = new Set(plan.materials[0].placed.map(({ stockId }: { stockId: string }) => stockId));
    expect([...stocks]).toEqual([used]);
  },
);
