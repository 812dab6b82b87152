import { expect, test } from "vitest";
import { sampleMaterial } from "../../../../tests/tools/sampleMaterial.ts";
import { PIECES } from "../../../../tests/tools/samplePlan.ts";
import type { Problem } from "../../problems/problem.ts";
import type { Project } from "../../project/project.ts";
import { namedProblem } from "./namedProblem.ts";

const roll = { kind: "roll", id: "r", width: 1400, selvedge: 0, length: null, squaring: 0, flaws: [] } as const;
const project = {
  materials: [sampleMaterial("canvas", { name: "Waxed canvas", stock: [roll] }), sampleMaterial("felt")],
  output: { lengths: "mm" },
} as unknown as Project;
const named = (problem: object) => namedProblem(problem as Problem, project, PIECES, "en");

test("a material, a piece and a stock are told by the names that the maker gave", () => {
  expect(named({ code: "x", materialId: "canvas" })).toMatchObject({ materialId: "Waxed canvas" });
  expect(named({ code: "x", materialId: "gone" })).toMatchObject({ materialId: "gone" });
  expect(named({ code: "x", pieceId: "strap" })).toMatchObject({ pieceId: "Shoulder strap" });
  expect(named({ code: "x", pieceId: "gone" })).toMatchObject({ pieceId: "gone" });
  expect(named({ code: "x" })).toEqual({ code: "x" });
});

test("one of several copies is told with its number, one alone without; the other piece of a pair as well", () => {
  expect(named({ code: "x", pieceId: "strap", copy: 1, other: { pieceId: "body", copy: 0 } })).toEqual({
    ...{ code: "x", pieceId: "strap", copy: 1, name: "Shoulder strap 2" },
    other: { pieceId: "body", copy: 0, name: "Body" },
  });
  expect(named({ code: "x", pieceId: "gone", copy: 0 })).toEqual({ code: "x", pieceId: "gone", copy: 0 });
});

test("where a piece lies is told by the stock's name, where it is one of the project's", () => {
  expect(named({ code: "x", pieceId: "tab", copy: 0, stockId: "r" })).toMatchObject({
    stockName: "roll, 1400 mm wide",
  });
  expect(named({ code: "x", pieceId: "tab", copy: 0, stockId: "gone" })).not.toHaveProperty("stockName");
});
