import fc from "fast-check";
import { expect, test } from "vitest";
import { checkPlan } from "../../lay/check/checkPlan.ts";
import { inOneGo } from "../../lay/search/breath.ts";
import { readProject } from "../../project/file/readProject.ts";
import { bagSteps, bagsFrom, freeBags, lengthSteps } from "./bagSteps.ts";

const CELL = { sold: { width: 1000, amount: null }, construction: null, direction: null, joins: null };
const WISH = { materialId: "canvas", mode: "free", evaluations: 5000, seed: 1 } as const;

function stepsOf(panels: readonly [along: number, across: number, count: number][], most: number) {
  const read = readProject(
    JSON.stringify({
      ...{ laywright: 1, name: "Quay", unit: "mm", bags: 1, currency: "EUR", gap: 0, margin: 0 },
      materials: [
        {
          ...{ id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5 },
          price: { amount: 20, per: "m", step: "10 cm" },
          stock: [{ kind: "roll", id: "roll", width: 1000, selvedge: 0, squaring: 0 }],
        },
      ],
      straps: [],
      panels: panels.map(([along, across, count], i) => ({
        ...{ id: `p${i}`, material: "canvas", count, seamAllowance: 0, grain: "lengthwise" },
        shape: { kind: "rectangle", along, across },
      })),
    }),
  );
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const answer = inOneGo(bagSteps(read.value, CELL, most, WISH));
  if (answer.kind === "barred") throw new Error("nothing can be cut");
  return answer.steps;
}

// Exact arithmetic: panels of 300 × 250 mm lie four side by side on a metre, so every fourth bag takes 300 mm more.
test("three bags in four cost no cloth, and a length says how many it makes", () => {
  const steps = stepsOf([[300, 250, 1]], 9);
  expect(steps.map(({ row }) => row.usedLength)).toEqual([300, 300, 300, 300, 600, 600, 600, 600, 900]);
  expect(steps.map(({ row }) => row.toPay)).toEqual([600, 600, 600, 600, 1200, 1200, 1200, 1200, 1800]);
  expect(freeBags(steps)).toEqual([2, 3, 4, 6, 7, 8]);
  expect(lengthSteps(steps)).toEqual([
    { length: 300, toPay: 600, bags: 4 },
    { length: 600, toPay: 1200, bags: 8 },
    { length: 900, toPay: 1800, bags: 9 },
  ]);
  expect([299, 300, 599, 600, 10_000].map((length) => bagsFrom(steps, length))).toEqual([0, 4, 4, 8, 9]);
});

const mm = (least: number, most: number) => fc.integer({ min: least / 10, max: most / 10 }).map((n) => 10 * n);

test("laws: more bags never take less or cost less, more cloth never makes fewer, every plan is sound", () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(mm(100, 500), mm(100, 900), fc.integer({ min: 1, max: 3 })), {
        minLength: 1,
        maxLength: 3,
      }),
      (panels) => {
        const steps = stepsOf(panels, 5);
        for (const [i, { bags, row }] of steps.entries()) {
          expect(bags).toBe(i + 1);
          expect(checkPlan(row.problem, row.plan)).toEqual([]);
          expect(row.plan.placements).toHaveLength(panels.reduce((sum, [, , count]) => sum + bags * count, 0));
          if (i === 0) continue;
          expect(row.usedLength).toBeGreaterThanOrEqual(steps[i - 1]!.row.usedLength - 1e-6);
          expect(row.toPay!).toBeGreaterThanOrEqual(steps[i - 1]!.row.toPay!);
        }
        let before = 0;
        for (let length = 0; length <= 4000; length += 100) {
          expect(bagsFrom(steps, length)).toBeGreaterThanOrEqual(before);
          before = bagsFrom(steps, length);
        }
      },
    ),
    { numRuns: 20 },
  );
}, 120_000);
