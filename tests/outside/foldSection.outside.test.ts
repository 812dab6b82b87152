import { type Geom, intersection, union } from "polyclip-ts";
import { expect, test } from "vitest";
import { strapSectionArt } from "../../src/core/drawing/strap/foldPicture.ts";
import { flattenContour } from "../../src/core/geometry/contourArcs.ts";
import { type Ring, signedArea } from "../../src/core/geometry/ring.ts";
import { buildStrap } from "../../src/core/straps/build/buildStrap.ts";
import { CONSTRUCTIONS } from "../../src/core/straps/constructions/catalogue.ts";
import {
  CONSTRUCTION_IDS,
  type ConstructionId,
  type StrapMaterial,
  type StrapWish,
} from "../../src/core/straps/wish/strapWish.ts";

// Source: polyclip-ts, a general polygon clipping library that shares nothing with our own geometry.

const MATERIALS: readonly StrapMaterial[] = [
  { id: "canvas", name: "canvas", kind: "woven", thickness: 0.8, backing: "woven", fold: {} },
  { id: "lining", name: "lining", kind: "woven", thickness: 0.4, backing: "woven", fold: {} },
  { id: "foam", name: "foam", kind: "padding", thickness: 4, backing: "none", fold: {} },
];

/** Share of an area that rounding to 10 nm and flattened arcs may make up. */
const SAME = 3e-4;

const FACED: readonly ConstructionId[] = ["two-layer", "sewn-turned", "bonded"];
const PADDED: readonly ConstructionId[] = ["three-hemmed", "sewn-turned"];

function outlines(construction: ConstructionId, padded: boolean): Ring[] {
  const wish: StrapWish = {
    id: "s",
    name: "strap",
    construction,
    count: 1,
    width: { kind: "finished", mm: 32 },
    length: { kind: "finished", mm: 500 },
    materials: {
      outer: "canvas",
      facing: FACED.includes(construction) ? "lining" : undefined,
      padding: padded ? "foam" : undefined,
    },
    // Raw edges that stop where a bend starts are not crushed, so nothing may overlap.
    ...(CONSTRUCTIONS[construction].heeds({}).includes("clearance") ? { folds: { clearance: 1 } } : {}),
  };
  const built = buildStrap(wish, MATERIALS);
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  return strapSectionArt(built.value).areas.map((area) => flattenContour(area.contour, 0.002));
}

/** Off the grid by less than a hair, so that edges which lie on each other do not trip the other library. */
function geometry(ring: Ring, shift: number): Geom {
  const points: [number, number][] = [];
  for (let i = 0; i < ring.length; i += 2) {
    points.push([Math.round(ring[i]! * 1e5) / 1e5 + shift, Math.round(ring[i + 1]! * 1e5) / 1e5 + shift]);
  }
  return [points];
}

function areaOf(shapes: readonly (readonly (readonly (readonly [number, number])[])[])[]): number {
  let sum = 0;
  for (const polygon of shapes) {
    polygon.forEach((ring, i) => {
      const area = Math.abs(signedArea(Float64Array.from(ring.flat())));
      sum += i === 0 ? area : -area;
    });
  }
  return sum;
}

const CASES = [
  ...CONSTRUCTION_IDS.filter((id) => id !== "corded").map((id) => [id, false] as const),
  ...PADDED.map((id) => [id, true] as const),
];

test.each(CASES)("%s (padded: %s): no drawn layer runs through itself or another", (construction, padded) => {
  const rings = outlines(construction, padded);
  rings.forEach((ring, i) => {
    const own = Math.abs(signedArea(ring));
    expect(Math.abs(areaOf(union(geometry(ring, 0))) - own) / own, `layer ${i} crosses itself`).toBeLessThan(SAME);
    rings.slice(i + 1).forEach((other, k) => {
      const shared = areaOf(intersection(geometry(ring, 0), geometry(other, 1e-4)));
      const smaller = Math.min(own, Math.abs(signedArea(other)));
      expect(shared / smaller, `layers ${i} and ${i + 1 + k} overlap`).toBeLessThan(SAME);
    });
  });
});
