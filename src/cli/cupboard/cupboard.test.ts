import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "cupboard-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function project(name: string, count: number): string {
  const path = join(folder, `${name}.json`);
  const front = { id: "front", material: "canvas", shape: { kind: "rectangle", along: 300, across: 400 }, count };
  const canvas = { id: "canvas", name: "Canvas", kind: "woven", thickness: 0.5, grain: "lengthwise" };
  const roll = { kind: "roll", id: "roll", width: 1000, squaring: 0 };
  const file = { laywright: 1, name, unit: "mm", materials: [{ ...canvas, stock: [roll] }], panels: [front] };
  writeFileSync(path, JSON.stringify(file));
  return path;
}

const cupboard = (...words: string[]) => runCli("cupboard", ...words);

/** A cupboard of its own with what a plan of one panel leaves: 300 × 600. */
async function begun(name: string): Promise<{ file: string; code: string; plan: string }> {
  const file = join(folder, `${name}-cupboard.json`);
  const out = join(folder, `${name}-out`);
  expect((await runCli("lay", project(name, 1), "--effort", "0.01", "--out", out)).code).toBe(0);
  const plan = join(out, "plan.json");
  const kept = await cupboard("keep", file, plan, "--shade", "rust", "--source", "Quay market", "--json");
  expect(kept.code).toBe(0);
  const { pieces } = JSON.parse(kept.out);
  expect(pieces).toMatchObject([{ shade: "rust", source: "Quay market", largest: { along: 300, across: 600 } }]);
  return { file, code: pieces[0].code, plan };
}

test("kept, offered to the next project, taken out by its plan, used up, and undone step by step", async () => {
  const { file, code } = await begun("Round trip");
  const first = readFileSync(file, "utf8");
  const out = join(folder, "next-out");
  const next = await runCli(
    "lay",
    project("Next", 1),
    "--effort",
    "0.01",
    "--cupboard",
    file,
    "--out",
    out,
    "--json",
  );
  expect(next.err).toMatch(new RegExp(`Cut from the cupboard: ${code} .*\n.*laywright cupboard take`, "u"));
  const plan = JSON.parse(next.out);
  // Nothing is bought, and everything lies on the piece, by its label.
  expect(plan.materials[0].placed.map(({ stockId }: { stockId: string }) => stockId)).toEqual([code]);
  expect(plan.materials[0].purchase.buyLength).toBe(0);
  expect(readFileSync(join(out, "cut-sheet.txt"), "utf8")).toContain(`${code}: remnant`);
  // Offering takes nothing out.
  expect(readFileSync(file, "utf8")).toBe(first);

  expect((await cupboard("take", file, join(out, "plan.json"))).out).toContain(code);
  expect((await cupboard("show", file)).out).toContain("The cupboard is empty.");
  expect((await cupboard("show", file, "--out-too")).out).toMatch(/out for Next/u);
  const twice = await cupboard("take", file, code, "--for", "Another");
  expect(twice).toMatchObject({ code: 1, err: expect.stringContaining('taken out for "Next"') });

  const kept = JSON.parse((await cupboard("keep", file, join(out, "plan.json"), "--json")).out);
  expect(kept.pieces).toMatchObject([{ shade: "rust", largest: { along: 300, across: 200 } }]);
  expect((await cupboard("show", file, code)).code).toBe(1);
  for (let i = 0; i < 2; i++) expect((await cupboard("undo", file)).code).toBe(0);
  expect(readFileSync(file, "utf8")).toBe(first);
});

test("given back, dropped, put in by hand; a code is found in lower case and with a slip is asked about", async () => {
  const { file, code } = await begun("By hand");
  expect((await cupboard("take", file, code.toLowerCase(), "--for", "Tote")).code).toBe(0);
  expect((await cupboard("back", file, code)).code).toBe(0);
  expect(await cupboard("back", file, code)).toMatchObject({ code: 1, err: expect.stringContaining("already") });
  const put = await cupboard("put", file, "--material", "Canvas", "--size", "2 m x 140 cm", "--roll", "--json");
  expect(JSON.parse(put.out).pieces[0].stock).toMatchObject({ kind: "roll", length: 2000, width: 1400 });
  const inches = await cupboard("put", file, "--material", "Canvas", "--size", "12 x 8 in", "--json");
  expect(JSON.parse(inches.out).pieces[0].stock.shape).toEqual({ kind: "rectangle", along: 304.8, across: 203.2 });
  const slip = await cupboard("show", file, code.slice(0, 4));
  expect(slip).toMatchObject({ code: 1, err: expect.stringContaining(`Did you mean ${code}?`) });
  expect((await cupboard("show", file, code.toLowerCase())).out).toMatch(/bought at +Quay market/u);
  expect((await cupboard("drop", file, code)).code).toBe(0);
  expect((await cupboard("show", file, code)).code).toBe(1);
});

test("the same plan is not kept twice, unless it was cut once more", async () => {
  const { file, plan } = await begun("Twice");
  const before = readFileSync(file, "utf8");
  expect(await cupboard("keep", file, plan)).toMatchObject({
    code: 1,
    err: expect.stringContaining("Once is enough"),
  });
  expect(readFileSync(file, "utf8")).toBe(before);
  expect((await cupboard("keep", file, plan, "--again")).code).toBe(0);
});

test("pieces of two shades are not offered together; --shade says which", async () => {
  const { file, code } = await begun("Shades");
  await cupboard("put", file, "--material", "canvas", "--size", "60 x 90 cm", "--shade", "navy");
  const path = project("Two shades", 1);
  const mixed = await runCli("lay", path, "--effort", "0.01", "--cupboard", file);
  expect(mixed).toMatchObject({ code: 1, err: expect.stringMatching(/several shades/u) });
  const rust = await runCli("lay", path, "--effort", "0.01", "--cupboard", file, "--shade", "rust");
  expect(rust.err).toContain(`Cut from the cupboard: ${code}`);
});

test("wrong words, wrong files and a plan with a fault change nothing", async () => {
  const { file, plan } = await begun("Wrong");
  const before = readFileSync(file, "utf8");
  expect((await cupboard("hold", file)).code).toBe(2);
  expect((await cupboard("show", file, "--size", "1 x 1 m")).code).toBe(2);
  expect((await cupboard("keep", file)).code).toBe(2);
  expect((await cupboard("put", file, "--material", "Canvas")).err).toContain("--size");
  expect((await cupboard("keep", file, file)).err).toContain("is not a plan file");
  expect((await cupboard("show", join(folder, "nowhere.json"))).code).toBe(1);
  const spoiled = JSON.parse(readFileSync(plan, "utf8"));
  spoiled.materials[0].placed[0].y = 900;
  writeFileSync(plan, JSON.stringify(spoiled));
  expect((await cupboard("keep", file, plan, "--again")).code).toBe(1);
  expect(readFileSync(file, "utf8")).toBe(before);
  writeFileSync(file, before.replace('"material"', '"matrial"'));
  const read = await cupboard("show", file);
  expect(read).toMatchObject({ code: 1, err: expect.stringContaining('Did you mean "material"?') });
});
