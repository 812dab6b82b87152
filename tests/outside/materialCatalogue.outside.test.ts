// The catalogue of materials, held against the arithmetic of the trade.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readProject } from "../../src/core/project/file/readProject.ts";
import { parseLength } from "../../src/core/units/parseLength.ts";

interface CatalogueEntry {
  readonly id: string;
  readonly kind: string;
  readonly thickness: string;
  readonly thicknessRange: readonly [string, string];
  readonly thicknessFrom: string;
  readonly width?: string;
  readonly usableWidth?: string;
  readonly note: string;
}

const url = new URL("../../shared/materials.json", import.meta.url);
const { materials } = JSON.parse(readFileSync(url, "utf8")) as { materials: CatalogueEntry[] };
const mm = (text: string): number => {
  const read = parseLength(text, "mm", "");
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

test("every entry makes a readable material, within its own range, and says where its values come from", () => {
  const project = readProject(
    JSON.stringify({
      laywright: 1,
      name: "Catalogue",
      materials: materials.map(({ id, kind, thickness, width, usableWidth }) => ({
        id,
        kind,
        thickness,
        stock: width ? [{ kind: "roll", id, width, selvedge: (mm(width) - mm(usableWidth!)) / 2 }] : [],
      })),
    }),
  );
  expect(project.ok ? [] : project.problems).toEqual([]);
  for (const [i, entry] of materials.entries()) {
    const thickness = project.ok ? project.value.materials[i]!.thickness : 0;
    expect(thickness, entry.id).toBeGreaterThanOrEqual(mm(entry.thicknessRange[0]));
    expect(thickness, entry.id).toBeLessThanOrEqual(mm(entry.thicknessRange[1]));
    expect(entry.thicknessFrom, entry.id).toMatch(/^(from memory, not measured|common practice, no source)$/u);
  }
});

// 1 oz/yd² = 28.349523125 g ÷ 0.83612736 m²: international yard and pound agreement, 1959.
test("cloth ounces in the notes are the exact grams", () => {
  const grams = (ounces: number) => Math.round((ounces * 28.349523125) / 0.9144 ** 2);
  const note = (id: string) => materials.find((entry) => entry.id === id)!.note;
  expect(note("canvas-10oz")).toContain(`${grams(10)} g/m2`);
  expect(note("canvas-12oz")).toContain(`${grams(12)} g/m2`);
});

// Common practice, no source: quilting cotton is sold as 44 in and gives 40 to 42 in.
test("quilting cotton is never reckoned with its shop width", () => {
  const cotton = materials.find((entry) => entry.id === "quilting-cotton")!;
  expect(mm(cotton.usableWidth!)).toBeGreaterThanOrEqual(40 * 25.4);
  expect(mm(cotton.usableWidth!)).toBeLessThanOrEqual(42 * 25.4);
});
