import { expect, test } from "vitest";
import { CONSTRUCTIONS } from "../constructions/catalogue.ts";
import { type OpenSectionInput, planOf } from "../constructions/construction.ts";
import type { ConstructionId, FoldChoices } from "../wish/strapWish.ts";
import type { Ply, SectionPlan } from "./foldPlan.ts";
import {
  finishedWidthOfCut,
  foldLinesOf,
  leastWidth,
  sectionAtCutWidth,
  sectionAtFinishedWidth,
} from "./foldSection.ts";
import { bendAllowance } from "./ply.ts";
import { stackHeight, thicknessProfile } from "./thicknessProfile.ts";

const ply = (thickness: number, leastRadius = 0): Ply => ({ role: "outer", thickness, neutral: 0.5, leastRadius });

function input(
  thickness: number,
  choices: FoldChoices = {},
  clearance: number | null = null,
  radius = 0,
): OpenSectionInput {
  const outer = ply(thickness, radius);
  return {
    outer,
    facing: { ...outer, role: "facing" },
    ownFacing: true,
    clearance,
    padding: null,
    webbingThickness: 2,
    choices,
  };
}

function cut(id: ConstructionId, width: number, of: OpenSectionInput): number {
  return sectionAtFinishedWidth(planOf(CONSTRUCTIONS[id], of), width).strips[0]!.width;
}

/** One fold, both legs flush at the left: the simplest plan there is. */
function singleFold(thickness: number, radius: number): SectionPlan {
  const edge = { from: "left", mm: 0 } as const;
  const strip = {
    ply: ply(thickness, radius),
    levels: [0, 1],
    firstFold: "right",
    start: edge,
    end: edge,
    face: 0,
  } as const;
  return { strips: [strip], slabs: [], settles: false };
}

// Facts 2.7: exact arithmetic on the stated model BA = π K T at R 0.
test.each([
  [0.3, 0.47],
  [0.5, 0.79],
  [0.8, 1.26],
  [1.0, 1.57],
  [1.3, 2.04],
  [2.0, 3.14],
])("2.7: a tight half turn of %s mm uses %s mm (stated model)", (thickness, expected) => {
  expect(bendAllowance(Math.PI, 0, thickness, 0.5)).toBeCloseTo(expected, 2);
});

test("2.8: two touching layers differ by angle × T round a bend (stated model)", () => {
  const difference = (angle: number) => bendAllowance(angle, 1, 1, 0.5) - bendAllowance(angle, 0, 1, 0.5);
  expect(difference(Math.PI)).toBeCloseTo(3.14, 2);
  expect(difference(Math.PI / 2)).toBeCloseTo(1.57, 2);
});

// Facts 2.9: flat = 2w + (π − 2) R + (K π − 2) T, K 0.5, w 25 (stated model).
test.each([
  [0.3, 49.87],
  [1.0, 49.57],
  [1.3, 49.44],
])("2.9: a single fold of %s mm with flush legs needs %s mm (stated model)", (thickness, expected) => {
  expect(sectionAtFinishedWidth(singleFold(thickness, 0), 25).strips[0]!.width).toBeCloseTo(expected, 2);
});

test("2.9: the radius of a single fold adds (π − 2) R (stated model)", () => {
  const soft = sectionAtFinishedWidth(singleFold(1, 1.5), 25).strips[0]!.width;
  const hard = sectionAtFinishedWidth(singleFold(1, 0), 25).strips[0]!.width;
  expect(soft - hard).toBeCloseTo((Math.PI - 2) * 1.5, 9);
});

// Facts 2.10: W = 4w + 0.57 T − 2g at g 0 (stated model).
test.each([
  [0.3, 100.17],
  [0.8, 100.45],
  [1.0, 100.57],
  [1.3, 100.74],
  [2.0, 101.13],
])("2.10: fourfold of %s mm, edges at the crease, needs %s mm (stated model)", (thickness, expected) => {
  expect(cut("fourfold", 25, input(thickness, { edgeGap: 0 }))).toBeCloseTo(expected, 2);
});

test("2.10: each millimetre the raw edges are held back takes two off the strip (stated model)", () => {
  expect(cut("fourfold", 25, input(1, { edgeGap: 0 })) - cut("fourfold", 25, input(1, { edgeGap: 1 }))).toBeCloseTo(
    2,
    9,
  );
});

