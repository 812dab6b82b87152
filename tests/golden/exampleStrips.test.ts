// What the example's lists of ruler cuts ask for, as `lay` writes them.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../tools/runCli.ts";

const out = mkdtempSync(join(tmpdir(), "example-strips-"));
afterAll(() => rmSync(out, { recursive: true, force: true }));

/** The least strip where a project says nothing, mm (common practice, no source). */
const LEAST = 10;

test("of a plan laid freely with cuts under 10 mm no list of cuts is written, and the lay says so", async () => {
  const words = ["lay", "fixtures/harbour-bags.json", "--effort", "0.3", "--write", "ruler-list,ruler-pages"];
  const { code, out: told, err } = await runCli(...words, "--out", out, "--json");
  expect([0, 1]).toContain(code);
  // The lining's waves begin where they must; the shortest plan leaves 8.9 mm before the pockets.
  const cloth = JSON.parse(told).materials.find(
    ({ materialId }: { materialId: string }) => materialId === "lining",
  );
  expect(cloth.cut).toMatchObject({ asked: "free", laid: "ruler" });
  expect(cloth.cut.narrowStrips).toBeGreaterThan(0);
  expect(readdirSync(out).join()).not.toContain("wave-print-lining-ruler");
  expect(err + told).toContain("No wave-print-lining-ruler.pdf");
  for (const name of readdirSync(out).filter((file) => file.endsWith("-ruler-cuts.txt")))
    for (const mm of settings(name)) expect(mm, name).toBeGreaterThanOrEqual(LEAST);
}, 120_000);

test("laid for the ruler the lining is cut without a strip under 10 mm", async () => {
  const words = ["lay", "fixtures/harbour-bags.json", "--cut", "ruler", "--effort", "3", "--write", "ruler-list"];
  await runCli(...words, "--out", out);
  const cuts = settings("wave-print-lining-ruler-cuts.txt");
  expect(cuts.length).toBeGreaterThan(20);
  expect(Math.min(...cuts)).toBeGreaterThanOrEqual(LEAST);
}, 240_000);

/** What the ruler is set to by a list of cuts, mm. */
function settings(name: string): number[] {
  const list = readFileSync(join(out, name), "utf8");
  return [...list.matchAll(/^ +\d+\. Cut .* at ([\d.]+) mm/gmu)].map(([, mm]) => Number(mm));
}
