import { expect, test } from "vitest";
import { POUCH_TEMPLATE } from "../../../tests/tools/pouchTemplate.ts";
import type { ProjectJob } from "../job/projectJob.ts";
import { readJob } from "../job/projectJob.ts";
import { joinedJob, ordersPieces } from "./joinedJob.ts";
import {
  BatchCloths,
  contestedStock,
  orderLays,
  type PlannedOrder,
  plannedOrder,
  type Together,
} from "./together.ts";

function jobOf(more: object = {}): ProjectJob {
  const read = readJob(JSON.stringify({ ...POUCH_TEMPLATE, ...more }));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const cloths = new BatchCloths();
const order = (name: string, more: Partial<PlannedOrder> = {}, job = jobOf()): PlannedOrder => ({
  ...plannedOrder({ row: 2, name, due: null, shade: null }, job, cloths),
  ...more,
});
const names = (orders: PlannedOrder[], together: Together): string[] =>
  orderLays(orders, together).map((lay) => lay.orders.map(({ name }) => name).join(" "));

test("orders lie together by due date or all, never across shades, cloths or pins", () => {
  const [due, shade] = [{ due: "2027-03-12" }, { shade: "rust" }];
  const pin = { material: "canvas", stock: "roll", piece: "front", copy: 0, x: 0, y: 0, turn: 0 };
  const orders = [
    order("a"),
    order("b", due),
    order("c", shade),
    order("d", { ...shade, ...due }),
    order("e", due),
    order("other gap", {}, jobOf({ gap: 3 })),
    order("pinned", {}, jobOf({ pins: [pin] })),
    order("f"),
  ];
  expect(names(orders, "all")).toEqual(["a b e f", "c d", "other gap", "pinned"]);
  expect(names(orders, "due")).toEqual(["a f", "b e", "c", "d", "other gap", "pinned"]);
  expect(names(orders, "none")).toHaveLength(orders.length);
  expect(orders.map(({ alone }) => alone)).toEqual([null, null, null, null, null, null, "pins", null]);
});

test("what comes to more than a thousand pieces is split between orders", () => {
  const orders = ["a", "b", "c", "d"].map((name) => order(name, { pieces: 400 }));
  expect(names(orders, "all")).toEqual(["a b", "c d"]);
  expect(names([order("large", { pieces: 5000 }), order("x")], "all")).toEqual(["large", "x"]);
});

test("orders joined have the same pieces and counts as by themselves, each under its order's name", () => {
  const three = { bags: 3, panels: [{ ...POUCH_TEMPLATE.panels[0]!, name: "Tall front", count: 1, mirrored: 1 }] };
  const jobs = [
    { name: "12", job: jobOf() },
    { name: "13", job: jobOf(three) },
  ];
  const joined = joinedJob(jobs, String);
  expect(joined.pieces.map(({ name, count, mirroredCount }) => `${name} ${count} ${mirroredCount}`)).toEqual([
    "12: Wrist loop 1 0",
    "12: Front 2 0",
    "13: Wrist loop 3 0",
    "13: Tall front 3 3",
  ]);
  expect(joined.project).toMatchObject({ name: "12, 13", bags: 4, straps: [], panels: [] });
  const own = jobs.flatMap(({ job }) => job.lays.flatMap(({ problem }) => problem.pieces));
  const [lay] = joined.lays;
  expect(joined.lays).toHaveLength(1);
  expect(lay!.problem.pieces.map(({ count, outline }) => [count, outline])).toEqual(
    own.map(({ count, outline }) => [count, outline]),
  );
  expect(joinedJob([...jobs, ...jobs.map((one) => ({ ...one, name: "x".repeat(60) }))], String).project.name).toBe(
    "4",
  );
});

test("ids stay apart whatever orders are called", () => {
  const [strap] = POUCH_TEMPLATE.straps;
  const odd = jobOf({ straps: [{ ...strap, id: "b: loop" }], panels: [] });
  const jobs = [
    { name: "a", job: odd },
    { name: "a: b", job: jobOf() },
  ];
  const ids = ordersPieces(jobs).flatMap((pieces) => pieces.map(({ id }) => id));
  expect(new Set(ids).size).toBe(ids.length);
});

test("a leftover goes to the first lay; later ones lie on the open roll, or are told there is not enough", () => {
  const lays = orderLays([order("a"), order("b"), order("rust", { shade: "rust" })], "none");
  const later = { canvas: ["leftover"] };
  expect(lays.map(({ withheld }) => withheld)).toEqual([{}, later, later]);
  const [canvas] = POUCH_TEMPLATE.materials;
  const limited = (stock: object) => jobOf({ materials: [{ ...canvas, stock: [stock] }] });
  const roll = limited({ kind: "roll", id: "roll", width: 500, length: "1 m" });
  const off = (length: number) => [{ materialId: "canvas", stockId: "roll", length }];
  const three = orderLays(
    ["a", "b", "c"].map((name) => order(name, {}, roll)),
    "none",
  );
  const took = (...lengths: number[]) =>
    contestedStock(three.map(({ measured }, i) => ({ measured, taken: off(lengths[i]!) })));
  // 400 + 600 mm are the whole metre; the third 1 mm is not there. What is too long leaves room for what is short.
  expect(took(400, 600, 1)).toEqual([[], [], ["roll"]]);
  expect(took(400, 601, 300)).toEqual([[], ["roll"], []]);
  const skin = limited({ kind: "skin", id: "roll", shape: { kind: "rectangle", along: 900, across: 400 } });
  const two = orderLays([order("a", {}, skin), order("b", {}, skin)], "none");
  expect(contestedStock(two.map(({ measured }) => ({ measured, taken: off(0) })))).toEqual([[], ["roll"]]);
  expect(contestedStock(two.map(({ measured }) => ({ measured, taken: [] })))).toEqual([[], []]);
});
