import { expect, test } from "vitest";
import { build, type Wish } from "../../../../tests/tools/makersStraps.ts";
import { unionArea } from "../../../../tests/tools/unionArea.ts";
import { boxOfAll } from "../../geometry/box.ts";
import { contourBox, contourEdges, edgeCircle, flattenContour } from "../../geometry/contourArcs.ts";
import { isInsideRing } from "../../geometry/inside.ts";
import { signedArea } from "../../geometry/ring.ts";
import { levelThicknesses } from "../../straps/section/foldSection.ts";
import type { ConstructionId } from "../../straps/wish/strapWish.ts";
import { strapSectionArt } from "./foldPicture.ts";
import { levelHeights } from "./sectionHeights.ts";

const STRAPS: readonly (readonly [ConstructionId, string, Wish])[] = [
  ["fourfold", "canvas", {}],
  ["fourfold", "stout vinyl", { width: 25, folds: { clearance: 1 } }],
  ["fourfold", "canvas", { width: 30, folds: { crease: "soft" } }],
  ["fourfold", "vinyl", { width: 25, folds: { clearance: 0 } }],
  ["three-raw", "vinyl", { width: 20 }],
  ["three-hemmed", "canvas", { width: 30 }],
  ["two-layer", "vinyl", { materials: { outer: "vinyl", facing: "canvas" } }],
  ["sewn-turned", "canvas", { width: 45 }],
  ["tube", "cotton", { width: 15 }],
  ["three-hemmed", "canvas", { width: 40, materials: { outer: "canvas", padding: "foam" } }],
  ["webbing-sleeve", "cotton", { width: 27, core: { webbingWidth: 25, webbingThickness: 2 } }],
  ["webbing-overlay", "canvas", { width: null, core: { webbingWidth: 38, webbingThickness: 2 } }],
  ["bonded", "4 oz leather", { width: 25 }],
];
const straps = STRAPS.map(([construction, outer, more]) => ({
  construction,
  strap: build(construction, outer, more),
}));
const drawn = () => straps.map(({ construction, strap }) => ({ construction, strap, art: strapSectionArt(strap) }));

test("a section is as wide as the finished strap and lies on the table, its height that of its highest layer", () => {
  for (const { construction, strap, art } of drawn()) {
    const box = boxOfAll(art.areas.map(({ contour }) => contourBox(contour)));
    expect(art.width).toBe(strap.finishedWidth);
    expect(box.minX, construction).toBeCloseTo(0, 1);
    expect(box.maxX, construction).toBeCloseTo(strap.finishedWidth, 1);
    expect(box.minY, construction).toBeCloseTo(0, 6);
    expect(art.height, construction).toBeCloseTo(box.maxY, 1);
    expect(art.height).toBeGreaterThanOrEqual(strap.thickness - 1e-6);
  }
});

// Pappus: a strip bent about its middle keeps its area, its thickness times its width as cut.
test("the outer strip has the area of its cut width times its thickness, and is closed at raw edges as thick as it is", () => {
  for (const { construction, strap, art } of drawn()) {
    const { section } = strap;
    if (section.kind !== "layered") throw new Error(construction);
    const slabs = section.slabs.length;
    for (const [i, strip] of section.strips.entries()) {
      const { contour } = art.areas[slabs + i]!;
      const { thickness } = strip.plan.ply;
      const area = Math.abs(signedArea(flattenContour(contour, 0.001)));
      const long = strip.segments.reduce((sum, segment) => {
        if (segment.kind === "run") return sum + Math.abs(segment.toX - segment.fromX);
        if (segment.kind === "corner") return sum + segment.rise + (Math.PI / 4) * thickness;
        return sum + Math.PI * (segment.insideRadius + segment.thickness / 2) + Math.max(0, segment.rise);
      }, 0);
      expect(Math.abs(area / (long * thickness) - 1), `${construction} ${i}`).toBeLessThan(0.03);
    }
    expect(art.rawEdges).toHaveLength(2 * section.strips.length);
    for (const [k, [x0, y0, x1, y1]] of art.rawEdges.entries())
      expect(Math.hypot(x1 - x0, y1 - y0), construction).toBeCloseTo(
        section.strips[Math.floor(k / 2)]!.plan.ply.thickness,
        6,
      );
  }
});

