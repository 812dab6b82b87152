import { expect, test } from "vitest";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { LayMatch, LayPattern, LayPiece, RollStock } from "./layProblem.ts";
import { isWideEnough, widthOnPattern } from "./patternRoom.ts";

const PATTERN: LayPattern = {
  along: null,
  across: 90,
  firstAlong: 0,
  firstAcross: 20,
  halfDrop: false,
  symmetric: false,
  tolerance: 1,
};
const ROLL: RollStock = { kind: "roll", id: "r", width: 150, length: null, flaws: [] };
const match: LayMatch = { group: "g", x: 50, y: 60, senseX: 1, senseY: 1, along: false, across: true };
/** A panel of 100 × 120 whose middle is held to the pattern. */
const panel = (more: Partial<LayPiece> = {}): LayPiece => ({
  id: "p",
  outline: solid(rectangleRing(0, 0, 100, 120)),
  count: 1,
  orientations: [{ turnDeg: 0, mirrored: false }],
  freeTurn: false,
  match,
  ...more,
});
const needs = (piece: LayPiece, roll: RollStock = ROLL, margin = 0, more: Partial<LayPattern> = {}) =>
  widthOnPattern(piece, roll, {
    pattern: { ...PATTERN, ...more },
    phases: { g: { along: null, across: 0 } },
    margin,
  });

// By hand: lines at 20, 110, 200 … across. With its middle on 20 a panel 120 high would begin at −40, so it lies on 110,
// from 50 to 170.
test("a piece lies on the first line that leaves room below it, and needs the roll to reach over it there", () => {
  expect(needs(panel())).toBe(170);
  // Lower pieces lie on the same line, up to where the first one has room: 40 high about 20.
  const strip = (high: number): LayPiece =>
    panel({ outline: solid(rectangleRing(0, 0, 100, high)), match: { ...match, y: high / 2 } });
  expect([needs(strip(42)), needs(strip(41)), needs(strip(40)), needs(strip(30))]).toEqual([131, 130.5, 40, 35]);
  // The margin counts at both edges: with 5 mm the strip of 40 has none below it on 20, one of 30 has.
  expect([needs(strip(40), ROLL, 5), needs(strip(30), ROLL, 5)]).toEqual([135, 40]);
  // A line that ends where the edge begins, a rounding off, is taken.
  expect(needs(strip(40), ROLL, 0, { firstAcross: 20 - 1e-10 })).toBeCloseTo(40, 6);
  // A roll whose own first line lies at 65: from 5 to 125.
  expect(needs(panel(), { ...ROLL, firstLine: [0, 65] })).toBe(125);
  // Folded cloth has no edge at its fold: from 0 up.
  expect(needs(strip(40), { ...ROLL, folded: true }, 5)).toBe(45);
});

test("of several ways to lie the one that needs least counts; what is not held across needs no line", () => {
  // Its place 10 mm over its lower edge: upright on 20 from 10 to 130, turned by half on 110 from 0 to 120.
  const low = { ...match, y: 10 };
  expect(needs(panel({ match: low }))).toBe(130);
  const both = [0, 180].map((turnDeg) => ({ turnDeg, mirrored: false }));
  expect(needs(panel({ match: low, orientations: both }))).toBeCloseTo(120, 9);
  expect(needs(panel({ match: undefined }))).toBeNull();
  expect(needs(panel({ match: { ...match, across: false, along: true } }))).toBeNull();
  expect(needs(panel(), ROLL, 0, { across: null, along: 90 })).toBeNull();
  // A group whose line nobody has said may lie on any; halves lie on the fold of their cloth.
  const free = { pattern: PATTERN, phases: undefined, margin: 0 };
  expect(widthOnPattern(panel(), ROLL, free)).toBeNull();
  expect(widthOnPattern(panel(), ROLL, { ...free, pattern: undefined })).toBeNull();
  expect(needs(panel({ gives: { of: "p", asDrawn: 1, mirrored: 0, onFold: true } }))).toBeNull();
});

test("a roll is wide enough to a rounding", () => {
  expect([isWideEnough(ROLL, null), isWideEnough(ROLL, 150), isWideEnough(ROLL, 150 + 1e-8)]).toEqual([
    true,
    true,
    true,
  ]);
  expect(isWideEnough(ROLL, 150.001)).toBe(false);
});
