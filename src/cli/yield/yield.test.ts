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
