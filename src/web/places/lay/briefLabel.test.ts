import { expect, test } from "vitest";
import { briefLabel } from "./briefLabel.ts";
import type { PieceKind } from "./pieceKind.ts";

const kind = (along: number, across: number): PieceKind => ({
  ...{ signature: "", cutPath: "", lines: [], name: "", detail: "", count: 1, room: 0.9 },
  ...{ middleX: along / 2, middleY: across / 2, along, across },
});

test("a name is broken where its letters become largest, and not where one line has the room", () => {
  // Two lines of a square leave room for letters half as high again as one line of 23 letters.
  const square = briefLabel(kind(210, 200), "Side pocket, mirrored 1/3");
  expect(square.lines.length).toBeGreaterThan(1);
  expect(square.lines.join(" ")).toBe("Side pocket, mirrored 1/3");
  expect(briefLabel(kind(1200, 75), "Shoulder strap 1/3").lines).toEqual(["Shoulder strap 1/3"]);
  expect(briefLabel(kind(200, 200), "Tab").lines).toEqual(["Tab"]);
});

test("lines stay inside the piece, with room for the grain arrow", () => {
  for (const [along, across] of [
    [210, 250],
    [250, 210],
    [76, 260],
    [340, 75],
  ] as const) {
    const { lines, size } = briefLabel(kind(along, across), "Closing strap, outer 2/3");
    const [long, short] = [Math.max(along, across), Math.min(along, across)];
    expect(size).toBeGreaterThan(0);
    expect(lines.length * size).toBeLessThan(short);
    expect(Math.max(...lines.map((line) => line.length)) * 0.55 * size).toBeLessThan(long);
  }
});
