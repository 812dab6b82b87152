import { expect, test } from "vitest";
import { POUCH_TEMPLATE } from "../../../tests/tools/pouchTemplate.ts";
import { readJob } from "../job/projectJob.ts";
import { columnsOf } from "./columns.ts";
import { ordersOf } from "./orders.ts";
import { type OrderTable, tableOfGroups } from "./orderTable.ts";

const table = (heads: string[], ...rows: unknown[][]): OrderTable => ({
  heads,
  rows: rows.map((cells, i) => ({ row: i + 2, cells })),
});

const told = (heads: string[], ...rows: unknown[][]): string[] => {
  const { orders, problems } = ordersOf(POUCH_TEMPLATE, table(heads, ...rows));
  return [...problems, ...orders.flatMap(({ faults }) => faults)].map(
    ({ row, column, problem }) => `${row} ${column} ${problem.code}`,
  );
};

test("a head names a word of the order, a key, a part by id or name and its field, or a measure", () => {
  const heads = ["order", "Due", "bags", "loop.width", "wrist LOOP.length", "straps[0].name", "Front.shape.across"];
  const places = columnsOf(POUCH_TEMPLATE, [...heads, "height"]).map((column) =>
    "code" in column ? column.code : column.of === "place" ? column.place.join(" ") : column.of,
  );
  expect(places).toEqual([
    "order",
    "due",
    "bags",
    "straps 0 width",
    "straps 0 length",
    "straps 0 name",
    "panels 0 shape across",
    "measures 0 length",
  ]);
});

test("every wrong head is told at once, with what was meant", () => {
  const heads = ["order", "loup.width", "loop.widt", "loop.width", "straps[0].width", "front[", "", "colour"];
  const { problems, headsSound } = ordersOf(POUCH_TEMPLATE, table(heads, ["a"]));
  expect(headsSound).toBe(false);
  expect(
    problems.map(({ column, problem }) => [column, problem.code, "nearest" in problem && problem.nearest]),
  ).toEqual([
    ["loup.width", "order-column-unknown", "loop.width"],
    ["loop.widt", "order-column-unknown", "loop.width"],
    ["straps[0].width", "order-column-twice", false],
    ["front[", "order-column-unknown", null],
    ["", "order-column-unknown", null],
    ["colour", "order-column-unknown", null],
  ]);
});

test("two parts of one name are told apart by their ids", () => {
  const [front] = POUCH_TEMPLATE.panels;
  const twins = { ...POUCH_TEMPLATE, panels: [front, { ...front, id: "back" }] };
  expect(columnsOf(twins, ["Front.count", "front.count"])).toEqual([
    { head: "Front.count", of: "place", place: ["panels", 0, "count"] },
    { code: "order-column-twice", path: "front.count", first: "Front.count" },
  ]);
  const others = { ...twins, panels: twins.panels.map((panel, i) => ({ ...panel, id: `side ${i}` })) };
  expect(columnsOf(others, ["front.count"])).toEqual([
    { code: "order-column-ambiguous", path: "front.count", parts: ["side 0", "side 1"] },
  ]);
});

test("every wrong row is told with its row and column", () => {
  expect(
    told(
      ["due", "order", "bags"],
      ["2027-02-29", "a", "1"],
      ["2028-02-29", "", "2"],
      ["", "a", "2"],
      ["", "", ""],
      ["31.3.2027", "b", "1", "", "x"],
      ["2027-04-31", "c"],
    ),
  ).toEqual([
    "3 order order-nameless",
    "4 order order-name-twice",
    "2 due due-unreadable",
    "6 null order-too-many-cells",
    "6 due due-unreadable",
    "7 due due-unreadable",
  ]);
  expect(told(["bags"], ["1"])).toContain("null null order-column-missing");
  expect(told(["order"])).toEqual(["null null orders-empty"]);
});

test("cells take the place of the template's values, empty ones leave them; a fault leads to its column", () => {
  const heads = ["order", "bags", "loop.width", "front.name", "height", "canvas.oneWay", "front.count"];
  const { orders, problems } = ordersOf(
    POUCH_TEMPLATE,
    table(heads, ["7", "2", "1 in", "12", "14,5 cm", "yes", ""], ["8", "0", "", "", "14 ells", "", "many"]),
  );
  expect(problems).toEqual([]);
  const [good, bad] = orders;
  const job = readJob(good!.text());
  expect(job.ok && job.value.project).toMatchObject({
    name: "Quay pouch, 7",
    bags: 2,
    straps: [{ width: { mm: 25.4 } }],
    panels: [{ name: "12", count: 2 }],
    measures: [{ length: 145 }],
    materials: [{ oneWay: "up" }],
  });
  const read = readJob(bad!.text());
  const columns = read.ok ? [] : read.problems.map((problem) => bad!.columnOf(problem));
  expect(columns.sort()).toEqual(["bags", "front.count", "height"]);
});

test("a list of groups is a table of all their keys; anything else is none", () => {
  expect(tableOfGroups([{ order: "1" }, { order: "2", bags: 3 }])).toEqual({
    heads: ["order", "bags"],
    rows: [
      { row: 1, cells: ["1", undefined] },
      { row: 2, cells: ["2", 3] },
    ],
  });
  for (const other of [null, 3, {}, [1], [[]], [null]]) expect(tableOfGroups(other)).toBe(null);
});
