import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { needsTable, orderNeeds } from "../tools/orderModel.ts";

test("orders worked out by hand", () => {
  const order = {
    name: "by hand",
    readMs: 10,
    searchMs: 489,
    drawMs: 479,
    queueMs: 2,
    taskBytes: 1500,
    plansBytes: 500,
    filesBytes: 100_000,
  };
  // 864,000 a day are 10 a second: 10 × 500 ms are 5 cores, at half of each 10; both ways 4,000 bytes an order.
  expect(orderNeeds(order, { ordersADay: 864_000, planned: 0.5, waiting: 100 })).toEqual({
    ordersASecond: 10,
    workerCores: 10,
    batchCores: 10,
    networkBits: 320_000,
    storeCommands: 100,
    storeBytes: 2_000_000,
    diskBytes: 86_400_000_000,
  });
});

test("the page about a million orders says what the figures come to", () => {
  const page = readFileSync(new URL("../../docs/explanation/a-million-orders.md", import.meta.url), "utf8");
  expect(page.split(/<!-- \/?needs -->\n/u)[1]).toBe(`${needsTable()}\n`);
});
