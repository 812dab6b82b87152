import fc from "fast-check";
import { expect, test } from "vitest";
import { ringBox } from "../../src/core/geometry/box.ts";
import { firstCrossing } from "../../src/core/geometry/crossing.ts";
import { polygonArea, signedArea } from "../../src/core/geometry/ring.ts";
import { layProblemsOf } from "../../src/core/job/layProblems.ts";
import { problemLine } from "../../src/core/problems/describeProblem.ts";
import { cutListOf } from "../../src/core/project/cutList.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import { writeProject } from "../../src/core/project/file/writeProject.ts";
import { CONSTRUCTION_IDS } from "../../src/core/straps/wish/strapWish.ts";

const mm = (min: number, max: number) => fc.integer({ min: min * 10, max: max * 10 }).map((tenths) => tenths / 10);
const grain = fc.constantFrom("lengthwise", "crosswise", "either");

const blob = fc
  .array(fc.tuple(mm(20, 200), fc.integer({ min: -8, max: 8 })), { minLength: 3, maxLength: 9 })
  .map((reaches) => ({
    kind: "outline",
    points: reaches.map(([reach, bow], i) => {
      const angle = (2 * Math.PI * i) / reaches.length;
      const point = [Math.round(reach * Math.cos(angle)), Math.round(reach * Math.sin(angle))];
      return bow === 0 ? point : [...point, bow];
    }),
  }));
const rectangle = fc.record({ kind: fc.constant("rectangle"), along: mm(1, 900), across: mm(1, 900) });
const rounded = fc
  .tuple(mm(2, 500), mm(2, 500), fc.integer({ min: 0, max: 50 }))
  .map(([along, across, percent]) => ({
    kind: "rounded",
    along,
    across,
    radius: (Math.min(along, across) * percent) / 100,
  }));

const panel = fc.record({
  material: fc.constantFrom("m0", "m1"),
  shape: fc.oneof(blob, rectangle, rounded),
  seamAllowance: fc.constantFrom(0, 3.2, 10, 25),
  count: fc.integer({ min: 1, max: 3 }),
  mirrored: fc.integer({ min: 0, max: 2 }),
  grain,
  interfacing: fc.option(fc.record({ material: fc.constant("fuse"), cut: fc.constantFrom("full", "net") }), {
    nil: undefined,
  }),
  fold: fc.option(fc.integer({ min: 0, max: 3 }), { nil: undefined, freq: 3 }),
});
const strap = fc.record({
  construction: fc.constantFrom(...CONSTRUCTION_IDS),
  width: fc.oneof(
    mm(1, 80),
    mm(5, 200).map((cut) => ({ cut })),
  ),
  length: fc.oneof(
    mm(20, 2000),
    mm(20, 600).map((drop) => ({ drop })),
    mm(50, 1500).map((worn) => ({ worn })),
  ),
  materials: fc.record({
    outer: fc.constantFrom("m0", "m1"),
    facing: fc.constantFrom("m0", "m1", undefined),
    interfacing: fc.constantFrom("fuse", undefined),
    webbing: fc.constantFrom("web", undefined),
    cord: fc.constantFrom("cord", undefined),
  }),
  interfacing: fc.constantFrom("none", "full", "quarter", undefined),
  adjustment: fc.constantFrom("fixed", "one-piece", "two-part", undefined),
  core: fc.constantFrom({ webbingWidth: 25 }, { cordDiameter: 10 }, undefined),
  grain,
  count: fc.integer({ min: 1, max: 3 }),
});
const material = fc.record({
  kind: fc.constantFrom("woven", "vinyl", "leather", "cork", "felt"),
  thickness: mm(0, 3).filter((thickness) => thickness > 0),
  backing: fc.constantFrom("woven", "knit", "none", "unknown"),
  oneWay: fc.boolean(),
  facesAlike: fc.boolean(),
  shrinkage: fc.record({
    lengthwise: fc.constantFrom(0, 0.03),
    crosswise: fc.constantFrom(0, 0.03, 0.05),
    when: fc.constantFrom("after-making", "before-cutting"),
  }),
});
const project = fc
  .record({
    bags: fc.integer({ min: 1, max: 4 }),
    materials: fc.tuple(material, material),
    straps: fc.array(strap, { maxLength: 3 }),
    panels: fc.array(panel, { maxLength: 4 }),
  })
  .map(({ bags, materials, straps, panels }) => ({
    laywright: 1,
    name: "Any",
    bags,
    materials: [
      ...materials.map((one, i) => ({
        ...one,
        id: `m${i}`,
        stock: [{ kind: "roll", id: `r${i}`, width: 1400, selvedge: 10 }],
      })),
      { id: "fuse", kind: "interfacing", thickness: 0.2 },
      { id: "web", kind: "webbing", thickness: 2 },
      { id: "cord", kind: "cord", thickness: 10 },
    ],
    straps: straps.map((one, i) => ({ ...one, id: `s${i}` })),
    panels: panels.map((one, i) => ({ ...one, id: `p${i}` })),
  }));

test("any project that reads has a cut list of sound pieces, or is told what is wrong", () => {
  const seen = { read: 0, cut: 0 };
  fc.assert(
    fc.property(project, (file) => {
      const read = readProject(JSON.stringify(file));
      if (!read.ok) return read.problems.forEach((problem) => void expect(problemLine(problem)).toMatch(/\.$/u));
      seen.read++;
      // Kept on a device and opened again: the same project, and the same file when it is kept once more.
      const written = writeProject(read.value);
      const again = readProject(written);
      expect(again.ok && writeProject(again.value)).toBe(written);
      const cut = cutListOf(read.value);
      if (!cut.ok)
        return cut.problems.forEach((problem) => void expect(problemLine(problem)).not.toMatch(/undefined|NaN/u));
      seen.cut++;
      expect(new Set(cut.value.pieces.map((piece) => piece.id)).size).toBe(cut.value.pieces.length);
      for (const piece of cut.value.pieces) {
        const { outer } = piece.outline;
        const box = ringBox(outer);
        expect(signedArea(outer), piece.id).toBeGreaterThan(0);
        expect(firstCrossing(outer), piece.id).toBeNull();
        expect(Math.hypot(box.minX, box.minY), piece.id).toBeLessThan(0.02);
        expect(Number.isInteger(piece.count) && piece.count + piece.mirroredCount > 0).toBe(true);
      }
      const wanted = cut.value.pieces.reduce((n, piece) => n + piece.count + piece.mirroredCount, 0);
      const problems = layProblemsOf(read.value, cut.value);
      expect(problems.flatMap(({ pieces }) => pieces).reduce((n, piece) => n + piece.count, 0)).toBe(wanted);
      for (const { pieces } of problems)
        for (const piece of pieces) {
          expect(piece.orientations.length).toBeGreaterThan(0);
          expect(polygonArea(piece.outline)).toBeGreaterThan(0);
        }
    }),
    { numRuns: 200, endOnFailure: true },
  );
  expect(seen.read).toBeGreaterThan(60);
  expect(seen.cut).toBeGreaterThan(10);
});
