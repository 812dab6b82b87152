import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";

const attempt = (...words: string[]) => runCli("yield", ...words);

const metre = ["--width", "107 cm", "--length", "1 m"];

test("13 straps of 10 x 70 cm on a metre of 107 cm, with the layout (13 is the most on a 10 cm grid)", async () => {
  const text = await attempt("--strip", "10 cm x 70 cm", ...metre);
  expect(text.code).toBe(0);
  expect(text.out).toContain("13 straps of 10 cm x 70 cm");
  expect(text.out).toContain("Proven");
  const { out } = await attempt("--strip", "10 cm x 70 cm", ...metre, "--json");
  const json = JSON.parse(out);
  expect(json).toMatchObject({ count: 13, bound: 13, proven: true, lengthwise: 10, crosswise: 10 });
  expect(json.placements).toHaveLength(13);
  expect(json.placements.filter((p: { rotation: number }) => p.rotation === 0)).toHaveLength(10);
});

test("none of 10 x 150 cm, and what would help", async () => {
  const { code, out } = await attempt("--strip", "10 x 150 cm", ...metre);
  // The same exit code as when a number of straps has no place.
  expect(code).toBe(1);
  expect(out).toContain("No strap");
  // From a metre on in metres.
  expect(out).toContain("1.5 m of length gives 10 straps");
  expect(out).toContain("join");
});

test("another grain is advised only where it would give a strap", async () => {
  const advice = async (...words: string[]) => (await attempt("--strip", "10 x 150 cm", ...words)).out;
  const along = await advice("--width", "160 cm", "--length", "100 cm", "--grain", "lengthwise");
  expect(along).toMatch(/grain/u);
  const never = await advice("--width", "107 cm", "--length", "100 cm", "--grain", "lengthwise");
  expect(never).not.toMatch(/grain/u);
});

test("the length for a number of straps, with its bound", async () => {
  const { out } = await attempt("--strip", "10 x 70 cm", "--width", "107 cm", "--count", "13", "--json");
  expect(JSON.parse(out)).toMatchObject({ lengthMm: 1000, boundMm: 1000, proven: true });
});

test.each([
  [["--strip", "abc x 2", "--width", "1e9", "--length", "-3"], 1, "--length"],
  [["--strip", "4 in", "--width", "42 in", "--length", "1 m"], 1, "4 in x 28 in"],
  [["--strip", "4 in x 28 in", "--width", "42 in", "--length", "NaN"], 1, "--length"],
  [["--strip", "1 mm x 1 mm", "--width", "1 m", "--length", "900 m"], 1, "too"],
  [["--strip", "10 x 150 cm", "--width", "107 cm", "--count", "5", "--grain", "crosswise"], 1, "wider cloth"],
  [["--strip", "4 in x 28 in", "--width", "42 in"], 2, "--length or --count"],
  [["--strip", "4 in x 28 in", "--width", "42 in", "--count", "0"], 2, "--count"],
  [["--strip", "4 in x 28 in", "--width", "42 in", "--length", "1 m", "--grain", "bias"], 2, "crosswise"],
])("%j ends with %i", async (words, code, said) => {
  const result = await attempt(...words);
  expect(result).toMatchObject({ code, out: "" });
  expect(result.err).toContain(said);
});

test("a little more length: the next step is said, and the curve tells every one, in lengths as bought", async () => {
  const { out } = await attempt("--strip", "10 cm x 70 cm", ...metre);
  // 14 straps take 1.1 m: ten lengthwise and four crosswise beside them.
  expect(out).toContain("10 cm more gives 1 more.");
  const curve = await attempt("--strip", "10 cm x 70 cm", ...metre, "--curve", "1.4 m", "--json");
  const steps: { lengthMm: number; count: number }[] = JSON.parse(curve.out).curve;
  expect(steps.map(({ lengthMm, count }) => [Math.round(lengthMm), count])).toEqual([
    [1000, 13],
    [1100, 14],
    [1200, 16],
    [1300, 18],
    [1400, 20],
  ]);
  const table = await attempt("--strip", "10 cm x 70 cm", ...metre, "--curve", "1.4 m");
  expect(table.out).toMatch(/1\.2 m {2}16 {2}10 cm more gives 2 more\n/u);
});

