import { mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from "node:fs";
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

test("two projects of one name: what is out for the first is not the second's until it is said", async () => {
  const { file, code } = await begun("Same name");
  const put = await cupboard("put", file, "--material", "Canvas", "--size", "50 x 40 cm", "--json");
  const other = JSON.parse(put.out).pieces[0].code;
  expect((await cupboard("take", file, code, "--for", "Tote")).code).toBe(0);
  const before = readFileSync(file, "utf8");
  const refused = await cupboard("take", file, other, "--for", "Tote");
  expect(refused.code).toBe(1);
  expect(refused.err).toContain(`Pieces are out for a project called "Tote" already: ${code}`);
  expect(refused.err).toContain("another name");
  expect(readFileSync(file, "utf8")).toBe(before);
  expect((await cupboard("take", file, other, "--for", "Tote", "--more")).code).toBe(0);
  expect((await cupboard("take", file, other, "--for", "Bag")).err).toContain("taken out");
});

test("a small photo is kept in the file itself, of a larger one the name; both are noted later as well", async () => {
  const { file, code } = await begun("Photo");
  // Beginnings as the standards have them, and padding: a picture of 3 kB and one of 50.
  const head = Buffer.from([0xff, 0xd8, 0xff, 0xe0]);
  const picture = (name: string, bytes: number) => {
    writeFileSync(join(folder, name), Buffer.concat([head, Buffer.alloc(bytes - head.length, 3)]));
    return join(folder, name);
  };
  const [small, large] = [picture("small.jpg", 3000), picture("large.jpg", 50_000)];
  const noted = await cupboard("note", file, code, "--photo", small, "--note", "one corner is worn", "--json");
  const [piece] = JSON.parse(noted.out).pieces;
  expect(piece).toMatchObject({ shade: "rust", note: "one corner is worn" });
  expect(piece.photo).toBe(`data:image/jpeg;base64,${readFileSync(small).toString("base64")}`);
  expect((await cupboard("show", file, code)).out).toMatch(/photo +a picture of 3 kB/u);
  const told = await cupboard("note", file, code, "--photo", large);
  expect(told).toMatchObject({ code: 0, err: expect.stringContaining("50 kB: only its name is kept") });
  expect((await cupboard("show", file, code)).out).toContain(large);
  // What is no picture, and what is not there, are names as well.
  for (const name of [file, "on my telephone.heic"]) {
    expect((await cupboard("note", file, code, "--photo", name)).code).toBe(0);
    expect((await cupboard("show", file, code)).out).toContain(name);
  }
  expect((await cupboard("undo", file)).out).toContain("noting");
  expect(await cupboard("note", file, code)).toMatchObject({ code: 2, err: expect.stringContaining("--photo") });
  const spoiled = readFileSync(file, "utf8").replace(/"photo": "[^"]*"/u, '"photo": "data:text/html,hello"');
  writeFileSync(file, spoiled);
  expect((await cupboard("show", file)).err).toContain("neither the name of a file nor a small picture");
});

test("a file that a run on another machine left held is freed; nothing else is freed", async () => {
  const { file } = await begun("Held");
  expect((await cupboard("free", file)).out).toBe("Nothing holds the file.\n");
  const flag = `${file}.attic.77.0123456789ab.laywright-busy`;
  writeFileSync(flag, "");
  const young = await cupboard("free", file);
  expect(young).toMatchObject({ code: 1, err: expect.stringContaining("on the machine attic is changing it") });
  const then = Date.now() / 1000 - 3 * 86_400 - 60;
  utimesSync(flag, then, then);
  const german = await cupboard("undo", file, "--lang", "de");
  expect(german.err).toMatch(/Rechner attic hat vor 3 Tagen .*laywright cupboard free /u);
  const held = await cupboard("undo", file);
  expect(held).toMatchObject({
    code: 1,
    err: expect.stringMatching(/attic began .* 3 days ago .*cupboard free /u),
  });
  expect((await cupboard("free", file)).out).toBe("Freed; left behind by attic, 3 days ago.\n");
  expect((await cupboard("undo", file)).code).toBe(0);
  expect((await cupboard("free", join(folder, "nowhere.json"))).code).toBe(1);
}, 180_000);
