import { expect, test } from "vitest";
import { bendAllowance } from "../../src/core/straps/section/ply.ts";

// Source: bend allowance of sheet bending, BA = (π / 180) × A × (R + K × T), engineering handbooks, from memory.

test.each([
  [90, 1, 1, 0.33, 2.089],
  [90, 1, 1, 0.44, 2.262],
])(
  "%s° round %s mm in %s mm at K %s: %s mm (engineering handbook, from memory)",
  (degrees, radius, thickness, neutral, expected) => {
    expect(bendAllowance((degrees * Math.PI) / 180, radius, thickness, neutral)).toBeCloseTo(expected, 3);
  },
);

test.each([90, 180])(
  "the formula as published at %s°, K over its usual range 0.33 to 0.5 (from memory)",
  (degrees) => {
    for (const neutral of [0.33, 0.4, 0.44, 0.5]) {
      for (const [radius, thickness] of [
        [0, 1],
        [1, 1],
        [2.5, 0.8],
      ] as const) {
        const published = (Math.PI / 180) * degrees * (radius + neutral * thickness);
        expect(bendAllowance((degrees * Math.PI) / 180, radius, thickness, neutral)).toBeCloseTo(published, 12);
      }
    }
  },
);

test("at K 0.5 a half turn is half the circle through the middle of the sheet", () => {
  expect(bendAllowance(Math.PI, 2, 1, 0.5)).toBeCloseTo((2 * Math.PI * 2.5) / 2, 12);
});
