// Each note on a strap stands from its own limit on, and not before. Limits: common practice, no source, or from memory;
// each with its constant.
import { expect, test } from "vitest";
import { build, codes, of, type Wish, wish } from "../../../../tests/tools/makersStraps.ts";
import { CAUTION_TABLES } from "../../words/words.ts";
import type { ConstructionId, StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import type { StrapResult } from "./strapResult.ts";

function strap(
  construction: ConstructionId,
  material: StrapMaterial,
  more: Wish = {},
  also: Partial<StrapWish> = {},
): StrapResult {
  const built = buildStrap({ ...wish(construction, material.id, more), ...also }, [
    material,
    of("fuse", "interfacing", 0.2),
  ]);
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  return built.value;
}
const vinyl = (thickness: number, more: Partial<StrapMaterial> = {}) => of("v", "vinyl", thickness, more);
const said = (result: StrapResult, code: string) => result.warnings.find((one) => one.code === code);
const has = (result: StrapResult, code: string) => said(result, code) !== undefined;

test("hardware wider than the strap by more than 2 mm is loose, each kind by its own name", () => {
  for (const kind of ["ring", "clasp", "slider"] as const) {
    const loose = (innerWidth: number) => build("fourfold", "vinyl", { hardware: [{ kind, innerWidth }] });
    expect(has(loose(40), `${kind}-loose`)).toBe(false);
    expect(said(loose(40.1), `${kind}-loose`)?.lengths).toEqual({ inner: 40.1, width: 38, tolerance: 2 });
  }
});

test("what a worn length does not know of its hardware is said, of sliders never", () => {
  const worn = (hardware: StrapWish["hardware"], kind: "worn" | "finished" = "worn") =>
    codes(strap("fourfold", vinyl(1), { hardware }, { length: { kind, mm: 900 } }));
  expect(worn([{ kind: "ring", innerWidth: 38 }])).toContain("ring-length-unknown");
  expect(worn([{ kind: "ring", innerWidth: 38, length: 0 }])).not.toContain("ring-length-unknown");
  expect(worn([{ kind: "ring", innerWidth: 38 }], "finished")).not.toContain("ring-length-unknown");
  expect(worn([{ kind: "slider", innerWidth: 38 }]).filter((code) => code.endsWith("length-unknown"))).toEqual([]);
});

test("a slider's opening: unknown, tight below four, slipping above ten thicknesses; a fixed bar below 2 mm", () => {
  const slider = (thickness: number, more: object) =>
    strap("fourfold", vinyl(thickness), { hardware: [{ kind: "slider", innerWidth: 38, ...more }] });
  const notes = (result: StrapResult) => codes(result).filter((code) => code.startsWith("slider"));
  expect(said(slider(1, {}), "slider-opening-unknown")?.lengths).toEqual({ needed: 16 });
  expect(notes(slider(1, { opening: 16 }))).toEqual([]);
  expect(said(slider(1, { opening: 15 }), "slider-tight")?.lengths).toEqual({
    opening: 15,
    thickness: 4,
    needed: 16,
  });
  expect(notes(slider(1, { opening: 40 }))).toEqual([]);
  expect(said(slider(1, { opening: 40.1 }), "slider-slips")?.lengths).toEqual({ opening: 40.1, thickness: 4 });
  expect(notes(slider(0.5, { opening: 10, fixedBar: true }))).toEqual([]);
  expect(notes(slider(0.49, { opening: 10, fixedBar: true }))).toEqual(["slider-fixed-bar"]);
  expect(notes(slider(0.49, { opening: 10, fixedBar: false }))).toEqual([]);
  expect(notes(strap("fourfold", vinyl(1), { hardware: [{ kind: "ring", innerWidth: 38 }] }))).toEqual([]);
});

test("under the needle: her own limits where she says them, a home machine's quarter of an inch where not", () => {
  const notes = (result: StrapResult) => codes(result).filter((code) => /machine/u.test(code));
  const of4 = (machine: StrapWish["machine"]) => strap("fourfold", vinyl(1), { machine });
  expect(notes(of4({ maxThickness: 4, maxLayers: 4 }))).toEqual([]);
  expect(said(of4({ maxThickness: 3.9 }), "machine-thickness")).toMatchObject({
    lengths: { thickness: 4, limit: 3.9 },
    counts: { layers: 4 },
    where: "along",
  });
  expect(said(of4({ maxLayers: 3 }), "machine-layers")).toMatchObject({ counts: { layers: 4, most: 3 } });
  // What does not go under the foot is not sewn, whatever the needle could do; the foot alone says as much.
  expect(said(of4({ maxThickness: 9, footLift: 3 }), "machine-thickness")?.lengths).toMatchObject({ limit: 3 });
  expect(said(of4({ footLift: 3 }), "machine-thickness")?.lengths).toMatchObject({ limit: 3 });
  expect(notes(of4({ footLift: 9 }))).toEqual([]);
  expect(notes(strap("fourfold", vinyl(1.6)))).toEqual([]);
  expect(notes(strap("fourfold", vinyl(1.61)))).toEqual(["home-machine"]);
  expect(notes(strap("fourfold", of("v", "leather", 1.61)))).toEqual(["home-machine", "machine-skive"]);
  expect(notes(strap("fourfold", of("v", "leather", 1.6)))).toEqual([]);
});

test("a strap thicker than a third of its width is stout; one of a single layer is not looked at", () => {
  expect(has(strap("fourfold", vinyl(1), { width: 12 }), "strap-stout")).toBe(false);
  expect(said(strap("fourfold", vinyl(1), { width: 11.9 }), "strap-stout")?.lengths).toEqual({
    width: 11.9,
    thickness: 4,
  });
  const core = { webbingWidth: 10, webbingThickness: 9 };
  expect(
    has(strap("webbing-overlay", vinyl(0.3), { width: null, core, folds: { turn: 2, margin: 0 } }), "strap-stout"),
  ).toBe(false);
});

test("a tube of 10 mm in 1 mm cloth is hard to turn from half a metre on; what is not pulled through never", () => {
  const tube = (length: number) => strap("tube", vinyl(1), { width: 10, length, folds: { seamAllowance: 3 } });
  expect(has(tube(500), "hard-to-turn")).toBe(false);
  expect(said(tube(501), "hard-to-turn")?.lengths).toEqual({ length: 501, width: 10 });
  expect(has(strap("fourfold", vinyl(1), { width: 10, length: 5000 }), "hard-to-turn")).toBe(false);
});

test("a gap too small for the crease, a stitch too short for vinyl, a webbing nobody sells", () => {
  const gap = (edgeGap: number) => strap("fourfold", vinyl(1), { folds: { edgeGap } });
  // Facts 2.12: 1.36 T.
  expect(has(gap(1.36), "edges-collide")).toBe(false);
  expect(said(gap(1.35), "edges-collide")?.lengths).toEqual({ gap: 1.35, least: expect.closeTo(1.356, 3) });
  const stitched = (length: number, kind: StrapMaterial["kind"]) =>
    strap("fourfold", of("v", kind, 0.6), { stitch: { length } });
  expect(has(stitched(3, "vinyl"), "stitch-short")).toBe(false);
  expect(said(stitched(2.9, "vinyl"), "stitch-short")?.lengths).toEqual({ stitch: 2.9, least: 3 });
  expect(has(stitched(2, "woven"), "stitch-short")).toBe(false);
  expect(has(strap("fourfold", vinyl(0.6)), "stitch-short")).toBe(false);
  const overlay = (width: number) => strap("webbing-overlay", vinyl(0.5), { width });
  expect(has(overlay(38.5), "webbing-width")).toBe(false);
  expect(said(overlay(38.6), "webbing-width")?.lengths).toEqual({ width: 38.6, nearest: 38 });
  expect(said(overlay(45), "webbing-width")?.lengths).toEqual({ width: 45, nearest: 50 });
  // Once round it, a webbing is as wide as the strap less the cloth on both sides.
  const cover = strap("webbing-sleeve", vinyl(0.5), { width: 40, folds: { layers: 1 } });
  expect(said(cover, "webbing-width")?.lengths).toEqual({ width: 39, nearest: 38 });
  const named = { core: { webbingWidth: 45, webbingThickness: 2 }, width: null };
  expect(has(strap("webbing-overlay", vinyl(0.5), named), "webbing-width")).toBe(false);
});

test("what its material alone makes worth knowing", () => {
  const cotton = of("c", "woven", 0.3);
  const fused = { materials: { outer: "c", interfacing: "fuse" }, interfacing: "full" } as const;
  expect(codes(strap("fourfold", cotton))).toEqual(["no-interfacing"]);
  expect(codes(strap("fourfold", cotton, fused))).toEqual([]);
  expect(codes(strap("webbing-sleeve", cotton, { core: { webbingWidth: 38 }, width: null }))).toEqual([]);
  expect(codes(strap("three-raw", cotton, fused))).toEqual(["raw-edge-frays"]);
  expect(codes(strap("tube", cotton, fused))).toEqual(["tube-bias"]);
  expect(codes(strap("tube", vinyl(0.3)))).toEqual([]);
  expect(codes(strap("three-raw", vinyl(0.5, { backing: "knit" })))).toEqual(["knit-backing"]);
  expect(codes(strap("fourfold", vinyl(0.5, { backing: "unknown" })))).toEqual(["unknown-backing"]);
  expect(codes(strap("fourfold", of("l", "leather", 0.5, { backing: "unknown" })))).toEqual([]);
  const finish = (material: StrapMaterial, edgeFinish: "paint" | "burnish" | "as-cut") =>
    codes(strap("bonded", material, { edgeFinish }));
  expect(finish(vinyl(0.5), "burnish")).toEqual(["burnish-leather"]);
  expect([...finish(vinyl(0.5), "paint"), ...finish(vinyl(0.5), "as-cut")]).toEqual([]);
  expect(finish(of("l", "leather", 0.5), "burnish")).toEqual([]);
  // One raw edge is enough.
  expect(codes(strap("three-raw", vinyl(0.5), { edgeFinish: "burnish" }))).toEqual(["burnish-leather"]);
  expect(codes(strap("fourfold", vinyl(0)))).toEqual(["no-thickness"]);
});

test("cautions by material, by what is bought and by how thick it gets", () => {
  const cautions = (result: StrapResult): string[] => result.cautions.map(({ code }) => code);
  const always = ["not-load-rated", "small-children", "rotary-cutter", "local-rules"];
  const own = (result: StrapResult) =>
    cautions(result)
      .filter((code) => !always.includes(code))
      .sort();
  expect(cautions(build("fourfold", "cotton"))).toEqual(expect.arrayContaining(always));
  expect(own(build("fourfold", "cotton"))).toEqual(["hot-iron"]);
  expect(own(strap("fourfold", of("f", "felt", 0.3)))).toEqual(["hot-iron"]);
  expect(own(strap("fourfold", vinyl(0.3)))).toEqual(["iron-melts", "laser-pvc", "sharp-blades", "tape-gums"]);
  expect(own(strap("fourfold", of("k", "cork", 0.3)))).toEqual(["cork-cracks", "sharp-blades", "tape-gums"]);
  expect(own(strap("bonded", of("l", "leather", 0.9), { edgeFinish: "paint" }))).toEqual(
    expect.arrayContaining(["sharp-blades", "solvents"]),
  );
  expect(own(build("three-raw", "vinyl", { edgeFinish: "paint" }))).toContain("solvents");
  expect(own(build("three-raw", "vinyl", { edgeFinish: "as-cut" }))).not.toContain("solvents");
  // The facing's material counts as well as the outer one's.
  const faced = build("two-layer", "cotton", { materials: { outer: "cotton", facing: "vinyl" } });
  expect(own(faced)).toEqual(expect.arrayContaining(["hot-iron", "iron-melts"]));
  for (const code of cautions(faced)) expect(CAUTION_TABLES.en).toHaveProperty([code]);
  const at = (thickness: number) => own(strap("bonded", of("l", "leather", thickness)));
  expect(at(1.4)).not.toContain("thick-stack");
  expect(at(1.5)).toContain("thick-stack");
});
