import { expect, test } from "vitest";
import { build, type Wish } from "../../../../tests/tools/makersStraps.ts";
import { areasOf, linesOf, runTogether, standOut, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { type Box, boxesOverlap, boxOfAll } from "../../geometry/box.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import type { StrapResult } from "../../straps/build/strapResult.ts";
import type { ConstructionId } from "../../straps/wish/strapWish.ts";
import { STRAP_WORDS } from "../../words/words.ts";
import type { Drawing, DrawnArea, DrawnLine } from "../list/drawing.ts";
import { strapSectionArt } from "./foldPicture.ts";
import { strapPictures } from "./strapPictures.ts";

const SLIDER = (kinds: readonly ("ring" | "clasp" | "slider")[]): Wish["hardware"] =>
  kinds.map((kind) => ({ kind, innerWidth: 39, ...(kind === "slider" ? { opening: 30 } : { length: 20 }) }));
const STRAPS: readonly (readonly [ConstructionId, string, Wish])[] = [
  ["fourfold", "canvas", {}],
  ["fourfold", "stout vinyl", { width: 25, folds: { clearance: 1 } }],
  ["three-raw", "vinyl", { width: 20 }],
  ["three-hemmed", "canvas", { width: 30, materials: { outer: "canvas", padding: "foam" } }],
  ["two-layer", "vinyl", { materials: { outer: "vinyl", facing: "canvas" } }],
  ["sewn-turned", "canvas", { width: 45 }],
  ["tube", "cotton", { width: 15 }],
  ["corded", "4 oz leather", { width: null, core: { cordDiameter: 10 } }],
  ["fourfold", "canvas", { adjustment: "one-piece", hardware: SLIDER(["ring", "slider"]) }],
  ["three-raw", "vinyl", { adjustment: "two-part", hardware: SLIDER(["clasp", "slider"]) }],
];
const ROOMS = [118, 180];

interface Shown {
  readonly stem: string;
  readonly drawing: Drawing;
  readonly strap: StrapResult;
  readonly room: number;
}

const straps = STRAPS.map(([construction, outer, more]) => build(construction, outer, more));

/** Every picture, drawn anew by each test that asks: one paper and language by the strap's number, so that all come. */
const shown = (stem = ""): Shown[] =>
  straps.flatMap((strap, i) => {
    const room = ROOMS[i % 2]!;
    // Every second strap with inches beside the millimetres.
    const taken = i % 2 === 0 ? strap : ({ ...strap, inches: null } as never);
    const words = STRAP_WORDS[i % 3 === 0 ? "de" : "en"];
    return strapPictures(taken, words, room)
      .filter((picture) => picture.stem.startsWith(stem))
      .map((picture) => ({ stem: picture.stem, drawing: picture.drawing, strap, room }));
  });
const sections = () => shown("section");
const strips = () => shown("strip-");

const areas = ({ items }: Drawing, ...tones: readonly string[]): DrawnArea[] =>
  items.filter((item): item is DrawnArea => item.kind === "area" && tones.includes(item.tone));
const lines = ({ items }: Drawing, role: string): DrawnLine[] =>
  items.filter((item): item is DrawnLine => item.kind === "line" && item.role === role);
const boxOf = (drawn: readonly DrawnArea[]): Box =>
  boxOfAll(drawn.flatMap(({ contours }) => contours.map(contourBox)));

test("no words of a picture run into others, all stand clear of its edges, and none is too small to read", () => {
  expect(shown().length).toBeGreaterThan(20);
  for (const { stem, drawing, strap } of shown()) {
    const words = wordsOf(drawing);
    const where = `${strap.wish.construction} ${stem}`;
    const { minX, minY, maxX, maxY } = drawing.box;
    expect([minX, minY]).toEqual([0, 0]);
    expect(runTogether(words), where).toEqual([]);
    expect(standOut(words, { minX: 5.5, minY: 5, maxX: maxX - 4.5, maxY: maxY - 5 }), where).toEqual([]);
    for (const { text, size } of words) expect(size, text).toBeGreaterThanOrEqual(1.8);
    // The name stands on top of all, largest and bold.
    const top = words.toSorted((a, b) => b.y - a.y)[0]!;
    expect([top.bold, top.size, top.x], where).toEqual([true, 4, 6]);
    expect(maxY - top.y, where).toBeCloseTo(stem === "threading" ? 9 : 10, 6);
    // A legend's squares, 4 mm wide, stand clear of its words.
    const squares = areas(drawing, "face", "back", "facing", "interfacing", "webbing", "shade")
      .map(({ contours }) => contourBox(contours[0]!))
      .filter(({ minX: left, maxX: right }) => Math.abs(right - left - 4) < 1e-9);
    for (const square of squares)
      expect(words.filter((word) => boxesOverlap(word, square)).map(({ text }) => text)).toEqual([]);
    expect(words.filter(({ bold }) => !bold).every(({ size }) => size < 4)).toBe(true);
  }
});

test("a picture is as wide as the room it has, or as its strap and words need", () => {
  for (const { stem, drawing, room } of shown()) {
    const ink = Math.max(...wordsOf(drawing).map((word) => word.maxX));
    if (drawing.box.maxX > room && stem !== "threading") expect(drawing.box.maxX - ink, stem).toBeLessThan(8);
  }
});

test("a section is as many times as large as it says, and no step of the scale larger would have room", () => {
  // Whole factors that can be reckoned with: 1 to 6, then 8, 10, 12, 15 and 20.
  const steps = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20];
  for (const { drawing, strap, room } of sections()) {
    const said = wordsOf(drawing)
      .map(({ text }) => text)
      .join(" ");
    const times = Number(/(\d+) times true size|(\d+)-fach/u.exec(said)?.slice(1).find(Boolean) ?? 1);
    const cloth = areas(drawing, "face", "back", "facing", "interfacing", "webbing", "shade").filter(
      // The legend's squares are 4 mm wide.
      ({ contours }) => contourBox(contours[0]!).maxX - contourBox(contours[0]!).minX !== 4,
    );
    const box = boxOf(cloth);
    expect(steps).toContain(times);
    expect((box.maxX - box.minX) / times, strap.wish.construction).toBeCloseTo(
      // A corded handle has its fin besides.
      strap.finishedWidth +
        (strap.section.kind === "wrapped" ? strap.section.seamAllowance - strap.section.ply.thickness : 0),
      1,
    );
    expect(box.maxX - box.minX).toBeLessThanOrEqual(120.5);
    const next = steps[steps.indexOf(times) + 1];
    const thickness = wordsOf(drawing).find(({ x, y }) => x > box.maxX + 4 && y > box.minY - 2 && y < box.maxY)!;
    const beside = drawing.box.maxX - box.maxX;
    if (next !== undefined) {
      const taken = ((box.maxX - box.minX) / times) * next;
      expect(
        taken > 120 || taken + 12 + 6 + (thickness.maxX - thickness.minX) > room - 0.5,
        `${times} ${beside}`,
      ).toBe(true);
    }
    // Stitches go through the whole stack and 2 mm beyond it, from the table on.
    for (const { contour } of lines(drawing, "stitch")) {
      const [x0, y0, , x1, y1] = contour.vertices;
      // The fin of a corded handle does not lie on the table.
      if (y0 === y1 || strap.section.kind === "wrapped") continue;
      expect(x0).toBe(x1);
      expect(Math.min(y0!, y1!)).toBeLessThan(box.minY + 0.1);
      expect(Math.max(y0!, y1!)).toBeLessThanOrEqual(box.maxY + 2.01);
      expect(Math.abs(y1! - y0!)).toBeGreaterThan(4);
    }
    // Raw edges are bars across their layers; they and stitches are explained where there are any, and only then.
    const art = strapSectionArt(strap);
    const cuts = lines(drawing, "cut").map(({ contour }) => contour.vertices);
    const bars = cuts
      .filter(([, y0]) => y0! >= box.minY - 0.1)
      .map(([x0, y0, , x1, y1]) => Math.hypot(x1! - x0!, y1! - y0!));
    expect(bars).toEqual(
      art.rawEdges.map(([x0, y0, x1, y1]) => expect.closeTo(Math.hypot(x1 - x0, y1 - y0) * times, 6)),
    );
    const legend = (role: string) =>
      lines(drawing, role)
        .map(({ contour }) => contour.vertices)
        .filter(([, y0, , , y1]) => y0! < box.minY - 5 && y0 === y1)
        .map(([x0, , , x1]) => Math.round((x1! - x0!) * 1e6) / 1e6);
    expect(legend("cut")).toEqual(art.rawEdges.length > 0 ? [5] : []);
    expect(legend("stitch")).toEqual(art.stitches.length > 0 ? [7] : []);
    const squares = drawing.items
      .flatMap((item) => (item.kind === "area" ? [contourBox(item.contours[0]!)] : []))
      .filter(({ minX, maxX }) => Math.abs(maxX - minX - 4) < 1e-9);
    expect(squares).toHaveLength(art.layers.length);
    for (const { minY, maxY } of squares) expect(maxY - minY).toBeCloseTo(2.6, 9);
    // The dimension of the width reaches from edge to edge, that of the thickness from the table to the top.
    const dimension = linesOf(drawing.items, "label").map((one) => one.split(/,? /u).map(Number));
    const level = dimension.find(
      ([x0, y0, x1, y1]) => y0 === y1 && Math.abs(x1! - x0! - (box.maxX - box.minX)) < 0.2,
    );
    expect(level, `${strap.wish.construction} width`).toBeDefined();
    expect(level![1]!).toBeLessThan(box.minY - 5);
    expect(thickness.x - box.maxX).toBeCloseTo(6, 1);
    const [low, top] = [
      box.minY,
      box.minY + (strapSectionArt(strap).height * (box.maxX - box.minX)) / strapSectionArt(strap).width,
    ];
    const upright = dimension.filter(
      ([x0, y0, x1, y1]) => x0 === x1 && y1! > y0! && Math.abs(x0! - box.maxX - 4) < 0.1,
    );
    const beyond = top - low > 4.81 ? 0 : 3.2;
    expect(upright.map(([, y0, , y1]) => [y0, y1])).toContainEqual(
      [low - beyond, top + beyond].map((mm) => expect.closeTo(mm, 0)),
    );
  }
});

