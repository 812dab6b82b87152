import { expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";

const answer = async (...words: string[]) => JSON.parse((await runCli("binding", ...words, "--json")).out);

// Source: a parallelogram's area. Strips at 45° across cloth of width w each take their own width × √2 of its length and
// cover √2 w × width; the square's strips cover at most the square.
test("bias strips take the cloth their area says, the slanting corner besides", async () => {
  const { cloth, square } = await answer("--length", "5 m", "--width", "40 mm", "--cloth", "1 m", "--join", "0 mm");
  // √2 m a strip: four make 5.65 m.
  expect(cloth.strips).toBe(4);
  expect(cloth.stripMm).toBeCloseTo(1414.214, 3);
  expect(cloth.lengthMm - 1000).toBeCloseTo(4 * 40 * Math.SQRT2, 6);
  expect(square.sideMm ** 2).toBeGreaterThan(5000 * 40);
});

// Cord cover π d + 2 s: 43.4 mm for d 10, s 6. Common practice, no source; geometry.
test("a piping cover is as wide as the way round its cord and both allowances", async () => {
  expect((await answer("--length", "1 m", "--cord", "10 mm", "--seam", "6 mm")).widthMm).toBeCloseTo(43.4, 1);
});

// Straight join loses 2 s: 10 + 10 in at 1/4 in make 19.5 in. Geometry.
test("straight strips are joined with two allowances each", async () => {
  const asked = ["--grain", "straight", "--width", "2 in", "--join", "1/4 in", "--cloth", "10 in"];
  expect((await answer("--length", "19.5 in", ...asked)).cloth.strips).toBe(2);
  expect((await answer("--length", "19.6 in", ...asked)).cloth.strips).toBe(3);
});

test("what cannot be read or goes together with nothing is told", async () => {
  expect(await runCli("binding", "--width", "4 cm")).toMatchObject({ code: 2 });
  expect(await runCli("binding", "--length", "1 m", "--cord", "4 mm")).toMatchObject({ code: 2 });
  expect((await runCli("binding", "--length", "1 el", "--width", "4 cm")).code).toBe(1);
  const { code, out } = await runCli("binding", "--length", "1 m", "--width", "4 cm", "--cloth", "10 mm");
  expect(code).toBe(1);
  expect(out).toContain("Take wider cloth");
});
