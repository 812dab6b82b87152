import { expect, test } from "vitest";
import { cutSequence, tableAfter } from "./cutSequence.ts";
import { type CutBox, cutTreeOf } from "./cutTree.ts";
import { tidyTree } from "./tidyTree.ts";

function sequenceOf(box: CutBox, pieces: CutBox[], goesOn = true) {
  const tree = cutTreeOf(box, pieces, 1e-6);
  if (tree === null) throw new Error("cannot be cut");
  return cutSequence(tidyTree(tree, 1e-6), goesOn);
}

const grid = (nx: number, ny: number, dx: number, dy: number): CutBox[] =>
  Array.from({ length: nx * ny }, (_, i) => ({ x: dx * (i % nx), y: dy * Math.floor(i / nx), dx, dy }));

test("five straps side by side: straighten, take the length off, rip at one setting", () => {
  const { steps, cuts, settings } = sequenceOf({ x: 0, y: 0, dx: 700, dy: 520 }, grid(1, 5, 700, 100));
  expect(steps.map(({ kind }) => kind)).toEqual(["straighten", "crosscut", "rip", "rip", "rip", "rip", "rip"]);
  expect(steps.map(({ setting }) => setting)).toEqual([0, 700, 100, 100, 100, 100, 100]);
  expect(steps.map(({ sameSetting }) => sameSetting)).toEqual([false, false, false, true, true, true, true]);
  expect({ cuts, settings }).toEqual({ cuts: 7, settings: 2 });
  expect(steps.at(-1)?.rest).toEqual({ kind: "offcut", box: { x: 0, y: 500, dx: 700, dy: 20 } });
});

test("a remnant that ends with the pieces needs no cut at its end", () => {
  const { steps } = sequenceOf({ x: 0, y: 0, dx: 600, dy: 300 }, grid(2, 1, 300, 300), false);
  expect(steps.map(({ kind, at }) => [kind, at])).toEqual([
    ["straighten", 0],
    ["crosscut", 300],
  ]);
});

test("strips that need no new ruler setting come first", () => {
  // Two lengths; the strips of each are cut at 100 and 150 by turns.
  const pieces = [
    ...[0, 100].map((x) => ({ x, y: 0, dx: 100, dy: 50 })),
    ...[0, 150].map((x) => ({ x, y: 50, dx: 150, dy: 60 })),
    ...[0, 100].map((x) => ({ x, y: 110, dx: 100, dy: 50 })),
  ];
  const { steps } = sequenceOf({ x: 0, y: 0, dx: 300, dy: 160 }, pieces, false);
  const crosscuts = steps.filter(({ kind }) => kind === "crosscut").map(({ setting }) => setting);
  expect(crosscuts).toEqual([150, 100, 100, 100, 100]);
});

test("every state covers the cloth once, and the last one holds every piece", () => {
  const pieces = [...grid(3, 2, 120, 80), { x: 0, y: 160, dx: 200, dy: 90 }, { x: 360, y: 0, dx: 90, dy: 250 }];
  const box = { x: 0, y: 0, dx: 450, dy: 260 };
  const sequence = sequenceOf(box, pieces);
  for (let n = 0; n <= sequence.steps.length; n++) {
    const area = tableAfter(sequence, n).reduce((sum, part) => sum + part.box.dx * part.box.dy, 0);
    expect(area).toBeCloseTo(box.dx * box.dy, 6);
  }
  const end = tableAfter(sequence, sequence.steps.length);
  expect(end.filter(({ kind }) => kind === "cloth")).toEqual([]);
  const cut = end.flatMap((part) => (part.kind === "piece" ? [part.piece] : []));
  expect(cut.sort((a, b) => a - b)).toEqual(pieces.map((_, i) => i));
});
