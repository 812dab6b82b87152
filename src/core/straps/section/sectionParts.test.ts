// What a section is made of, worked out by hand on plans small enough for that.
import { expect, test } from "vitest";
import { edgesFit } from "./edgesFit.ts";
import type { Ply, SectionPlan, SlabPlan, StripPlan } from "./foldPlan.ts";
import { foldLinesOf, leastWidth, levelThicknesses, sectionAtFinishedWidth } from "./foldSection.ts";
import { plyOf } from "./ply.ts";
import { withFaceInterfacing } from "./quarterInterfacing.ts";
import { foldLeastRadius, foldThickness, runThickness, skivedEnds, turnedThickness } from "./skiving.ts";
import { stackHeight, thickestSpan, thicknessProfile } from "./thicknessProfile.ts";
import { wrapOfCord, wrapOfCut } from "./wrappedSection.ts";

const PLY: Ply = { role: "outer", thickness: 1, neutral: 0.5, leastRadius: 0 };
const plan = (strips: readonly StripPlan[], slabs: readonly SlabPlan[] = []): SectionPlan => ({
  strips,
  slabs,
  settles: false,
});
/** A strip laid in levels, its ends `from` and `to` the left side. */
const strip = (levels: readonly number[], from: number, to: number, more: Partial<StripPlan> = {}): StripPlan => ({
  ply: PLY,
  levels,
  firstFold: "right",
  start: { from: "left", mm: from },
  end: { from: "left", mm: to },
  face: 0,
  ...more,
});

test("a turned edge has room up to the inner face of the fold that closes over it", () => {
  // One strip from level 0 to 4 round 3 mm of others, whose fold on the right begins at its axis, 30 − 2.5.
  const around = strip([0, 4], 0, 0);
  const inner = (to: number) => sectionAtFinishedWidth(plan([around, strip([2], 0, to)]), 30);
  expect(edgesFit(inner(20))).toBe(true);
  expect(edgesFit(inner(29 - 1e-9))).toBe(true);
  expect(edgesFit(inner(29.001))).toBe(false);
  // Beside the fold, not inside it: level 4 and above are not closed over.
  const beside = (level: number) => sectionAtFinishedWidth(plan([around, strip([level], 0, 30)]), 30);
  expect([beside(1), beside(3), beside(5)].map(edgesFit)).toEqual([false, false, true]);
  // The same in a mirror.
  const left = strip([0, 4], 0, 0, {
    firstFold: "left",
    start: { from: "right", mm: 0 },
    end: { from: "right", mm: 0 },
  });
  const from = (mm: number) =>
    sectionAtFinishedWidth(plan([left, strip([2], mm, 0, { end: { from: "right", mm: 0 } })]), 30);
  expect([from(1.001), from(0.999)].map(edgesFit)).toEqual([true, false]);
});

test("two runs on one level may touch, not lie on each other; an edge that a core places is not asked", () => {
  const pair = (gap: number, level = 0) =>
    sectionAtFinishedWidth(
      plan([strip([0], 0, 10), strip([level], 10 + gap, 0, { end: { from: "right", mm: 0 } })]),
      30,
    );
  expect([pair(0), pair(2), pair(-0.001), pair(-0.001, 1)].map(edgesFit)).toEqual([true, true, false, true]);
});

test("a soft level is wrapped by half of what lies in it, a square core by a straight rise; the least radius counts too", () => {
  const cut = (slab: Partial<SlabPlan>, ply: Partial<Ply> = {}) => {
    const core: SlabPlan = {
      ...{ role: "padding", level: 1, thickness: 4, insetLeft: 0, insetRight: 0, square: false },
      ...slab,
    };
    return sectionAtFinishedWidth(plan([strip([0, 2], 0, 0, { ply: { ...PLY, ...ply } })], [core]), 50).strips[0]!;
  };
  // Legs up to the fold's axis, and half a turn at mid-depth.
  expect(cut({}).width).toBeCloseTo(2 * (50 - 3) + Math.PI * 2.5, 9);
  expect(cut({ square: true }).width).toBeCloseTo(2 * (50 - 1) + Math.PI * 0.5 + 4, 9);
  expect(cut({}, { leastRadius: 1.9 }).width).toBeCloseTo(cut({}).width, 9);
  expect(cut({}, { leastRadius: 3 }).width).toBeCloseTo(2 * (50 - 4) + Math.PI * 3.5, 9);
  expect(foldLinesOf(cut({}))).toEqual([expect.closeTo(cut({}).width / 2, 9)]);
  expect(levelThicknesses(plan([strip([0, 2], 0, 0)], []))).toEqual([1, 0, 1]);
});

