import { expect, test } from "vitest";
import { areasOf, linesOf, runTogether, standOut, wordsOf } from "../../../../tests/tools/writtenWords.ts";
import { rectangleRing, reversedRing, solid } from "../../geometry/ring.ts";
import { yieldCurvePicture, yieldPlanPicture } from "./yieldPictures.ts";

const strip = (x: number, y: number, along: number, across: number, label: string) => ({
  x,
  y,
  along,
  across,
  label,
});

test("a piece of cloth smaller than the sheet is drawn at true size, its strips and flaws where they lie", () => {
  const cloth = { outer: rectangleRing(-10, 5, 120, 60), holes: [reversedRing(rectangleRing(80, 40, 10, 10))] };
  const flaws = [solid(rectangleRing(60, 30, 5, 5))];
  const { box, items } = yieldPlanPicture(cloth, flaws, [strip(-10, 5, 70, 20, "A")], "two straps");
  // 6 mm of margin, and 6 for the line of words below.
  expect(areasOf(items, "cloth")).toEqual(["6 12, 126 12, 126 72, 6 72", expect.stringContaining("96 47")]);
  expect(areasOf(items, "flaw")).toEqual(["76 37, 81 37, 81 42, 76 42"]);
  expect(linesOf(items, "mark")).toEqual([...areasOf(items, "cloth"), ...areasOf(items, "flaw")]);
  expect(areasOf(items, "piece")).toEqual(["6 12, 76 12, 76 32, 6 32"]);
  expect(linesOf(items, "cut")).toEqual(areasOf(items, "piece"));
  expect(box).toEqual({ minX: 0, minY: 0, maxX: 180, maxY: 78 });
  const [label, caption] = wordsOf({ box, items });
  expect([label!.size, caption!.size, caption!.x, caption!.y]).toEqual([3, 3, 6, 6]);
  expect((label!.minX + label!.maxX) / 2).toBeCloseTo(41, 0);
  expect((label!.minY + label!.maxY) / 2).toBeCloseTo(22, 0);
});

test("a longer piece is drawn smaller, all alike, to fill the width between the margins", () => {
  const { box, items } = yieldPlanPicture(
    solid(rectangleRing(-20, 40, 336, 100)),
    [],
    [strip(148, 90, 84, 50, "A")],
    "",
  );
  expect(areasOf(items, "cloth")).toEqual(["6 12, 174 12, 174 62, 6 62"]);
  expect(areasOf(items, "piece")).toEqual(["90 37, 132 37, 132 62, 90 62"]);
  expect(box).toEqual({ minX: 0, minY: 0, maxX: 180, maxY: 68 });
  const [label] = wordsOf({ box, items });
  expect((label!.minX + label!.maxX) / 2).toBeCloseTo(111, 0);
  expect((label!.minY + label!.maxY) / 2).toBeCloseTo(49.5, 0);
});

test("labels shrink to their strips and are left out where nobody could read them; a long caption widens the picture", () => {
  const strips = [strip(0, 0, 100, 3, "low"), strip(0, 10, 6, 10, "narrow"), strip(0, 30, 100, 1.9, "too low")];
  const caption = "what is cut first is written on each, and what is cut last is written on none of them. ".repeat(
    2,
  );
  const { box, items } = yieldPlanPicture(solid(rectangleRing(0, 0, 150, 60)), [], strips, caption);
  const words = wordsOf({ box, items });
  expect(words.map(({ text }) => text.trim())).toEqual(["low", "narrow", caption.trim()]);
  const [low, narrow] = words;
  expect(low!.size).toBeCloseTo(2.1, 9);
  expect(low!.minY).toBeGreaterThan(12);
  expect(low!.maxY).toBeLessThan(15);
  expect(narrow!.minX).toBeGreaterThan(6);
  expect(narrow!.maxX).toBeLessThan(12);
  expect(narrow!.maxX - narrow!.minX).toBeGreaterThan(4.5);
  expect(standOut(words, box)).toEqual([]);
  expect(box.maxX - words.at(-1)!.maxX).toBeGreaterThan(4);
  expect(box.maxX - words.at(-1)!.maxX).toBeLessThan(9);
});

const STEPS = [
  { length: 200, count: 4, label: "20 cm" },
  { length: 260, count: 5, label: "26 cm" },
  { length: 380, count: 10, label: "38 cm" },
];
const AXIS = { length: "length of cloth", count: "straps" };

