import { expect, test } from "vitest";
import { sampleMaterial } from "../../../tests/tools/sampleMaterial.ts";
import { samplePiece } from "../../../tests/tools/samplePlan.ts";
import { rectangleContour } from "../geometry/contourShapes.ts";
import { cuttingCautions } from "./cuttingCautions.ts";

const panel = samplePiece("panel", rectangleContour(0, 0, 100, 100));
const codes = (...given: Parameters<typeof cuttingCautions>) => cuttingCautions(...given).map(({ code }) => code);

test("fusing burns fingers on a bag of panels alone, whatever the cloth", () => {
  const cloth = sampleMaterial("c", { kind: "woven" });
  const fusible = sampleMaterial("f", { kind: "interfacing" });
  expect(codes([cloth], [panel])).not.toContain("hot-iron");
  expect(codes([cloth, fusible], [panel])).toContain("hot-iron");
});

test.each(["leather", "vinyl", "cork"] as const)("%s is cut and skived with a blade", (kind) => {
  expect(codes([sampleMaterial("m", { kind, coating: "pu" })], [panel])).toContain("sharp-blades");
  expect(codes([sampleMaterial("m", { kind: "woven" })], [panel])).not.toContain("sharp-blades");
});

test("a machine has its own cautions, first those of what cuts", () => {
  const cloth = [sampleMaterial("c")];
  expect(codes(cloth, [panel])).not.toContain("cutting-machine");
  expect(codes(cloth, [panel], [], "knife")[0]).toBe("cutting-machine");
  expect(codes(cloth, [panel], [], "laser")[0]).toBe("laser-fumes");
});

test("what a laser must not touch is named: unknown coating, foam, felt, fusible and webbing of unknown make", () => {
  const unsafe = [
    sampleMaterial("a", { coating: "unknown" }),
    sampleMaterial("b", { coating: "pvc" }),
    ...(["padding", "felt", "interfacing", "webbing"] as const).map((kind) =>
      sampleMaterial(kind, { kind, polymer: "unknown" }),
    ),
  ];
  const safe = [sampleMaterial("s"), sampleMaterial("wool", { kind: "felt", polymer: "none" })];
  const named = cuttingCautions([...safe, ...unsafe], [panel]).find(({ code }) => code === "laser-pvc");
  expect(named).toEqual({ code: "laser-pvc", materials: unsafe.map(({ name }) => name) });
});