test("from the least width on every run and core is real", () => {
  const core: SlabPlan = { role: "webbing", level: 1, thickness: 2, insetLeft: 4, insetRight: 7, square: true };
  expect(leastWidth(plan([strip([0, 2], 0, 0)], [core]))).toBeCloseTo(11, 9);
  // Legs from 6 mm in, with a fold 2 mm deep: its axis must not lie before that.
  expect(leastWidth(plan([strip([0, 1], 6, 0, { ply: { ...PLY, leastRadius: 1 } })]))).toBeCloseTo(8, 9);
  // A run from side to side of a fixed place has a length of its own.
  expect(leastWidth(plan([strip([0], 2, 30)]))).toBe(0);
});

test("layers across: a fold counts as both its layers, what is as thick goes together, interfacing is no layer", () => {
  const section = sectionAtFinishedWidth(plan([strip([0, 1], 0, 12)]), 30);
  expect(thicknessProfile(section)).toEqual([
    { from: 0, to: 12, layers: 1, thickness: 1 },
    { from: 12, to: 30, layers: 2, thickness: 2 },
  ]);
  expect(thickestSpan(section)).toEqual({ from: 12, to: 30, layers: 2, thickness: 2 });
  expect(stackHeight(section)).toBe(2);
  const slab: SlabPlan = {
    ...{ role: "interfacing", level: 1, thickness: 0.5, insetLeft: 5, insetRight: 0, square: false },
  };
  const interfaced = sectionAtFinishedWidth(
    plan([strip([0], 0, 0, { end: { from: "right", mm: 0 } })], [slab]),
    30,
  );
  expect(thicknessProfile(interfaced)).toEqual([
    { from: 0, to: 5, layers: 1, thickness: 1 },
    { from: 5, to: 30, layers: 1, thickness: 1.5 },
  ]);
  expect(thickestSpan(interfaced)).toEqual({ from: 5, to: 30, layers: 1, thickness: 1.5 });
  const padded = sectionAtFinishedWidth(
    plan([strip([0], 0, 0, { end: { from: "right", mm: 0 } })], [{ ...slab, role: "padding" }]),
    30,
  );
  expect(thickestSpan(padded)).toEqual({ from: 5, to: 30, layers: 2, thickness: 1.5 });
  // Two runs end to end are one span.
  const ended = plan([strip([0], 0, 10), strip([0], 10, 0, { end: { from: "right", mm: 0 } })]);
  expect(thicknessProfile(sectionAtFinishedWidth(ended, 30))).toEqual([
    { from: 0, to: 30, layers: 1, thickness: 1 },
  ]);
  // Of two as thick the one of more layers.
  const thin = { ...PLY, thickness: 0.5 };
  const steps = plan([strip([0], 0, 10), strip([0], 12, 30, { ply: thin }), strip([1], 12, 30, { ply: thin })]);
  expect(thickestSpan(sectionAtFinishedWidth(steps, 30))).toMatchObject({
    from: 12,
    to: 30,
    layers: 2,
    thickness: 1,
  });
  expect(thickestSpan(sectionAtFinishedWidth(plan([]), 0))).toEqual({ from: 0, to: 0, layers: 0, thickness: 0 });
});

test("skived edges: the first and last run thinner, the folds beside them too, and their least radius with them", () => {
  const ply = { ...PLY, thickness: 2, leastRadius: 1 };
  expect([turnedThickness(ply, {}), turnedThickness(ply, { turnedThickness: 3 })]).toEqual([2, 2]);
  expect(turnedThickness(ply, { turnedThickness: 0.8 })).toBe(0.8);
  expect([skivedEnds(ply, {}), skivedEnds(ply, { turnedThickness: 2 })]).toEqual([{}, {}]);
  const both = strip([0, 1, 2, 3], 0, 0, { ply, ...skivedEnds(ply, { turnedThickness: 0.8 }) });
  expect([0, 1, 2, 3].map((run) => runThickness(both, run))).toEqual([0.8, 2, 2, 0.8]);
  expect([0, 1, 2].map((fold) => foldThickness(both, fold))).toEqual([0.8, 2, 0.8]);
  expect([0, 1, 2].map((fold) => foldLeastRadius(both, fold))).toEqual([0.4, 1, 0.4]);
  const end = strip([0, 1, 2], 0, 0, {
    ply,
    ...skivedEnds(ply, { turnedThickness: 0.8 }, { start: false, end: true }),
  });
  expect([0, 1, 2].map((run) => runThickness(end, run))).toEqual([2, 2, 0.8]);
  expect(foldLeastRadius(strip([0, 1], 0, 0, { ply: { ...ply, thickness: 0 } }), 0)).toBe(1);
});

