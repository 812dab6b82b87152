// Layers and folds: face to face gives mirrored pairs, face up does not; half pieces on a fold want symmetric pieces
// (common practice, no source). Areas and counts are exact arithmetic.
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ringBox } from "../../src/core/geometry/box.ts";
import { polygonArea } from "../../src/core/geometry/ring.ts";
import { layProblemsOf } from "../../src/core/job/layProblems.ts";
import { jobOf } from "../../src/core/job/projectJob.ts";
import { checkPlan } from "../../src/core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../src/core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../src/core/lay/problem/layProblem.ts";
import { arrange } from "../../src/core/lay/search/arrange/arrange.ts";
import { inOneGo } from "../../src/core/lay/search/breath.ts";
import { laidForms } from "../../src/core/materials/laidForms.ts";
import type { Spread } from "../../src/core/materials/spread.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";
import type { Project } from "../../src/core/project/project.ts";

const spread: fc.Arbitrary<"folded" | { layers: number; faces: "up" | "together" }> = fc.oneof(
  fc.constant("folded" as const),
  fc.record({ layers: fc.integer({ min: 2, max: 50 }), faces: fc.constant("up" as const) }),
  fc.record({ layers: fc.integer({ min: 1, max: 25 }).map((n) => 2 * n), faces: fc.constant("together" as const) }),
);
const mm = fc.integer({ min: 60, max: 300 });

/** A rectangle, a right triangle (which has a hand), or half a panel on a fold along its grain. */
const panel = fc.oneof(
  fc.tuple(mm, mm).map(([along, across]) => ({ shape: { kind: "rectangle", along, across } })),
  fc.tuple(mm, mm).map(([w, h]) => ({
    shape: {
      kind: "outline",
      points: [
        [0, 0],
        [w, 0],
        [0, h],
      ],
    },
  })),
  fc.tuple(mm, mm).map(([w, h]) => ({
    shape: {
      kind: "outline",
      points: [
        [0, 0],
        [w, 0],
        [w, h / 2],
        [w / 2, h],
        [0, h],
      ],
    },
    fold: 0,
  })),
);
const panels = fc.array(
  fc.tuple(panel, fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 4 }), fc.constantFrom(0, 6)),
  { minLength: 1, maxLength: 4 },
);

const jobs = fc
  .record({
    spread,
    panels,
    bags: fc.integer({ min: 1, max: 3 }),
    oneWay: fc.boolean(),
    facesAlike: fc.boolean(),
    gap: fc.constantFrom(0, 2),
    margin: fc.constantFrom(0, 5),
    length: fc.constantFrom<string | number>("open", "open", 4000),
  })
  .map(({ spread: how, panels: list, length, oneWay, facesAlike, ...rest }) => ({
    laywright: 1,
    name: "Made up",
    unit: "mm",
    ...rest,
    materials: [
      {
        ...{ id: "cloth", kind: "woven", thickness: 0.5, grain: "lengthwise", oneWay, facesAlike, spread: how },
        stock: [{ kind: "roll", id: "roll", width: 1000, selvedge: 10, length }],
      },
    ],
    panels: list.map(([each, count, mirrored, seamAllowance], i) => ({
      ...{ id: `p${i}`, material: "cloth", ...each, mirrored, seamAllowance },
      count: count + mirrored === 0 ? 1 : count,
    })),
  }));

function projectOf(file: unknown): Project {
  const read = readProject(JSON.stringify(file));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

function laid(file: unknown): { project: Project; problem: LayProblem; plan: LayPlan } {
  const project = projectOf(file);
  const problem = jobOf(project).lays[0]!.problem;
  const plan = inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 20_000 }, 1));
  return { project, problem, plan };
}

/** What falls out when the plan is cut through all layers, piece by piece, told by the layers themselves. */
function cutThrough(how: Spread, problem: LayProblem, plan: LayPlan, pieceId: string) {
  const hands = { asDrawn: 0, mirrored: 0, whole: 0 };
  for (const placement of plan.placements) {
    const piece = problem.pieces.find(({ id }) => id === placement.pieceId)!;
    if (piece.gives!.of !== pieceId) continue;
    if (piece.gives!.onFold) {
      hands.whole++;
      continue;
    }
    const layers = how.kind === "folded" ? 2 : how.layers;
    const isImage = placement.pieceId.endsWith("~mirrored") !== placement.mirrored;
    for (let layer = 0; layer < layers; layer++) {
      const isOver = (how.kind === "folded" || how.faces === "together") && layer % 2 === 1;
      hands[isImage !== isOver ? "mirrored" : "asDrawn"]++;
    }
  }
  return hands;
}

