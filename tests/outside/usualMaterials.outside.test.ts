// The table of usual materials, held against the arithmetic of the trade, and its page against the table.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { USUAL_MATERIALS } from "../../src/core/materials/usualMaterials.ts";

const page = readFileSync(new URL("../../docs/reference/materials.md", import.meta.url), "utf8");
const rows = new Map(
  page
    .split("\n")
    .filter((line) => line.startsWith("| `"))
    .map((line) => line.split("|").map((cell) => cell.trim()))
    .map(([, name, what, thickness, range, from, width, note]) => [
      name!.replaceAll("`", ""),
      { what: what!, thickness: Number(thickness), range: range!, from: from!, width: width!, note: note! },
    ]),
);

test("every thickness lies in its own range and stands in the reference as the program has it", () => {
  expect([...rows.keys()]).toEqual(Object.keys(USUAL_MATERIALS));
  for (const [name, { thickness, range, from }] of Object.entries(USUAL_MATERIALS)) {
    const [least, most] = range;
    expect(thickness, name).toBeGreaterThanOrEqual(least);
    expect(thickness, name).toBeLessThanOrEqual(most);
    const row = rows.get(name)!;
    expect(row.thickness, name).toBeCloseTo(thickness, 2);
    expect(row, name).toMatchObject({ range: `${least} to ${most}`, from });
  }
});

// Common practice, no source: one ounce of leather is 1/64 in thick; 1 in = 25.4 mm (1959 yard and pound agreement).
test("leather by the ounce is as thick as its ounces say", () => {
  expect(USUAL_MATERIALS["leather-3oz"].thickness).toBeCloseTo((3 * 25.4) / 64, 9);
  expect(USUAL_MATERIALS["leather-5oz"].thickness).toBeCloseTo((5 * 25.4) / 64, 9);
});

// 1 oz/yd² = 28.349523125 g ÷ 0.83612736 m²: international yard and pound agreement, 1959.
test("cloth ounces in the notes are the exact grams", () => {
  const grams = (ounces: number) => Math.round((ounces * 28.349523125) / 0.9144 ** 2);
  expect(rows.get("canvas-10oz")!.note).toContain(`${grams(10)} g/m2`);
  expect(rows.get("canvas-12oz")!.note).toContain(`${grams(12)} g/m2`);
});

// Common practice, no source: quilting cotton is sold as 44 in and gives 40 to 42 in.
test("quilting cotton is never reckoned with its shop width", () => {
  const usable = Number(/([\d.]+) in usable/u.exec(rows.get("cotton")!.width)![1]);
  expect(usable).toBeGreaterThanOrEqual(40);
  expect(usable).toBeLessThanOrEqual(42);
});
