import { expect, test } from "vitest";
import { passingFile } from "../../../tests/tools/programs.ts";
import { runCli } from "../../../tests/tools/runCli.ts";
import { seededRng } from "../../core/lay/search/rng.ts";

const sheet = {
  name: "offcut",
  kind: "rect-sheet",
  width: 600,
  height: 400,
  items: [
    { w: 200, h: 400, n: 1 },
    { w: 400, h: 200, n: 3 },
    { w: 30, h: 20, n: 4 },
  ],
};

async function bench(data: object, ...more: string[]) {
  const path = passingFile("sheet.json", JSON.stringify(data));
  const { code, out, err } = await runCli("bench", path, "--json", "--evaluations", "100000", ...more);
  return { code, err, line: code === 0 ? JSON.parse(out) : null };
}

test("as much as fits is laid on a closed sheet, w along its width, and told with every placement", async () => {
  const { code, line } = await bench(sheet);
  expect(code).toBe(0);
  expect(line).toMatchObject({
    kind: "rect-sheet",
    stripWidth: 400,
    length: 600,
    area: 240_000,
    density: 1,
    gap: 0,
  });
  const [tall] = line.placements.filter(({ item }: { item: number }) => item === 0);
  expect([0, 400]).toContain(tall.x);
  expect(tall).toMatchObject({ y: 0, rotation: 0 });
  expect(line.placements).toHaveLength(3);
});

test("by ruler as well", async () => {
  for (const mode of ["ruler", "few-stages", "two-stages"]) {
    const { code, line } = await bench(sheet, "--cut", mode);
    expect(code).toBe(0);
    expect(line.area).toBe(240_000);
  }
});

test("a sheet without a height is told", async () => {
  const { code, err } = await bench({ ...sheet, height: undefined });
  expect(code).toBe(1);
  expect(err).toContain("width and height");
});

interface Placed {
  readonly item: number;
  readonly x: number;
  readonly y: number;
}

/** Boxes parted wherever a straight cut runs between them, in the direction told. */
function partedBy(
  boxes: readonly Placed[],
  from: (box: Placed) => number,
  to: (box: Placed) => number,
): Placed[][] {
  const parts: Placed[][] = [];
  let reach = -Infinity;
  for (const box of [...boxes].sort((a, b) => from(a) - from(b))) {
    if (from(box) >= reach - 1e-9) parts.push([]);
    parts.at(-1)!.push(box);
    reach = Math.max(reach, to(box));
  }
  return parts;
}

test.each([
  ["few-stages", "along y, along x, along y", 0.95],
  ["two-stages", "along y, along x", 0.9],
])("%s on a sheet: cuts %s, and each piece trimmed", async (mode, _, density) => {
  const rng = seededRng(5);
  const items = Array.from({ length: 12 }, () => ({ w: 40 + rng.below(160), h: 20 + rng.below(80), n: 4 }));
  const { code, line } = await bench({ ...sheet, items }, "--cut", mode);
  expect(code).toBe(0);
  expect(line.density).toBeGreaterThan(density);
  const wide = (box: Placed) => box.x + items[box.item]!.w;
  const high = (box: Placed) => box.y + items[box.item]!.h;
  for (const shelf of partedBy(line.placements, ({ x }) => x, wide))
    for (const row of partedBy(shelf, ({ y }) => y, high)) {
      if (mode === "two-stages") expect(row).toHaveLength(1);
      for (const one of partedBy(row, ({ x }) => x, wide)) expect(one).toHaveLength(1);
    }
});
