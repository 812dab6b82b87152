import { expect, test, vi } from "vitest";
import { rectangleContour } from "../../geometry/contourShapes.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import { labelSpot } from "../list/labelSpot.ts";
import { layDrawing, type PieceArt } from "./layDrawing.ts";

// Counts the looks for room.
vi.mock("../list/labelSpot.ts", async (original) => {
  const module = await original<typeof import("../list/labelSpot.ts")>();
  return { ...module, labelSpot: vi.fn(module.labelSpot) };
});

const COPIES = 500;
const placements = Array.from({ length: COPIES }, (_, copy) => ({
  pieceId: "tab",
  copy,
  stockId: "roll",
  x: 20 * copy,
  y: 10,
  turnDeg: 0,
  mirrored: false,
}));
const plan = { placements, uses: [{ stockId: "roll", usedLength: 20 * COPIES }] } as never;
const stock = { kind: "roll", id: "roll", width: 300, length: null, flaws: [] } as never;

function looks(along: number, across: number): { readonly looked: number; readonly words: number } {
  const tab: PieceArt = {
    name: "a name that is longer than the tab is wide",
    detail: "16 mm × 9 mm",
    contour: rectangleContour(0, 0, along, across),
    outline: solid(rectangleRing(0, 0, along, across)),
    lines: [],
    count: COPIES,
  };
  vi.mocked(labelSpot).mockClear();
  const { drawing } = layDrawing(stock, plan, new Map([["tab", tab]]), "both");
  return {
    looked: vi.mocked(labelSpot).mock.calls.length,
    words: drawing.items.filter(({ kind }) => kind === "text").length,
  };
}

test("copies without room for their name are not each measured anew", () => {
  const { looked, words } = looks(16, 9);
  expect(words).toBe(0);
  // Names with one, two and three figures; 84 ways to put each.
  expect(looked).toBeLessThanOrEqual(3 * 84);
});

test("copies with room look for it about once each", () => {
  const { looked, words } = looks(16, 250);
  expect(words).toBeGreaterThanOrEqual(COPIES);
  expect(looked).toBeLessThanOrEqual(COPIES + 3 * 84);
});
