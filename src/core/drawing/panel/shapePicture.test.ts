import { expect, test } from "vitest";
import { linesOf, runTogether, standOut, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { boxesOverlap } from "../../geometry/box.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { SHAPES, type ShapeId } from "../../panels/shapes/registry.ts";
import { PANEL_WORDS } from "../../words/words.ts";
import { shapePicture, usualSizes } from "./shapePicture.ts";

const IDS = Object.keys(SHAPES) as ShapeId[];
const pictureOf = (id: ShapeId) => {
  const sizes = usualSizes(id);
  const made = SHAPES[id].outline(sizes);
  if (!("contour" in made)) throw new Error(id);
  const box = contourBox(made.contour);
  const letters = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 22;
  return { sizes, box, letters, drawing: shapePicture(id, PANEL_WORDS.en, sizes)! };
};

test("every dimension of a shape is named once, in letters of a twenty-second of its size, and no name runs into another", () => {
  expect(IDS.length).toBeGreaterThan(10);
  for (const id of IDS) {
    const { drawing, letters, sizes } = pictureOf(id);
    const words = wordsOf(drawing);
    const places = SHAPES[id].places(sizes).filter(({ from, to }) => from[0] !== to[0] || from[1] !== to[1]);
    expect(
      words.map(({ text }) => text),
      id,
    ).toEqual(places.map(({ dimension, half }) => `${half ? "½ " : ""}${PANEL_WORDS.en.dimensions[dimension]}`));
    for (const { size } of words) expect(size).toBeCloseTo(letters, 9);
    expect(runTogether(words), id).toEqual([]);
    // Half a letter and more is left free round all.
    const { minX, minY, maxX, maxY } = drawing.box;
    const { box } = pictureOf(id);
    const reach = {
      minX: Math.min(box.minX, ...words.map((word) => word.minX)),
      maxX: Math.max(box.maxX, ...words.map((word) => word.maxX)),
    };
    expect(Math.abs(reach.minX - minX - letters), id).toBeLessThan(0.5 * letters);
    expect(Math.abs(maxX - reach.maxX - letters), id).toBeLessThan(0.5 * letters);
    const edge = 0.45 * letters;
    expect(
      standOut(words, { minX: minX + edge, minY: minY + edge, maxX: maxX - edge, maxY: maxY - edge }),
      id,
    ).toEqual([]);
  }
});

test("a dimension is drawn as long as it is measured, beside its way, with a tick across each end", () => {
  for (const id of IDS) {
    const { drawing, letters, sizes } = pictureOf(id);
    const lines = linesOf(drawing.items, "label").map((one) => one.split(/,? /u).map(Number));
    const places = SHAPES[id].places(sizes).filter(({ from, to }) => from[0] !== to[0] || from[1] !== to[1]);
    expect(lines, id).toHaveLength(3 * places.length);
    for (const [i, { from, to, off }] of places.entries()) {
      const [shaft, first, second] = lines.slice(3 * i, 3 * i + 3) as [number[], number[], number[]];
      const long = Math.hypot(to[0] - from[0], to[1] - from[1]);
      const [ux, uy] = [(to[0] - from[0]) / long, (to[1] - from[1]) / long];
      expect(Math.hypot(shaft[2]! - shaft[0]!, shaft[3]! - shaft[1]!)).toBeCloseTo(long, 1);
      // To the left of its way by a letter and a fifth for each step off.
      expect(-uy * (shaft[0]! - from[0]) + ux * (shaft[1]! - from[1])).toBeCloseTo(1.2 * letters * off, 1);
      expect(ux * (shaft[0]! - from[0]) + uy * (shaft[1]! - from[1])).toBeCloseTo(0, 1);
      for (const [tick, end] of [
        [first, shaft.slice(0, 2)],
        [second, shaft.slice(2)],
      ] as const) {
        expect(Math.hypot(tick[2]! - tick[0]!, tick[3]! - tick[1]!)).toBeCloseTo(letters, 1);
        expect((tick[0]! + tick[2]!) / 2).toBeCloseTo(end[0]!, 1);
        expect((tick[1]! + tick[3]!) / 2).toBeCloseTo(end[1]!, 1);
        expect(ux * (tick[2]! - tick[0]!) + uy * (tick[3]! - tick[1]!)).toBeCloseTo(0, 1);
      }
    }
  }
});

test("names of dimensions that lie outside a shape stand away from it, beside the middle of their own line", () => {
  for (const id of IDS) {
    const { drawing, letters, sizes, box } = pictureOf(id);
    const words = wordsOf(drawing);
    const lines = linesOf(drawing.items, "label").map((one) => one.split(/,? /u).map(Number));
    const places = SHAPES[id].places(sizes).filter(({ from, to }) => from[0] !== to[0] || from[1] !== to[1]);
    for (const i of places.keys()) {
      const [x0, y0, x1, y1] = lines[3 * i]!;
      const word = words[i]!;
      const [x, y] = [(x0! + x1!) / 2, (y0! + y1!) / 2];
      const line = {
        minX: Math.min(x0!, x1!),
        maxX: Math.max(x0!, x1!),
        minY: Math.min(y0!, y1!),
        maxY: Math.max(y0!, y1!),
      };
      if (line.minX !== line.maxX && line.minY !== line.maxY) continue;
      const isUpright = Math.abs(y1! - y0!) > Math.abs(x1! - x0!);
      const away = isUpright
        ? Math.min(Math.abs(word.minX - x), Math.abs(word.maxX - x))
        : Math.min(Math.abs(word.minY - y), Math.abs(word.maxY - y));
      if (isUpright) expect(Math.abs((word.minY + word.maxY) / 2 - y), id).toBeLessThan(0.35 * letters);
      else expect(Math.abs((word.minX + word.maxX) / 2 - x), id).toBeLessThan(0.3 * letters);
      expect(away, id).toBeGreaterThan(0.1 * letters);
      expect(away, id).toBeLessThan(0.75 * letters);
      // A line outside the shape's box has its name further outside.
      if (line.minX > box.maxX) expect(word.minX, id).toBeGreaterThan(line.maxX);
      if (line.maxX < box.minX) expect(word.maxX, id).toBeLessThan(line.minX);
      if (line.minY > box.maxY) expect(word.minY, id).toBeGreaterThan(line.maxY);
      if (line.maxY < box.minY) expect(word.maxY, id).toBeLessThan(line.minY);
      if (line.minX > box.maxX || line.maxX < box.minX || line.minY > box.maxY || line.maxY < box.minY)
        expect(boxesOverlap(word, box), id).toBe(false);
    }
  }
});

test("long strips are drawn short, other shapes at their usual sizes; sizes that make no shape have no picture", () => {
  expect(usualSizes("binding")).toMatchObject({ length: 300 });
  for (const id of IDS) {
    if (["binding", "bias-binding", "piping"].includes(id)) continue;
    expect(usualSizes(id)).toEqual(
      Object.fromEntries(SHAPES[id].dimensions.map(({ id: name, usual }) => [name, usual])),
    );
  }
  const [first] = IDS;
  const none = Object.fromEntries(SHAPES[first!].dimensions.map(({ id: name }) => [name, -5]));
  expect(() => shapePicture(first!, PANEL_WORDS.en, none as never)).not.toThrow();
});
