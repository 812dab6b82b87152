import { expect, test } from "vitest";
import {
  build,
  codes,
  INCH,
  MATERIALS,
  of,
  problems,
  steps,
  type Wish,
  wish,
} from "../../../../tests/tools/makersStraps.ts";
import type { FoldTestReading } from "../foldTest.ts";
import type { ConstructionId, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";

// What an experienced maker looks at first. Trade figures: common practice, no source.

test.each([
  ["a 1/4 in tube at the usual seam", "tube", "cotton", { width: 6.35 }],
  ["a tube with a 1/2 in seam", "tube", "cotton", { width: 12.7, folds: { seamAllowance: 12.7 } }],
  [
    "a cover turned 20 mm on a 10 mm webbing",
    "webbing-sleeve",
    "cotton",
    { width: null, core: { webbingWidth: 10, webbingThickness: 2 }, folds: { layers: 1, turn: 20 } },
  ],
  [
    "1/2 in sewn and turned with 1/2 in seams",
    "sewn-turned",
    "cotton",
    { width: 12.7, folds: { seamAllowance: 12.7 } },
  ],
  [
    "an overlay turned 30 mm",
    "webbing-overlay",
    "cotton",
    { width: null, core: { webbingWidth: 38, webbingThickness: 2 }, folds: { turn: 30 } },
  ],
] as const)("1: %s is refused with the largest allowance that fits", (_, construction, outer, more) => {
  const [problem] = problems(construction, outer, more as Wish);
  if (problem?.code !== "strap-turned-edge-wide") throw new Error(`not refused: ${problem?.code}`);
  expect(problem.mostMm).toBeLessThan(problem.allowanceMm);
  // The largest that fits is built, a tenth of a millimetre more is not.
  const choice = problem.path.replace("folds.", "");
  const folds = { ...(more as Wish).folds, [choice]: problem.mostMm - 1e-6 };
  expect(problems(construction, outer, { ...(more as Wish), folds })).toEqual([]);
  const more2 = { ...folds, [choice]: problem.mostMm + 0.1 };
  expect(problems(construction, outer, { ...(more as Wish), folds: more2 })).toMatchObject([
    { code: problem.code },
  ]);
});

test("2: a one-piece adjustable strap that needs a join is told that there is no place for one", () => {
  const short = [of("cotton", "woven", 0.3, { usableWidth: 600, longestPiece: 900 })];
  const built = buildStrap(
    wish("fourfold", "cotton", { length: 1500, adjustment: "one-piece", joins: { allowed: true } }),
    short,
  );
  if (!built.ok) throw new Error("no strap");
  expect(codes(built.value)).toContain("no-place-for-join");
});

test("3: a strap with a ring or clasp is folded back over it, and the hardware counts in the worn length", () => {
  const ring = { kind: "ring", innerWidth: 38, length: 22 } as const;
  expect(build("fourfold", "vinyl", { hardware: [ring] }).lengths.items.map(({ code }) => code)).toEqual([
    "finished",
    "end-fold-back",
    "end-fold-back",
  ]);
  const worn = (hardware: StrapWish["hardware"]) => {
    const built = buildStrap(
      { ...wish("fourfold", "vinyl", { hardware }), length: { kind: "worn", mm: 700 } },
      MATERIALS,
    );
    if (!built.ok) throw new Error("no strap");
    return built.value;
  };
  expect(worn([ring]).lengths.finished).toBeCloseTo(700 - 2 * 22, 9);
  expect(codes(worn([{ kind: "clasp", innerWidth: 38 }]))).toContain("clasp-length-unknown");
});

test("4: the bonded strap's stitches lie where its steps say, before and after trimming", () => {
  const result = build("bonded", "vinyl", { folds: { trim: 2 } });
  const drawn = result.pieces[0]!.lines.filter(({ role }) => role === "stitch").map(
    ({ contour }) => contour.vertices[1]!,
  );
  expect(Math.min(...drawn)).toBeCloseTo(5.175, 9);
  expect(steps(result).join(" ")).toContain(
    "5.2 mm from the edge as it is now: 3.2 mm from the edge once it is trimmed",
  );
});

test("5: no alternative in woven cloth leaves the raw edge that the notes advise against", () => {
  const offered = build("fourfold", "canvas", { machine: { maxThickness: 2.5 } }).alternatives.map(
    ({ construction }) => construction,
  );
  expect(offered).not.toContain("three-raw");
  expect(offered).not.toContain("bonded");
  const thin = build("fourfold", "vinyl", { machine: { maxThickness: 3.5 } }).alternatives.map(
    ({ construction }) => construction,
  );
  expect(thin).toContain("three-raw");
});

test("6: without given limits a home machine is assumed, and stout straps and long narrow tubes are warned of", () => {
  const ends = [{ style: "fold-back" }, { style: "fold-back" }] as const;
  expect(codes(build("fourfold", "4 oz leather", { ends }))).toEqual(
    expect.arrayContaining(["home-machine", "machine-skive"]),
  );
  expect(codes(build("fourfold", "stout vinyl", { width: INCH / 2 }))).toContain("strap-stout");
  const tube = { width: INCH / 2, length: 60 * INCH, folds: { seamAllowance: 4 } };
  expect(codes(build("tube", "vinyl", tube))).toContain("hard-to-turn");
  expect(codes(build("tube", "cotton", tube))).not.toContain("hard-to-turn");
  const cautions = (outer: string) => build("fourfold", outer).cautions.map(({ code }) => code);
  expect(cautions("cotton")).not.toContain("thick-stack");
  expect(cautions("vinyl")).toContain("thick-stack");
  // Her own machine replaces the one assumed.
  expect(codes(build("fourfold", "4 oz leather", { ends, machine: { maxThickness: 15 } }))).not.toContain(
    "home-machine",
  );
});

test("7: a fold test of one construction leaves the clearance of another alone, and several are averaged", () => {
  const test = (setback: number, readingError: number): FoldTestReading => ({
    construction: "three-raw",
    thickness: 1,
    cutWidth: 100,
    finishedWidth: 35.2,
    setback,
    readingError,
  });
  const cut = (construction: ConstructionId, tests: readonly FoldTestReading[]): number => {
    // K is said, so that only the clearance can differ.
    const built = buildStrap(wish(construction, "own"), [of("own", "vinyl", 1, { fold: { neutral: 0.5, tests } })]);
    if (!built.ok) throw new Error("no strap");
    return built.value.cutWidth;
  };
  const [one, two] = [test(3, 0.1), test(3.4, 0.1)];
  expect(cut("fourfold", [one])).toBeCloseTo(cut("fourfold", []), 9);
  expect(Math.abs(cut("three-raw", [one]) - cut("three-raw", []))).toBeGreaterThan(0.05);
  const mean = (cut("three-raw", [one]) + cut("three-raw", [two])) / 2;
  expect(cut("three-raw", [one, two])).toBeCloseTo(mean, 6);
  // A test whose error is as wide as the range says nothing.
  expect(cut("three-raw", [test(3, 5)])).toBeCloseTo(cut("three-raw", []), 9);
});

test("9: cloth folded back has its raw end turned under in the steps, and twelve layers under the needle", () => {
  const result = build("fourfold", "cotton", { ends: [{ style: "fold-back" }, { style: "fold-back" }] });
  expect(steps(result).join(" ")).toContain("Turn 6.3 mm of the end under, fold 25.4 mm over its hardware");
  expect(result.needle.find(({ where }) => where === "fold-back")).toMatchObject({ layers: 12 });
  expect(Math.max(...result.along.map(({ layers }) => layers))).toBe(12);
  const vinyl = build("fourfold", "vinyl", { ends: [{ style: "fold-back" }, { style: "raw" }] });
  expect(vinyl.needle.find(({ where }) => where === "fold-back")).toMatchObject({ layers: 8 });
});
