import { expect, test } from "vitest";
import { EDGE } from "../noFit/gridEdges.kernel.ts";
import { ClearRoom, SIDES_OF_ARCS, USUAL_SIDES } from "./clearRoom.ts";

/** Edges of a regular hole of so many sides and this radius, the free plane inside it. */
function holeEdges(sides: number, radius: number): Float64Array {
  const edges = new Float64Array(sides * EDGE);
  const corner = (k: number): [number, number] => [
    radius * Math.cos((-2 * Math.PI * k) / sides),
    radius * Math.sin((-2 * Math.PI * k) / sides),
  ];
  for (let k = 0; k < sides; k++) {
    const [ax, ay] = corner(k);
    const [bx, by] = corner(k + 1);
    const length = Math.hypot(bx - ax, by - ay);
    edges.set([ax, ay, (bx - ax) / length, (by - ay) / length, length, 0], k * EDGE);
  }
  return edges;
}

test("a room in a hole of 36 sides has all of them, and is given up where so many are not allowed", () => {
  const radius = 1e6;
  const edges = holeEdges(36, radius);
  const room = new ClearRoom(SIDES_OF_ARCS);
  expect(room.build(edges, 0, 36, 1e5, 2e5, 3 * radius, false)).toBe(true);
  expect(room.count).toBe(36);
  // A regular polygon's sides are all as far from its middle: radius times the cosine of half a side's angle.
  for (let k = 0; k < room.count; k++)
    expect(-room.sides[3 * k + 2]!).toBeCloseTo(radius * Math.cos(Math.PI / 36), 3);
  expect(new ClearRoom(USUAL_SIDES).build(edges, 0, 36, 1e5, 2e5, 3 * radius, false)).toBe(false);
});