// Judged by polyclip-ts, a general polygon clipping library.
test("no layer runs through itself, a core is as wide as it is wished and no wider at its round ends", () => {
  for (const { construction, strap, art } of drawn()) {
    for (const { contour } of art.areas) {
      const ring = flattenContour(contour, 0.002);
      const own = Math.abs(signedArea(ring));
      const whole = unionArea(ring);
      // Raw edges crushed into a bend lie a little in it.
      const crushed = strap.wish.folds?.clearance === 0 ? 5e-3 : 1e-3;
      expect(Math.abs(whole / own - 1), construction).toBeLessThan(crushed);
    }
    if (strap.section.kind !== "layered") continue;
    for (const [i, { fromX, toX, plan }] of strap.section.slabs.entries()) {
      const box = contourBox(art.areas[i]!.contour);
      expect([box.minX, box.maxX]).toEqual([expect.closeTo(fromX, 6), expect.closeTo(toX, 6)]);
      expect(box.maxY - box.minY).toBeGreaterThanOrEqual(plan.thickness - 1e-6);
      const area = Math.abs(signedArea(flattenContour(art.areas[i]!.contour, 0.001)));
      const round = plan.square ? 0 : (1 - Math.PI / 4) * plan.thickness ** 2;
      expect(area / (plan.thickness * (toX - fromX) - round)).toBeCloseTo(1, 2);
    }
  }
});

test("raw edges are cut straight across", () => {
  for (const { construction, art } of drawn()) {
    const edges = art.areas.flatMap(({ contour }) => contourEdges(contour));
    for (const [x0, y0, x1, y1] of art.rawEdges) {
      const own = edges.filter(
        (edge) =>
          (edge.x0 === x0 && edge.y0 === y0 && edge.x1 === x1 && edge.y1 === y1) ||
          (edge.x0 === x1 && edge.y0 === y1 && edge.x1 === x0 && edge.y1 === y0),
      );
      expect(
        own.some(({ bulge }) => bulge === 0),
        construction,
      ).toBe(true);
    }
  }
});

test("layers that do not settle lie as high as all below them together, everywhere", () => {
  let seen = 0;
  for (const { strap } of straps) {
    const { section } = strap;
    if (section.kind !== "layered" || section.plan.settles) continue;
    const thicknesses = levelThicknesses(section.plan);
    const height = levelHeights(section);
    const radii = section.strips.flatMap(({ plan }) => plan.ply.leastRadius);
    if (radii.some((radius) => radius > 0)) continue;
    for (const level of thicknesses.keys())
      for (const x of [-1, 0, strap.finishedWidth / 3, strap.finishedWidth])
        expect(height(level, x)).toBeCloseTo(
          thicknesses.slice(0, level).reduce((sum, mm) => sum + mm, 0),
          9,
        );
    seen++;
  }
  expect(seen).toBeGreaterThan(0);
});

test("folds are true arcs round their axes, their outside as far out as the finished strap's edge", () => {
  let folds = 0;
  for (const { strap, art } of drawn()) {
    const { section } = strap;
    if (section.kind !== "layered") continue;
    const arcs = art.areas.flatMap(({ contour }) =>
      contourEdges(contour)
        .filter(({ bulge }) => bulge !== 0)
        .map(edgeCircle),
    );
    for (const { segments } of section.strips)
      for (const bend of segments) {
        if (bend.kind !== "bend" || section.plan.settles) continue;
        const near = arcs.filter(({ x }) => Math.abs(x - bend.axisX) < 1e-6);
        const outside = near.filter(({ radius }) => Math.abs(radius - bend.insideRadius - bend.thickness) < 0.02);
        expect(outside.length, strap.wish.construction).toBeGreaterThan(0);
        folds++;
      }
  }
  expect(folds).toBeGreaterThan(6);
});

test("topstitching goes through the stack where its row is, from the table to the top of what lies there", () => {
  let rows = 0;
  for (const { construction, strap, art } of drawn()) {
    const wanted = strap.rows
      .filter(({ kind }) => kind === "topstitch")
      .map(({ from, mm }) => (from === "left" ? mm : strap.finishedWidth - mm));
    expect(art.stitches.map(([x]) => x)).toEqual(wanted.map((x) => expect.closeTo(x, 9)));
    for (const [x, low, high] of art.stitches) {
      expect(low).toBe(0);
      const rings = art.areas.map(({ contour }) => flattenContour(contour, 0.002));
      const covered = (y: number): boolean => rings.some((ring) => isInsideRing(ring, x + 1e-4, y));
      expect(covered(high - 0.05), construction).toBe(true);
      expect(covered(high + 0.05), construction).toBe(false);
      rows++;
    }
  }
  expect(rows).toBeGreaterThan(8);
});

test("each material has its own tone and is named once with its thickness", () => {
  const tones = (construction: ConstructionId, outer: string, more: Wish = {}) => {
    const { areas, layers } = strapSectionArt(build(construction, outer, more));
    return {
      areas: areas.map(({ tone }) => tone),
      layers: layers.map(({ word, tone, thickness }) => `${word} ${tone} ${thickness}`),
    };
  };
  expect(tones("two-layer", "vinyl", { materials: { outer: "vinyl", facing: "canvas" } })).toEqual({
    areas: ["face", "facing"],
    layers: ["outer face 1", "facing facing 0.7"],
  });
  expect(tones("two-layer", "vinyl").layers).toEqual(["outer face 1", "own-facing back 1"]);
  const padded = tones("three-hemmed", "canvas", { width: 40, materials: { outer: "canvas", padding: "foam" } });
  expect(padded.areas).toEqual(["shade", "face"]);
  expect(padded.layers[0]).toBe("outer face 0.7");
  expect(padded.layers[1]).toMatch(/^padding shade /u);
  const core = { webbingWidth: 25, webbingThickness: 2 };
  const web = tones("webbing-sleeve", "cotton", { width: 27, core });
  expect(web.areas).toContain("webbing");
});

