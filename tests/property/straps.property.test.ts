import fc from "fast-check";
import { expect, test } from "vitest";
import { levelHeights } from "../../src/core/drawing/strap/sectionHeights.ts";
import { stripOutline } from "../../src/core/drawing/strap/stripOutline.ts";
import { flattenContour } from "../../src/core/geometry/contourArcs.ts";
import { signedArea } from "../../src/core/geometry/ring.ts";
import { CONSTRUCTIONS } from "../../src/core/straps/constructions/catalogue.ts";
import { type OpenSectionInput, planOf } from "../../src/core/straps/constructions/construction.ts";
import type { SectionPlan } from "../../src/core/straps/section/foldPlan.ts";
import {
  leastWidth,
  levelThicknesses,
  type SolvedSection,
  sectionAtCutWidth,
  sectionAtFinishedWidth,
} from "../../src/core/straps/section/foldSection.ts";
import { withFaceInterfacing } from "../../src/core/straps/section/quarterInterfacing.ts";
import { thicknessProfile } from "../../src/core/straps/section/thicknessProfile.ts";
import { CONSTRUCTION_IDS, type ConstructionId } from "../../src/core/straps/wish/strapWish.ts";

const LAYERED: readonly ConstructionId[] = CONSTRUCTION_IDS.filter((id) => id !== "corded");

interface Case {
  readonly id: ConstructionId;
  readonly input: OpenSectionInput;
  readonly width: number;
}

function scaled(input: OpenSectionInput, by: number): OpenSectionInput {
  const ply = (of: OpenSectionInput["outer"]) => ({
    ...of,
    thickness: of.thickness * by,
    leastRadius: of.leastRadius * by,
  });
  const choices = Object.fromEntries(
    Object.entries(input.choices).map(([name, value]) => [
      name,
      typeof value === "number" && !["clearance", "layers"].includes(name) ? value * by : value,
    ]),
  );
  return {
    ...input,
    outer: ply(input.outer),
    facing: ply(input.facing),
    padding: input.padding === null ? null : input.padding * by,
    webbingThickness: input.webbingThickness * by,
    choices,
  };
}

const thickness = fc.double({ min: 0.05, max: 2, noNaN: true });

/** Every choice in mm is named, so that scaling scales them all. */
const choices = fc.record({
  hem: fc.double({ min: 3, max: 9, noNaN: true }),
  setback: fc.double({ min: 0, max: 6, noNaN: true }),
  reveal: fc.double({ min: 0, max: 5, noNaN: true }),
  seamAllowance: fc.double({ min: 4, max: 12, noNaN: true }),
  margin: fc.double({ min: 0, max: 5, noNaN: true }),
  turn: fc.double({ min: 4, max: 9, noNaN: true }),
});

const cases: fc.Arbitrary<Case> = fc
  .record({
    id: fc.constantFrom(...LAYERED),
    thickness,
    facing: thickness,
    neutral: fc.double({ min: 0, max: 1, noNaN: true }),
    radius: fc.constantFrom(0, 0.5, 1),
    clearance: fc.option(fc.double({ min: 0, max: 1, noNaN: true })),
    choices,
    width: fc.double({ min: 45, max: 120, noNaN: true }),
  })
  .map(({ id, thickness, facing, neutral, radius, clearance, choices, width }) => ({
    id,
    width,
    input: {
      outer: { role: "outer", thickness, neutral, leastRadius: radius * thickness },
      facing: { role: "facing", thickness: facing, neutral, leastRadius: radius * facing },
      ownFacing: true,
      clearance,
      padding: null,
      webbingThickness: 2,
      choices,
    },
  }));

function planFor({ id, input }: Pick<Case, "id" | "input">): SectionPlan {
  return planOf(CONSTRUCTIONS[id], input);
}

test("cut width of a finished width, solved back, is that width; and the other way round", () => {
  fc.assert(
    fc.property(cases, (one) => {
      const plan = planFor(one);
      const forward = sectionAtFinishedWidth(plan, one.width);
      expect(sectionAtCutWidth(plan, forward.strips[0]!.width).finishedWidth).toBeCloseTo(one.width, 7);
      const back = sectionAtCutWidth(plan, one.width * 3);
      expect(sectionAtFinishedWidth(plan, back.finishedWidth).strips[0]!.width).toBeCloseTo(one.width * 3, 7);
    }),
  );
});

test("without thickness the cut width is the round multiple exactly", () => {
  // Common practice, no source: the rules of the trade, T = 0.
  const rules: Partial<Record<ConstructionId, (w: number, c: OpenSectionInput["choices"]) => number>> = {
    fourfold: (w) => 4 * w,
    tab: (w) => 4 * w,
    "three-raw": (w, c) => 3 * w - c.setback!,
    "two-layer": (w) => 2 * w,
    "sewn-turned": (w, c) => w + 2 * c.seamAllowance! + 2 * c.reveal!,
    tube: (w, c) => 2 * w + 2 * c.seamAllowance!,
    bonded: (w) => w,
    "webbing-overlay": (w, c) => w - 2 * c.margin! + 2 * c.turn!,
    "webbing-sleeve": (w) => 4 * w + 2 * 2,
  };
  fc.assert(
    fc.property(cases, ({ id, input, width }) => {
      const rule = rules[id];
      if (!rule) return;
      const ply = { ...input.outer, thickness: 0, leastRadius: 0 };
      const plan = planFor({ id, input: { ...input, outer: ply, facing: { ...ply, role: "facing" } } });
      expect(sectionAtFinishedWidth(plan, width).strips[0]!.width).toBeCloseTo(rule(width, input.choices), 9);
    }),
  );
});