test("interfacing under the face lies between its two folds; what lies above moves up by one", () => {
  // Two folds, the face between them on the lowest level.
  const three = strip([1, 0, 2], 3, 4, {
    firstFold: "left",
    start: { from: "right", mm: 3 },
    face: 1,
    wraps: [[], [1]],
  });
  const slab: SlabPlan = { role: "webbing", level: 2, thickness: 2, insetLeft: 0, insetRight: 0, square: true };
  const laid = withFaceInterfacing(plan([three], [slab]), 0.3);
  expect(laid.strips[0]).toMatchObject({ levels: [2, 0, 3], wraps: [[], [2]] });
  expect(laid.slabs).toEqual([
    { ...slab, level: 3 },
    { role: "interfacing", level: 1, thickness: 0.3, insetLeft: 1, insetRight: 1, square: false },
  ]);
  // The face on top: the interfacing goes below it.
  const top = strip([0, 1], 0, 0, { face: 1, ply: { ...PLY, leastRadius: 0.5 } });
  const under = withFaceInterfacing(plan([top]), 0.3);
  expect(under.strips[0]!.levels).toEqual([0, 2]);
  expect(under.slabs).toMatchObject([{ level: 1, insetLeft: 0, insetRight: 1.5 }]);
  // A single run lies bare; folds that stay inside the strap keep the interfacing as far in.
  expect(withFaceInterfacing(plan([strip([0], 0, 0)]), 0.3).slabs).toMatchObject([
    { level: 1, insetLeft: 0, insetRight: 0 },
  ]);
  const inset = strip([1, 0, 1], 0, 0, {
    firstFold: "left",
    face: 1,
    outsides: [
      { from: "left", mm: 5 },
      { from: "right", mm: 6 },
    ],
  });
  expect(withFaceInterfacing(plan([strip([2], 0, 0), inset]), 0.3, 1).slabs).toMatchObject([
    { level: 1, insetLeft: 6, insetRight: 7 },
  ]);
});

test("a layer as it folds: the fold test's word first, then the kind's; hard creases have no radius, soft ones half", () => {
  const of = (kind: "woven" | "cork", fold: object, crease?: "hard" | "soft") =>
    plyOf("outer", { id: "m", name: "m", kind, thickness: 0.8, backing: "none", fold }, 0.2, { crease });
  expect(of("woven", {})).toEqual({ role: "outer", thickness: 1, neutral: 0.5, leastRadius: 0 });
  expect(of("woven", { neutral: 0.4, leastRadius: 2 })).toMatchObject({ neutral: 0.4, leastRadius: 2 });
  // Cork cracks when it is creased sharply: half its thickness (from memory).
  expect(of("cork", {}).leastRadius).toBe(0.5);
  expect(of("cork", { leastRadius: 0 }).leastRadius).toBe(0);
  expect([of("woven", {}, "soft"), of("woven", { leastRadius: 2 }, "soft")].map((ply) => ply.leastRadius)).toEqual([
    0.5, 2,
  ]);
  expect(of("woven", { leastRadius: 2 }, "hard").leastRadius).toBe(0);
});

test("round a cord and back: π (d + T) at mid-depth and two allowances", () => {
  const wrap = wrapOfCord(PLY, 10, 6);
  expect(wrap).toMatchObject({ kind: "wrapped", finishedWidth: 12, seamAllowance: 6 });
  expect(wrap.cutWidth).toBeCloseTo(11 * Math.PI + 12, 9);
  expect(wrapOfCut(PLY, 10, wrap.cutWidth).seamAllowance).toBeCloseTo(6, 9);
  // Kept at its inner face the strip is as long as the cord is round.
  expect(wrapOfCord({ ...PLY, neutral: 0 }, 10, 6).cutWidth).toBeCloseTo(10 * Math.PI + 12, 9);
});
