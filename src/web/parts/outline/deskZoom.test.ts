import { expect, test } from "vitest";
import { type DeskView, toScreen, toTable } from "./deskView.ts";
import { viewCloser, zoomed } from "./deskZoom.ts";

const FIT: DeskView = { width: 560, height: 392, scale: 1.5, left: -40, top: 260 };

test("what lies under the hand stays there as the desk comes closer and goes away again", () => {
  for (const [px, py] of [
    [0, 0],
    [560, 392],
    [123, 300],
  ] as const) {
    const under = toTable(FIT, px, py);
    const once = zoomed(FIT, null, 3, px, py)!;
    const twice = zoomed(FIT, once, 1.7, px, py)!;
    for (const closer of [once, twice]) {
      const [x, y] = toScreen(viewCloser(FIT, closer), ...under);
      expect(x).toBeCloseTo(px, 9);
      expect(y).toBeCloseTo(py, 9);
    }
    expect(viewCloser(FIT, twice).scale).toBeCloseTo(1.5 * 5.1, 9);
    expect(zoomed(FIT, twice, 1 / 5.1, px, py)).toBeNull();
  }
});

test("never further away than the whole, and no closer than its limit", () => {
  expect(zoomed(FIT, null, 0.2, 100, 100)).toBeNull();
  expect(zoomed(FIT, null, 1e6, 100, 100)!.times).toBe(24);
});
