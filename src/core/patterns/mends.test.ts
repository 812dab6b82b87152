import { expect, test } from "vitest";
import { box, line, understood } from "../../../tests/tools/patternLines.ts";
import type { PatternLine } from "./patternDrawing.ts";
import type { UnderstoodPattern } from "./patternOutline.ts";

const codes = ({ problems }: UnderstoodPattern): string[] => problems.map(({ code }) => code);

test("a gap is told with its width and place, and closed when asked", () => {
  const open = [
    line(
      [
        [0, 0],
        [100, 0],
        [100, 50],
        [0, 50],
        [0, 2],
      ],
      false,
    ),
  ];
  const found = understood(open);
  expect(found.outlines[0]!.closed).toBe(false);
  expect(found.problems).toEqual([
    { code: "pattern-gap", path: "line 1", gapMm: 2, xMm: 0, yMm: 1, mended: false },
  ]);
  const mended = understood(open, { mend: ["gaps"] });
  expect(mended.outlines[0]).toMatchObject({ closed: true, areaMm2: 5000 });
  expect(mended.problems).toMatchObject([{ code: "pattern-gap", mended: true }]);
  expect(
    codes(
      understood([
        line(
          [
            [0, 0],
            [100, 0],
            [100, 50],
            [0, 50],
            [0, 9],
          ],
          false,
        ),
      ]),
    ),
  ).toEqual([]);
});

test("lines drawn twice are told and taken out when asked", () => {
  const twice = [
    box(0, 0, 100, 50),
    line(
      [
        [100, 50],
        [100, 0],
        [0, 0],
        [0, 50.05],
      ],
      true,
    ),
    line(
      [
        [10, 10],
        [50, 10],
      ],
      false,
    ),
    line(
      [
        [50, 10],
        [30, 10],
        [10, 10],
      ],
      false,
    ),
    box(0, 0, 100, 51),
  ];
  expect(codes(understood(twice))).toEqual(["pattern-doubled", "pattern-doubled"]);
  const mended = understood(twice, { mend: ["doubles"] });
  expect(mended.outlines.map(({ name }) => name)).toEqual(["line 1", "line 3", "line 5"]);
});

test("an outline that crosses itself is told and keeps its largest area when asked", () => {
  const bow = [
    line(
      [
        [0, 0],
        [100, 60],
        [100, 0],
        [0, 40],
      ],
      true,
    ),
  ];
  const found = understood(bow);
  expect(found.problems).toMatchObject([{ code: "pattern-crosses-itself", count: 1, xMm: 40, yMm: 24 }]);
  const mended = understood(bow, { mend: ["crossings"] });
  // The triangles (0,0) (40,24) (0,40) and (40,24) (100,0) (100,60): 800 and 1800 mm².
  expect(mended.outlines[0]!.areaMm2).toBeCloseTo(1800, 3);
});

test("the mended outline touches itself nowhere, also when both its areas meet in one corner", () => {
  const bow = line(
    [
      [200, 130],
      [300, 60],
      [200, 60],
      [300, 130],
    ],
    true,
  );
  const [mended] = understood([bow], { mend: ["crossings"] }).outlines;
  // One of two triangles with a base of 100 mm and a height of 35 mm.
  expect(mended!.curve.parts.length).toBeLessThanOrEqual(3);
  expect(mended!.areaMm2).toBeCloseTo(1750, 2);
});

test("slivers are told and taken out when asked; nothing left is said too", () => {
  const sliver = [box(0, 0, 100, 0.3)];
  expect(understood(sliver).problems).toMatchObject([{ code: "pattern-sliver", mended: false }]);
  expect(codes(understood(sliver, { mend: ["slivers"] }))).toEqual(["pattern-sliver", "pattern-empty"]);
});

test("sides that would be whole at 72 or 90 to the inch, or in inches, raise a doubt", () => {
  const at = (perInch: number): PatternLine[] => [box(0, 0, (310 * perInch) / 96, (190 * perInch) / 96)];
  for (const perInch of [72, 90] as const) {
    const [doubt] = understood(at(perInch)).problems;
    expect(doubt).toMatchObject({ code: "pattern-scale-doubtful", unit: `px${perInch}` });
    const mended = understood(at(perInch), { mend: ["scale"] }).outlines[0]!;
    expect(mended.box.maxX).toBeCloseTo(310, 9);
    expect(understood(at(perInch), { unit: `px${perInch}` }).outlines[0]!.box.maxX).toBeCloseTo(310, 9);
  }
  expect(codes(understood(at(96)))).toEqual([]);
  expect(understood([box(0, 0, 11.75, 8.25)], {}, "dxf").problems).toMatchObject([
    { code: "pattern-scale-doubtful", unit: "in", wouldBeMm: expect.closeTo(298.45, 9) },
  ]);
  expect(codes(understood([box(0, 0, 297, 210)], {}, "dxf"))).toEqual([]);
});

test("numbers that are none, lines of no size and far too many lines are told", () => {
  expect(codes(understood([box(0, 0, Number.NaN, 1), box(0, 0, 1e7, 1), box(0, 0, 30, 20)]))).toEqual([
    "pattern-numbers-unusable",
  ]);
  expect(codes(understood([box(0, 0, 0, 0), box(0, 0, 50, 0)]))).toEqual(["pattern-flat", "pattern-empty"]);
  const many = Array.from({ length: 20_001 }, (_, i) => box(3 * i, 0, 1, 1));
  expect(understood(many)).toMatchObject({ outlines: [], problems: [{ code: "pattern-too-much", of: "lines" }] });
});

test("an even bow tie crosses itself and is no sliver", () => {
  const tie = understood([
    line(
      [
        [0, 0],
        [60, 40],
        [60, 0],
        [0, 40],
      ],
      true,
    ),
  ]);
  expect(codes(tie)).toEqual(["pattern-crosses-itself"]);
  const thin = understood([
    line(
      [
        [0, 0],
        [60, 0],
        [60, 0.2],
        [0, 0.2],
      ],
      true,
    ),
  ]);
  expect(codes(thin)).toEqual(["pattern-sliver"]);
});