describe("random jobs on several layers", () => {
  test("every plan passes the checker, and cutting it through gives what is asked for, hand by hand", () => {
    fc.assert(
      fc.property(jobs, (file) => {
        const { project, problem, plan } = laid(file);
        expect(checkPlan(problem, plan)).toEqual([]);
        if (plan.unplaced.length > 0) return;
        const how = project.materials[0]!.spread!;
        for (const piece of jobOf(project).pieces) {
          const given = cutThrough(how, problem, plan, piece.id);
          const ways = file.panels.find(({ id }) => id === piece.id)!;
          const isHanded = "points" in ways.shape && !("fold" in ways) && !file.materials[0]!.facesAlike;
          if (isHanded) {
            expect(given.asDrawn).toBeGreaterThanOrEqual(piece.count);
            expect(given.mirrored).toBeGreaterThanOrEqual(piece.mirroredCount);
          }
          const all = given.asDrawn + given.mirrored + given.whole;
          expect(all).toBeGreaterThanOrEqual(piece.count + piece.mirroredCount);
        }
      }),
      { numRuns: 60 },
    );
  }, 120_000);

  test("a half on the fold opens out to the whole piece: twice its area, and its drawing has the lay's outline", () => {
    fc.assert(
      fc.property(jobs, (file) => {
        const project = projectOf({ ...file, materials: [{ ...file.materials[0]!, spread: "folded" }] });
        const job = jobOf(project);
        for (const { id, outline, gives } of job.lays[0]!.problem.pieces) {
          if (!gives!.onFold) continue;
          const whole = job.pieces.find((piece) => piece.id === gives!.of)!;
          expect(2 * polygonArea(outline)).toBeCloseTo(polygonArea(whole.outline), 3);
          expect(ringBox(outline.outer).minY).toBe(0);
          const form = laidForms(whole).find(({ piece }) => piece.id === id)!;
          expect(form.piece.outline).toEqual(outline);
        }
      }),
      { numRuns: 60 },
    );
  });
});

const HALF = {
  ...{ id: "body", material: "cloth", count: 3, seamAllowance: 6, fold: 0 },
  shape: {
    kind: "outline",
    points: [
      [0, 0],
      [300, 0],
      [300, 100],
      [0, 160],
    ],
  },
};
const SIDE = {
  ...{ id: "side", material: "cloth", count: 2, mirrored: 2 },
  shape: {
    kind: "outline",
    points: [
      [0, 0],
      [200, 0],
      [0, 150],
    ],
  },
};
const file = (how: unknown, panelsOf: readonly object[], margin = 0) => ({
  ...{ laywright: 1, name: "Made up", unit: "mm", margin },
  materials: [
    {
      ...{ id: "cloth", kind: "woven", thickness: 0.5, grain: "lengthwise", spread: how },
      stock: [{ kind: "roll", id: "roll", width: 1000, selvedge: 0 }],
    },
  ],
  panels: panelsOf,
});