test("2.11: soft side folds add 2.28 R: 1.71 T at R = T/2, 2.85 T at R = T (stated model)", () => {
  for (const thickness of [0.3, 1, 2]) {
    const soft = (share: number) => cut("fourfold", 25, input(thickness, { edgeGap: 0 }, null, share * thickness));
    expect(soft(0.5)).toBeCloseTo(100 + 1.71 * thickness, 1);
    expect(soft(1)).toBeCloseTo(100 + 2.85 * thickness, 1);
    expect(soft(1) - soft(0)).toBeCloseTo((2 * Math.PI - 4) * thickness, 9);
  }
});

// Facts 2.12: least g = 1.36 T, edges crushed right into the bend (stated model).
test.each([
  [0.3, 0.41],
  [0.8, 1.08],
  [1.0, 1.36],
  [1.3, 1.76],
  [2.0, 2.71],
])(
  "2.12: fourfold raw edges of %s mm stay %s mm from the crease when crushed in (stated model)",
  (thickness, gap) => {
    const plan = planOf(CONSTRUCTIONS.fourfold, input(thickness, {}, 0));
    expect(CONSTRUCTIONS.fourfold.setback(sectionAtFinishedWidth(plan, 25))).toBeCloseTo(gap, 2);
  },
);

test("2.13: fourfold with the least gap is 4w − 2.15 T (stated model)", () => {
  expect(cut("fourfold", 25, input(1, {}, 0))).toBeCloseTo(97.85, 2);
  expect(cut("fourfold", 25, input(2, {}, 0))).toBeCloseTo(95.71, 1);
});

test("fourfold with square stiff edges is 4w − 4.15 T, halfway 4w − 3.15 T (stated model)", () => {
  expect(cut("fourfold", 25, input(1, {}, 1))).toBeCloseTo(100 - 4.15, 2);
  expect(cut("fourfold", 25, input(1))).toBeCloseTo(100 - 3.15, 2);
});

// Facts 2.14: W = 3w − 1.29 T, fully filled, hard creases (stated model).
test.each([
  [0.8, 73.97],
  [1.0, 73.71],
  [1.3, 73.33],
])("2.14: in three, filled to both ends, %s mm needs %s mm (stated model)", (thickness, expected) => {
  expect(cut("three-raw", 25, input(thickness, { setback: 0 }, 0))).toBeCloseTo(expected, 2);
});

test("in three from 3·w₀ with the edge on the line: w₀ + 1.71 T wide, 3.36 T short (stated model)", () => {
  const section = sectionAtCutWidth(planOf(CONSTRUCTIONS["three-raw"], input(1)), 75);
  expect(section.finishedWidth).toBeCloseTo(25 + 1.71, 1);
  expect(CONSTRUCTIONS["three-raw"].setback(section)).toBeCloseTo(3.36, 2);
  // The first raw edge, folded over, lies on the line two thirds across: as far from the fold on both sides.
  expect(2 * foldLinesOf(section.strips[0]!)[0]!).toBeCloseTo(50, 9);
});

test("2.15: stacks are 4 T, 3 T and 2 T (stated model)", () => {
  const section = (id: ConstructionId) => sectionAtFinishedWidth(planOf(CONSTRUCTIONS[id], input(1)), 38);
  expect(stackHeight(section("fourfold"))).toBe(4);
  expect(stackHeight(section("three-raw"))).toBe(3);
  expect(thicknessProfile(section("tube"))[0]).toMatchObject({ layers: 2, thickness: 2 });
});

test("layers across a strap in three: one short of three where the visible edge stops", () => {
  const section = sectionAtFinishedWidth(planOf(CONSTRUCTIONS["three-raw"], input(1)), 30);
  const spans = thicknessProfile(section);
  expect(spans.map((span) => span.layers)).toEqual([2, 3, 2]);
  expect(spans[0]!.to).toBeCloseTo(3.356, 3);
});

test("a strip of webbing's own sleeve is 4 × webbing + 2 × its thickness without cloth thickness (facts 1.19, common practice)", () => {
  expect(cut("webbing-sleeve", 38, input(0))).toBeCloseTo(156, 9);
});

test("the least width is where a run or a flap vanishes", () => {
  const plan = planOf(CONSTRUCTIONS.fourfold, input(1));
  const least = leastWidth(plan);
  expect(least).toBeCloseTo(3, 9);
  const runs = sectionAtFinishedWidth(plan, least).strips[0]!.segments.filter((one) => one.kind === "run");
  expect(Math.min(...runs.map((run) => run.flatTo - run.flatFrom))).toBeCloseTo(0, 9);
});

test("the width of a cut strip is the inverse of the cut of a width", () => {
  const plan = planOf(CONSTRUCTIONS["webbing-sleeve"], input(0.7));
  expect(finishedWidthOfCut(plan, sectionAtFinishedWidth(plan, 41.3).strips[0]!.width)).toBeCloseTo(41.3, 9);
});