test("the strip's lines lie where their words say, each led to by its own line, none over another", () => {
  let seen = 0;
  for (const { drawing, strap, stem } of strips()) {
    const [back] = areas(drawing, "back");
    const box = contourBox(back!.contours[0]!);
    const words = wordsOf(drawing);
    const width = Number(
      /(?:cut width|Schnittbreite)[^\d]*([\d.,]+) mm/u
        .exec(words.map(({ text }) => text).join(" "))?.[1]
        ?.replace(",", "."),
    );
    const piece = strap.pieces.find(({ id }) => stem.endsWith(id.replace(`${strap.wish.id}-`, "")))!;
    const high = contourBox(piece.contour).maxY;
    expect(width).toBeCloseTo(high, 0);
    // To a scale: as high as the strip, at most 28 mm.
    expect(box.maxY - box.minY).toBeCloseTo(Math.min(28, high), 9);
    const leaders = lines(drawing, "label").filter(({ contour }) => contour.vertices.length === 9);
    for (const { contour } of leaders) {
      const [x0, y0, , , y1, , x2, y2] = contour.vertices;
      expect(y1).toBe(y2);
      expect(x0!).toBeGreaterThan(box.maxX - 4);
      const word = words.find(({ x, minY, maxY }) => x > x2! && x < x2! + 2 && minY < y2! && maxY > y2!)!;
      const mm = Number(/([\d.,]+) mm/u.exec(word.text)![1]!.replace(",", "."));
      const at = ((y0! - box.minY) / (box.maxY - box.minY)) * high;
      expect(Math.abs(at - mm), word.text).toBeLessThan(0.06);
      // The line itself lies at the same height and ends before the strip is broken off.
      const drawn = ["fold", "stitch", "tape", "mark"].flatMap((role) => lines(drawing, role));
      expect(drawn.some((one) => Math.abs(one.contour.vertices[1]! - y0!) < 1e-9)).toBe(true);
      seen++;
    }
    // Labels with room for each other are level with their lines.
    const heights = leaders.map(({ contour }) => contour.vertices[1]!);
    if (heights.every((y, i) => i === 0 || y - heights[i - 1]! > 5))
      for (const { contour } of leaders) expect(contour.vertices[4]).toBeCloseTo(contour.vertices[1]!, 9);
    expect(leaders).toHaveLength(
      piece.lines.filter(({ contour: { vertices } }) => vertices.length === 6 && vertices[1] === vertices[4])
        .length,
    );
  }
  expect(seen).toBeGreaterThan(15);
});

test("a fixed strap has no threading; a strip without lines has no picture; captions name construction and part", () => {
  const fixed = strapPictures(build("fourfold", "canvas"));
  expect(fixed.map(({ stem }) => stem)).toEqual(["section", "strip-outer"]);
  expect(fixed[0]!.caption).toBe("Folded in four (4 layers)");
  const two = strapPictures(
    build("three-raw", "vinyl", { adjustment: "two-part", hardware: SLIDER(["clasp", "slider"]) }),
  );
  expect(two.map(({ stem }) => stem).at(-1)).toBe("threading");
  expect(areasOf(two.at(-1)!.drawing.items, "ink")).not.toEqual([]);
});