test("the curve climbs from the first step to the last: a tread till the next length, a riser for what it gives more", () => {
  const { box, items } = yieldCurvePicture(STEPS, 400, AXIS);
  expect(box).toEqual({ minX: 0, minY: 0, maxX: 180, maxY: 114 });
  const [axes] = linesOf(items, "mark");
  expect(axes).toBe("14 106, 14 16, 174 16");
  const [curve] = linesOf(items, "cut");
  const points = curve!.split(", ").map((point) => point.split(" ").map(Number) as [number, number]);
  expect(points).toHaveLength(6);
  const [x0, y0] = points[0]!;
  expect([x0, y0]).toEqual([14, 20]);
  // Risers are as far along as their lengths, treads as high as their counts; the last tread is a little long.
  const perMm = 160 / (200 + 0.04 * 200);
  expect(points.map(([x]) => (x - 14) / perMm + 200)).toEqual(
    [200, 260, 260, 380, 380, 408].map((mm) => expect.closeTo(mm, 1)),
  );
  expect(points.map(([, y]) => 4 + ((y - 20) * 6) / 82)).toEqual(
    [4, 4, 5, 5, 10, 10].map((n) => expect.closeTo(n, 3)),
  );
  const words = wordsOf({ box, items });
  expect(runTogether(words)).toEqual([]);
  expect(standOut(words, { ...box, minX: 2, maxX: 174.2 })).toEqual([]);
  expect(words.map(({ text }) => text)).toEqual([
    "straps",
    "length of cloth",
    "4",
    "20 cm",
    "+1",
    "5",
    "26 cm",
    "+5",
    "10",
    "38 cm",
  ]);
  expect(words.every(({ size }) => size === 3)).toBe(true);
  expect(words.slice(0, 2).map(({ y }) => y)).toEqual([108, 4]);
  expect(words.filter(({ bold }) => bold).map(({ text }) => text)).toEqual(["straps", "length of cloth"]);
  // Each label is below its tick, each count left of the axis at the height of its tread, each gain left of its riser.
  const ticks = linesOf(items, "label").map((one) => one.split(", ")[0]!.split(" ").map(Number));
  expect(ticks.map(([, y]) => y)).toEqual([16, 16, 16]);
  for (const [i, { label, count }] of STEPS.entries()) {
    const [x] = ticks[i]!;
    const word = words.find(({ text }) => text === label)!;
    if (i > 0) expect((word.minX + word.maxX) / 2).toBeCloseTo(x!, 0);
    expect(word.y).toBe(11);
    const number = words.find(({ text }) => text === String(count))!;
    expect(number.maxX).toBeLessThan(12.3);
    expect((number.minY + number.maxY) / 2).toBeCloseTo(points[2 * i]![1], 0);
    const gain = words.find(({ text }) => text === `+${count - (STEPS[i - 1]?.count ?? 0)}`);
    if (i > 0) {
      expect(gain!.maxX).toBeLessThan(x!);
      expect(gain!.maxX).toBeGreaterThan(x! - 2);
    }
  }
});

test("steps too near to each other go without their label, counts and gains that would not be read", () => {
  const near = Array.from({ length: 60 }, (_, i) => ({ length: 100 + i, count: 10 + i, label: `${100 + i} mm` }));
  for (const width of [180, 90]) {
    const { box, items } = yieldCurvePicture(near, 160, AXIS, width);
    const words = wordsOf({ box, items });
    expect(box.maxX).toBe(width);
    expect(runTogether(words)).toEqual([]);
    expect(words.some(({ text }) => text.startsWith("+"))).toBe(false);
    const labels = words.filter(({ text }) => text.endsWith(" mm"));
    expect(labels.length).toBeGreaterThan(width / 25);
    expect(labels.length).toBeLessThan(60);
    // All treads that have room have their count: letters are 3 mm high, treads 82 / 59 mm apart.
    expect(words.filter(({ text }) => /^\d+$/u.test(text))).toHaveLength(20);
    expect(linesOf(items, "label")).toHaveLength(60);
  }
});

test("one step alone is a tread from edge to edge", () => {
  const { items } = yieldCurvePicture([STEPS[0]!], 100, AXIS);
  expect(linesOf(items, "cut")).toEqual(["14 20, 174 20"]);
  expect(linesOf(yieldCurvePicture([STEPS[0]!], 400, AXIS).items, "cut")).toEqual(["14 20, 174 20"]);
});