test("what is sewn in three tells how far its visible edge is from the side", () => {
  for (const { construction, strap, art } of drawn())
    expect(art.setback, construction).toBe(construction.startsWith("three") ? strap.setback : null);
});

// By hand: a cord of 10 mm in leather of 1.588 mm is 13.176 mm round; its fin runs on for the seam.
test("a cord lies in the middle of its cover, the fin with its two raw edges beside it", () => {
  const strap = build("corded", "4 oz leather", { width: null, core: { cordDiameter: 10 } });
  const art = strapSectionArt(strap);
  if (strap.section.kind !== "wrapped") throw new Error("a cord expected");
  const { seamAllowance } = strap.section;
  const [cover, cord] = art.areas.map(({ contour }) => contour);
  for (const { contour } of art.areas) expect(contour.closed).toBe(true);
  const [around, core] = [contourBox(cover!), contourBox(cord!)];
  expect([core.minX, core.maxX, core.minY, core.maxY]).toEqual(
    [1.588, 11.588, 1.588, 11.588].map((mm) => expect.closeTo(mm, 6)),
  );
  expect([around.minX, around.minY, around.maxY]).toEqual([0, 0, 13.176].map((mm) => expect.closeTo(mm, 6)));
  expect(around.maxX).toBeCloseTo(11.588 + seamAllowance, 6);
  expect([art.width, art.height]).toEqual([around.maxX, 13.176].map((mm) => expect.closeTo(mm, 6)));
  const [seam] = art.seams;
  expect([...seam!.vertices]).toEqual([11.588, 6.588, 0, around.maxX, 6.588, 0].map((mm) => expect.closeTo(mm, 6)));
  expect(art.rawEdges).toEqual([[around.maxX, 5, around.maxX, 8.176].map((mm) => expect.closeTo(mm, 6))]);
  const [[x, low, high]] = art.stitches as [(typeof art.stitches)[0]];
  expect([low, high]).toEqual([expect.closeTo(5, 6), expect.closeTo(8.176, 6)]);
  expect(x).toBeGreaterThan(13.176);
  expect(x).toBeLessThan(13.176 + 0.5);
  // The strip round the cord: a ring less its gap, and a fin of two layers.
  const area = Math.abs(signedArea(flattenContour(cover!, 0.0005)));
  const whole = Math.PI * 6.588 ** 2;
  const fin = 2 * 1.588 * (around.maxX - 13.176);
  expect(area).toBeGreaterThan(whole + fin);
  expect(area).toBeLessThan(whole + fin + 1);
  expect(art.layers.map(({ word, thickness }) => [word, thickness])).toEqual([
    ["outer", 1.588],
    ["cord", 10],
  ]);
});

// By its rule: open by the gap at the fold itself and beyond it, by half of it two gaps further in, by nothing from four on.
test("a fold with half a millimetre more of radius than it goes round stands open by one, and closes within four", () => {
  const { section } = build("fourfold", "canvas", { width: 40 });
  if (section.kind !== "layered" || section.plan.settles) throw new Error("layers that lie flat expected");
  const thicknesses = levelThicknesses(section.plan);
  const flat = (level: number) => thicknesses.slice(0, level).reduce((sum, mm) => sum + mm, 0);
  let seen = 0;
  const [strip] = section.strips;
  for (const [i, bend] of strip!.segments.entries()) {
    if (bend.kind !== "bend") continue;
    const segments = strip!.segments.map((one, k) =>
      k === i && one.kind === "bend" ? { ...one, insideRadius: one.insideRadius + 0.5 } : one,
    );
    const height = levelHeights({ ...section, strips: [{ ...strip!, segments }] });
    const inward = bend.side === "left" ? 1 : -1;
    const level = Math.max(bend.fromLevel, bend.toLevel);
    const open = (from: number) => height(level, bend.axisX + inward * from) - flat(level);
    expect([-2, 0, 1, 2, 3, 4, 9].map(open)).toEqual(
      // 3t² − 2t³ at three quarters, a half and a quarter.
      [1, 1, 27 / 32, 0.5, 5 / 32, 0, 0].map((mm) => expect.closeTo(mm, 6)),
    );
    // What lies below the fold's upper layer does not know of it.
    expect(height(level - 1, bend.axisX)).toBeCloseTo(flat(level - 1), 9);
    seen++;
  }
  expect(seen).toBeGreaterThan(1);
});