test("squaring and shrinkage: what is left is said, and what is bought is longer (exact: (700 / 0.95) + 40)", async () => {
  const lossy = ["--squaring", "2 cm", "--shrinkage", "5 % x 2 %"];
  const one = ["--strip", "10 cm x 70 cm", "--width", "11 cm", "--grain", "lengthwise", ...lossy];
  const bought = JSON.parse((await attempt(...one, "--count", "1", "--json")).out);
  expect(bought.lengthMm).toBeCloseTo(700 / 0.95 + 40, 9);
  const exact = await attempt(...one, "--length", `${bought.lengthMm + 1e-6} mm`);
  expect(exact.out).toMatch(/^1 strap .*\nAfter squaring and washing, 70 cm x ≈?10\.78 cm are left/u);
  expect((await attempt(...one, "--length", `${bought.lengthMm - 0.1} mm`)).code).toBe(1);
});

test("several straps in proportion give whole sets, on a length and for a number", async () => {
  const strips = ["--strip", "10 cm x 40 cm + 4 of 5 cm x 10 cm", "--width", "30 cm"];
  const { code, out } = await attempt(...strips, "--length", "40 cm", "--json");
  expect(code).toBe(0);
  // Exact: two bands of 40 x 10 and eight of 10 x 5 cover 40 x 30.
  const json = JSON.parse(out);
  expect(json).toMatchObject({ sets: 2, bound: 2, proven: true, strips: [{ count: 2 }, { count: 8 }] });
  expect(json.placements.filter(({ strip }: { strip: number }) => strip === 1)).toHaveLength(8);
  expect(JSON.parse((await attempt(...strips, "--count", "2", "--json")).out)).toMatchObject({
    lengthMm: 400,
    sets: 2,
  });
  expect((await attempt(...strips, "--length", "40 cm")).out).toContain(
    "2 sets (2 of 10 cm x 40 cm, 8 of 5 cm x 10 cm)",
  );
});

test("a skin out of a project, of any outline, with its flaw; other stocks are named", async () => {
  const folder = mkdtempSync(join(tmpdir(), "yield-test-"));
  const outline = [
    ...[
      [0, 0],
      [300, 0],
      [300, 100],
      [100, 100],
      [100, 300],
      [0, 300],
    ],
  ];
  const flaw = { at: [260, 0], shape: { kind: "rectangle", along: 40, across: 100 } };
  const skin = { kind: "skin", id: "side", shape: { kind: "outline", points: outline }, flaws: [flaw] };
  const hide = { id: "hide", name: "Hide", kind: "leather", thickness: "2 mm", grain: "free", stock: [skin] };
  const file = join(folder, "hide.json");
  writeFileSync(file, JSON.stringify({ laywright: 1, name: "Hide", gap: 0, margin: 0, materials: [hide] }));
  const ask = (...more: string[]) => attempt("--strip", "50 mm x 100 mm", "--on", file, ...more);
  // 260 x 100 and 100 x 200 hold five and four of 50 x 100 (exact).
  expect(JSON.parse((await ask("--json")).out)).toMatchObject({ sets: 9, count: 9 });
  const picture = join(folder, "plan.svg");
  expect((await ask("--picture", picture)).out).toContain('9 straps of 50 mm x 100 mm from the stock "side"');
  expect(readFileSync(picture, "utf8")).toContain("<svg");
  expect((await ask("--stock", "sde")).err).toContain('There is no stock "sde"; did you mean side');
  expect((await ask("--width", "1 m")).code).toBe(2);
  rmSync(folder, { recursive: true });
});

test("the curve of sets goes to its end, however many steps that takes", async () => {
  const strip = "10 cm x 40 cm + 4 of 5 cm x 10 cm";
  const words = ["--strip", strip, "--width", "30 cm", "--length", "40 cm", "--evaluations", "2000"];
  const { curve } = JSON.parse((await attempt(...words, "--curve", "8 m", "--json")).out);
  // A set is 600 cm² of cloth 30 cm wide: one more for every 20 cm.
  expect(curve.at(-1)).toMatchObject({ lengthMm: 8000, count: 40 });
  expect(curve.length).toBeGreaterThan(30);
});