describe("planted violations", () => {
  const codes = (problem: LayProblem, plan: LayPlan) => checkPlan(problem, plan).map(({ code }) => code);

  test("a half that is moved off the fold, or turned away from it", () => {
    const { problem, plan } = laid(file("folded", [HALF]));
    expect(codes(problem, plan)).toEqual([]);
    const at = plan.placements.findIndex(({ pieceId }) => pieceId === "body~fold");
    const moved = (more: object) => ({
      ...plan,
      placements: plan.placements.map((one, i) => (i === at ? { ...one, ...more } : one)),
    });
    expect(codes(problem, moved({ y: 5 }))).toContain("plan-off-fold");
    expect(codes(problem, moved({ y: 0.01 }))).toContain("plan-off-fold");
    expect(codes(problem, moved({ y: 400, turnDeg: 180 }))).toContain("plan-off-fold");
    const flat = { ...problem, stocks: problem.stocks.map((stock) => ({ ...stock, folded: undefined })) };
    expect(codes(flat as never, plan)).toContain("plan-off-fold");
  });

  test("a piece laid once too few or too often for its layers", () => {
    const { problem, plan } = laid(file({ layers: 4, faces: "together" }, [{ ...SIDE, count: 6, mirrored: 6 }]));
    expect(codes(problem, plan)).toEqual([]);
    const side = problem.pieces[0]!;
    expect(side.count).toBe(3);
    const fewer = { ...problem, pieces: [{ ...side, count: 2 }] };
    const less = { ...plan, placements: plan.placements.filter(({ copy }) => copy < 2) };
    expect(codes(fewer, less)).toEqual(expect.arrayContaining(["plan-layers-miscounted"]));
    const asked = { ...problem.spread!, asked: [{ pieceId: "side", asDrawn: 4, mirrored: 4 }] };
    expect(codes({ ...problem, spread: asked }, plan)).toEqual(["plan-layers-miscounted"]);
  });

  test("a hand that the layers do not give", () => {
    const { problem, plan } = laid(file({ layers: 4, faces: "up" }, [SIDE]));
    expect(codes(problem, plan)).toEqual([]);
    const claims = (gives: object) => ({
      ...problem,
      pieces: problem.pieces.map((piece) => ({ ...piece, gives: { ...piece.gives!, ...gives } })),
    });
    expect(codes(claims({ asDrawn: 2, mirrored: 2 }), plan)).toContain("plan-hands-untrue");
    expect(codes(claims({ onFold: true, asDrawn: 1, mirrored: 0 }), plan)).toContain("plan-hands-untrue");
    // Face to face, a triangle of one hand cannot count as both.
    const faced = laid(file("folded", [SIDE]));
    const both = faced.problem.pieces.map((piece) => ({
      ...piece,
      gives: { ...piece.gives!, asDrawn: 2, mirrored: 0 },
    }));
    expect(codes({ ...faced.problem, pieces: both }, faced.plan)).toContain("plan-hands-untrue");
  });

  test("the margin is kept from every edge but the fold", () => {
    const { problem, plan } = laid(file("folded", [HALF], 20));
    expect(codes(problem, plan)).toEqual([]);
    expect(plan.placements.every(({ pieceId, y }) => pieceId !== "body~fold" || y === 0)).toBe(true);
    expect(Math.min(...plan.placements.map(({ x }) => x))).toBeGreaterThanOrEqual(19.99);
  });
});

test("face to face and folded, a pair is laid once; face up, both are", () => {
  const lays = (how: unknown) =>
    layProblemsOf(...listed(file(how, [SIDE])))[0]!.pieces.map(({ id, count }) => [id, count]);
  expect(lays("folded")).toEqual([["side", 2]]);
  expect(lays({ layers: 2, faces: "together" })).toEqual([["side", 2]]);
  expect(lays({ layers: 2, faces: "up" })).toEqual([
    ["side", 1],
    ["side~mirrored", 1],
  ]);
});

test("a flaw is kept clear of in both layers of folded cloth", () => {
  const base = file("folded", [SIDE]);
  const flawed = {
    ...base,
    materials: [
      {
        ...base.materials[0]!,
        stock: [
          {
            ...{ kind: "roll", id: "roll", width: 1000, selvedge: 0, squaring: 0 },
            flaws: [{ at: [0, 700], shape: { kind: "rectangle", along: 50, across: 40 } }],
          },
        ],
      },
    ],
  };
  const { problem, plan } = laid(flawed);
  expect(checkPlan(problem, plan)).toEqual([]);
  // 700 to 740 from the lower edge is 200 to 240 from the fold at 500.
  const boxes = problem.stocks[0]!.flaws.map(({ outer }) => ringBox(outer));
  expect(boxes.some(({ minY, maxY }) => minY === 200 && maxY === 240)).toBe(true);
});

function listed(of: unknown): Parameters<typeof layProblemsOf> {
  const project = projectOf(of);
  const { pieces, straps, heldLengthwise } = jobOf(project);
  return [project, { pieces, straps, heldLengthwise }];
}
