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
