import { expect, test } from "vitest";
import { checkPlan } from "../lay/check/checkPlan.ts";
import { chooseEngines } from "../lay/engines/chooseEngines.ts";
import { arrange } from "../lay/search/arrange/arrange.ts";
import { inOneGo } from "../lay/search/breath.ts";
import { readProject } from "../project/file/readProject.ts";
import { jobOf } from "./projectJob.ts";

test("on layers face to face a matched piece that would have to be turned gives both hands, not one", () => {
  const points = [
    [0, 0],
    [118, 0],
    [82, 178],
    [36, 178],
  ];
  const file = {
    ...{ laywright: 1, name: "layers", unit: "mm", bags: 1 },
    materials: [
      {
        ...{ id: "cloth", kind: "felt", thickness: 1.4, spread: { layers: 2, faces: "together" }, repeat: 44 },
        stock: [{ kind: "roll", id: "roll", width: 726 }],
      },
    ],
    panels: [
      {
        ...{
          id: "flap",
          name: "Flap",
          material: "cloth",
          count: 3,
          mirrored: 1,
          grain: "either",
          seamAllowance: 6,
        },
        shape: { kind: "outline", points },
      },
    ],
    centred: [{ part: "flap", on: "between" }],
  };
  const read = readProject(JSON.stringify(file));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { problem } = jobOf(read.value).lays[0]!;
  expect(problem.pieces.map(({ gives }) => gives)).toMatchObject([{ asDrawn: 1, mirrored: 1 }]);
  const plan = inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 1000 }, 1));
  expect(checkPlan(problem, plan)).toEqual([]);
});

test("on a short folded roll with no room for all halves in a row, no half lies there that the whole ones give anyway", () => {
  const panel = { material: "cloth", mirrored: 0, seamAllowance: 0 };
  const file = {
    ...{ laywright: 1, name: "fold", unit: "mm", bags: 2, gap: 0, margin: 0 },
    materials: [
      {
        ...{ id: "cloth", kind: "woven", thickness: 1, spread: "folded" },
        stock: [{ kind: "roll", id: "roll", width: 240, selvedge: 0, squaring: 0, length: 1500 }],
      },
    ],
    panels: [
      // Whole neither lies beside the fold of 120 mm; of the two wide halves of the second only one has room behind the others.
      {
        ...panel,
        id: "wide",
        count: 2,
        grain: "lengthwise",
        shape: { kind: "rectangle", along: 330, across: 230 },
      },
      {
        ...panel,
        id: "deep",
        count: 1,
        grain: "lengthwise",
        shape: { kind: "rectangle", along: 150, across: 228 },
      },
    ],
  };
  const read = readProject(JSON.stringify(file));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { problem } = jobOf(read.value).lays[0]!;
  expect(problem.pinned.map(({ pieceId }) => pieceId)).not.toContain("deep~fold");
  const plan = inOneGo(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: 1000 }, 1));
  expect(checkPlan(problem, plan)).toEqual([]);
  expect(plan.unplaced.map(({ pieceId }) => pieceId)).toEqual(["deep"]);
});