function bendsCorrection(section: SolvedSection): number {
  let sum = 0;
  for (const strip of section.strips) {
    for (const segment of strip.segments) {
      if (segment.kind === "run") continue;
      const reach =
        (segment.kind === "bend" ? 2 * segment.insideRadius : 0) +
        strip.plan.ply.thickness * (segment.kind === "bend" ? 2 : 1);
      sum += reach - (segment.flatTo - segment.flatFrom);
    }
  }
  return sum;
}

test("layers across the strap add up to the cut widths, once bends are counted as the two layers they join", () => {
  fc.assert(
    fc.property(cases, (one) => {
      const plan = planFor(one);
      fc.pre(one.width > leastWidth(plan) + 2);
      const section = sectionAtFinishedWidth(plan, one.width);
      const layers = thicknessProfile(section).reduce((sum, span) => sum + span.layers * (span.to - span.from), 0);
      const cores = section.slabs.reduce((sum, slab) => sum + slab.toX - slab.fromX, 0);
      const widths = section.strips.reduce((sum, strip) => sum + strip.width, 0);
      expect(layers - cores - bendsCorrection(section)).toBeCloseTo(widths, 6);
    }),
  );
});

test("segments follow each other on the flat strip without gap, and end at the cut width", () => {
  fc.assert(
    fc.property(cases, (one) => {
      for (const strip of sectionAtFinishedWidth(planFor(one), one.width).strips) {
        let flat = 0;
        for (const segment of strip.segments) {
          expect(segment.flatFrom).toBeCloseTo(flat, 9);
          flat = segment.flatTo;
        }
        expect(flat).toBeCloseTo(strip.width, 9);
      }
    }),
  );
});

test("everything twice as large is cut twice as wide", () => {
  fc.assert(
    fc.property(cases, fc.double({ min: 0.1, max: 10, noNaN: true }), ({ id, input, width }, by) => {
      const once = sectionAtFinishedWidth(planFor({ id, input }), width).strips.map((strip) => strip.width);
      const times = sectionAtFinishedWidth(planFor({ id, input: scaled(input, by) }), width * by);
      times.strips.forEach((strip, i) => {
        expect(strip.width / by).toBeCloseTo(once[i]!, 6);
      });
    }),
  );
});

test("a thicker material moves the allowance of a construction always the same way", () => {
  fc.assert(
    fc.property(cases, thickness, thickness, ({ id, input, width }, a, b) => {
      const bare = { ...input, choices: {} };
      const cut = (t: number): number => {
        const outer = { ...input.outer, thickness: t, leastRadius: 0 };
        return sectionAtFinishedWidth(planFor({ id, input: { ...bare, outer, facing: outer } }), width).strips[0]!
          .width;
      };
      const [thin, thick] = [Math.min(a, b), Math.max(a, b)];
      const none = cut(0);
      const [first, second] = [cut(thin) - none, cut(thick) - none];
      expect(Math.abs(second)).toBeGreaterThanOrEqual(Math.abs(first) - 1e-9);
      expect(first * second).toBeGreaterThanOrEqual(-1e-12);
    }),
  );
});

test("the trade's and the model's allowance of a wider strap is the same: only the runs grow", () => {
  fc.assert(
    fc.property(cases, fc.double({ min: 1, max: 50, noNaN: true }), ({ id, input, width }, wider) => {
      const plan = planFor({ id, input });
      const slope = (by: number) =>
        (sectionAtFinishedWidth(plan, width + by).strips[0]!.width -
          sectionAtFinishedWidth(plan, width).strips[0]!.width) /
        by;
      expect(slope(wider)).toBeCloseTo(slope(1), 6);
    }),
  );
});

test("a strip of interfacing under the face adds its level and never a narrower strip", () => {
  fc.assert(
    fc.property(cases, fc.double({ min: 0.1, max: 0.4, noNaN: true }), (one, thin) => {
      const plan = planFor(one);
      const more = withFaceInterfacing(plan, thin);
      expect(levelThicknesses(more)).toHaveLength(levelThicknesses(plan).length + 1);
      const sum = (of: SectionPlan) => levelThicknesses(of).reduce((total, level) => total + level, 0);
      expect(sum(more)).toBeCloseTo(sum(plan) + thin, 9);
    }),
  );
});

test("the drawn strip is as large as the cut one: area = cut width × thickness where the middle keeps its length", () => {
  fc.assert(
    fc.property(cases, (one) => {
      const half = (ply: OpenSectionInput["outer"]) => ({ ...ply, neutral: 0.5, leastRadius: 0 });
      const input = { ...one.input, outer: half(one.input.outer), facing: half(one.input.facing) };
      const plan = planFor({ id: one.id, input });
      fc.pre(!plan.settles && one.width > leastWidth(plan) + 2);
      const section = sectionAtFinishedWidth(plan, one.width);
      const height = levelHeights(section);
      for (const strip of section.strips) {
        // A quarter turn round a sharp corner at an edge is drawn with its own arc, so it is counted the same way.
        const area = Math.abs(signedArea(flattenContour(stripOutline(section, strip, height).contour, 1e-5)));
        expect(area / strip.plan.ply.thickness).toBeCloseTo(strip.width, 2);
      }
    }),
    { numRuns: 60 },
  );
});
