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

/** Length of the layer that stays as long as it was, walked in many short steps round the bend. */
function walked(degrees: number, radius: number, thickness: number, neutral: number): number {
  const steps = 20_000;
  let length = 0;
  let [x, y] = [0, 0];
  for (let i = 0; i <= steps; i++) {
    // Through the sheet from the inside (radius) outward, a share `neutral` of its thickness deep.
    const inner = [
      radius * Math.cos((degrees * Math.PI * i) / steps / 180),
      radius * Math.sin((degrees * Math.PI * i) / steps / 180),
    ];
    const out = [Math.cos((degrees * Math.PI * i) / steps / 180), Math.sin((degrees * Math.PI * i) / steps / 180)];
    const [nx, ny] = [inner[0]! + neutral * thickness * out[0]!, inner[1]! + neutral * thickness * out[1]!];
    if (i > 0) length += Math.hypot(nx - x, ny - y);
    [x, y] = [nx, ny];
  }
  return length;
}

test.each([90, 180])(
  "the neutral layer walked round a bend of %s°, K over its usual range 0.33 to 0.5",
  (degrees) => {
    for (const neutral of [0.33, 0.4, 0.44, 0.5]) {
      for (const [radius, thickness] of [
        [0, 1],
        [1, 1],
        [2.5, 0.8],
      ] as const) {
        const found = bendAllowance((degrees * Math.PI) / 180, radius, thickness, neutral);
        expect(found).toBeCloseTo(walked(degrees, radius, thickness, neutral), 6);
      }
    }
  },
);

test("at K 0.5 a half turn is half the circle through the middle of the sheet", () => {
  expect(bendAllowance(Math.PI, 2, 1, 0.5)).toBeCloseTo((2 * Math.PI * 2.5) / 2, 12);
});

// Turn of cloth by weight of cloth: tailoring amounts, common practice, no source (light and heavy from memory). The
// thickness of each weight is from memory. The model says π T for two layers round a half turn.
test.each([
  ["light, 0.3 mm", 0.3, 1.6, 0.45],
  ["medium, 1.0 mm", 1, 3.2, 0.03],
  ["heavy, 2.0 mm", 2, 6.4, 0.03],
] as const)(
  "turn of cloth, %s: within the stated share of the tailor's amount (common practice, no source)",
  (_, thickness, tailors, share) => {
    const outer = bendAllowance(Math.PI, thickness, thickness, 0.5);
    const inner = bendAllowance(Math.PI, 0, thickness, 0.5);
    // In light cloth tailors allow what hands can see, nearly twice what the fold takes.
    expect(Math.abs(outer - inner - tailors) / tailors).toBeLessThan(share);
  },
);
