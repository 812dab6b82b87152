import { expect, test } from "vitest";
import { tapeTicks } from "./tapeTicks.ts";

test("a metric tape numbers round centimetres and marks whole millimetres", () => {
  const ticks = tapeTicks("metric", 0, 1000, 0.8);
  expect(ticks.filter((tick) => tick.text !== null).map((tick) => tick.text)).toEqual([
    "0",
    "10",
    "20",
    "30",
    "40",
    "50",
    "60",
    "70",
    "80",
    "90",
    "100",
  ]);
  for (const { mm } of ticks) expect(mm).toBeCloseTo(Math.round(mm), 9);
});

test("an inch tape divides by halves", () => {
  for (const { mm } of tapeTicks("inches", 0, 300, 4))
    expect((mm / 25.4) * 16).toBeCloseTo(Math.round((mm / 25.4) * 16), 6);
});

test("marks are as far apart as an eye can tell, and start where the view starts", () => {
  for (const scale of [0.02, 0.1, 0.5, 1, 3, 10])
    for (const system of ["metric", "inches"] as const) {
      const ticks = tapeTicks(system, 137, 137 + 1200 / scale, scale);
      expect(ticks[0]!.mm).toBeGreaterThanOrEqual(137);
      expect(ticks.length).toBeGreaterThan(3);
      for (let i = 1; i < ticks.length; i++) expect((ticks[i]!.mm - ticks[i - 1]!.mm) * scale).toBeGreaterThan(5.9);
    }
});
