// The demo project from its file to the files for the cutting table, and everything that can be wrong with a file.
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { runCli } from "../../tools/runCli.ts";

const DEMO = "fixtures/harbour-bags.json";
const folder = mkdtempSync(join(tmpdir(), "laywright-lay-"));

/** The demo project with a part of it changed. */
function changed(change: (project: Record<string, never>) => void): string {
  const project = JSON.parse(readFileSync(DEMO, "utf8"));
  change(project);
  return JSON.stringify(project);
}

function fileOf(name: string, text: string): string {
  const path = join(folder, `${name}.json`);
  writeFileSync(path, text);
  return path;
}

test("lay writes checked files, the same ones every time", async () => {
  const [first, second] = [join(folder, "first"), join(folder, "second")];
  const run = await runCli("lay", DEMO, "--effort", "0.3", "--out", first);
  expect(run.code).toBe(0);
  // Laid freely, some cloths would be cut into strips by ruler: of those there is no list of cuts, and nothing else is told.
  for (const line of run.err.trim().split("\n")) expect(line).toMatch(/^No \S+-ruler\.pdf: /u);
  for (const path of run.out.split("\n").filter((line) => line.startsWith(`  ${first}`)))
    expect(existsSync(path.trim())).toBe(true);
  expect(run.out).toContain("cut-sheet.pdf");
  await runCli("lay", DEMO, "--effort", "0.3", "--out", second);
  for (const name of [
    "plan.json",
    "cut-sheet.pdf",
    "cut-sheet.txt",
    "harness-leather.svg",
    "harness-leather-a4.pdf",
  ])
    expect(readFileSync(join(second, name)).equals(readFileSync(join(first, name)))).toBe(true);
}, 120_000);

test("where straight cuts do not take every piece, the most that they take is laid, and what is left out is named", async () => {
  const run = await runCli("lay", DEMO, "--effort", "0.3", "--cut", "ruler", "--json");
  expect(run.code).toBe(1);
  const left = JSON.parse(run.out).materials.filter(({ unplaced }: { unplaced: object[] }) => unplaced.length > 0);
  expect(left.map(({ name }: { name: string }) => name)).toEqual(["Harness leather"]);
  expect(run.err).toMatch(/"Ring tab" does not fit/u);
  // Asked for any way of cutting, all of it finds room.
  const free = JSON.parse((await runCli("lay", DEMO, "--effort", "0.3", "--json")).out).materials;
  expect(free.flatMap(({ unplaced }: { unplaced: object[] }) => unplaced)).toEqual([]);
}, 120_000);

test("output settings from the command line: own paper, layers, outlines, and a fitted print named", async () => {
  const out = join(folder, "settings");
  const run = await runCli(
    ...["lay", DEMO, "--effort", "0.01", "--out", out, "--paper", "13 x 19 in", "--letters", "outlines"],
    ...["--sheets", "curved", "--test-square", "97.3 x 97.3", "--settings"],
    '{"lines": {"cut": {"layer": "BLADE", "color": "#ff0000"}, "flaw": {"draw": false}}}',
  );
  expect(run.code).toBe(0);
  expect(run.err).toContain("fit to page");
  const sheets = readFileSync(join(out, "waxed-sailcloth-sailcloth-roll-330-2-482-6-mm.pdf"));
  expect(sheets.length).toBeGreaterThan(1000);
  const svg = readFileSync(join(out, "harness-leather.svg"), "utf8");
  expect(svg).toContain('<g id="BLADE" fill="none" stroke="#ff0000"');
  expect(svg).not.toMatch(/<text|id="flaw"/u);
  expect(readFileSync(join(out, "harness-leather.dxf"), "utf8")).not.toContain("TEXT");
  const wrong = await runCli("lay", DEMO, "--paper", "3 x 4 in", "--overcut", "far");
  expect(wrong.code).toBe(1);
  expect(wrong.err).toContain("output.paper.width");
  expect((await runCli("lay", DEMO, "--paper", "A9")).err).toContain("A9");
  expect((await runCli("lay", DEMO, "--settings", "[1]")).code).toBe(2);
}, 60_000);

test("lay --json prints one document that check verifies, and check finds what is changed in it", async () => {
  const run = await runCli("lay", DEMO, "--effort", "0.3", "--json");
  expect(run.code).toBe(0);
  const document = JSON.parse(run.out);
  expect(document.materials.map((material: { name: string }) => material.name)).toContain("Waxed sailcloth");
  for (const material of document.materials) {
    expect(material.utilisation).toBeGreaterThan(0.2);
    expect(material.utilisation).toBeLessThanOrEqual(1);
    if (material.bound !== null) expect(material.gap).toBeGreaterThanOrEqual(0);
    expect(material.unplaced).toEqual([]);
  }
  expect(await runCli("check", fileOf("right", run.out))).toMatchObject({ code: 0, err: "" });
  document.materials[0].placed[0].x += 500;
  document.materials[1].placed.pop();
  const wrong = await runCli("check", fileOf("wrong", JSON.stringify(document)), "--json");
  expect(wrong.code).toBe(1);
  const codes = JSON.parse(wrong.out).problems.map((problem: { code: string }) => problem.code);
  expect(codes).toContain("plan-miscounted");
  expect(codes).toContain("plan-length-untrue");
}, 120_000);

test("pieces that find no room are told with what would help, and the rest is laid", async () => {
  const text = changed((project) => {
    (project["materials"] as { stock: object[] }[])[1].stock = [
      { kind: "roll", id: "short end", width: "30 cm", length: "1.4 m" },
    ];
  });
  const run = await runCli("lay", fileOf("short", text), "--effort", "0.3");
  expect(run.code).toBe(1);
  expect(run.err).toMatch(/does not fit: .* \d+ mm more of the roll takes everything/);
  expect(run.err).toMatch(/cannot be cut: on this grain it takes .* across/);
}, 120_000);

const nested = "[".repeat(20_000) + "]".repeat(20_000);
const material = (project: Record<string, never>) => (project["materials"] as Record<string, unknown>[])[0];
const panel = (project: Record<string, never>) => (project["panels"] as Record<string, unknown>[])[0];
const strap = (project: Record<string, never>) => (project["straps"] as Record<string, unknown>[])[0];
const crossed = {
  kind: "outline",
  points: [
    [0, 0],
    [200, 200],
    [200, 0],
    [0, 200],
  ],
};

test.each([
  ["no JSON", "{"],
  ["empty", ""],
  ["blank", " \n"],
  ["a list", "[]"],
  ["null", "null"],
  ["nested deeply", nested],
  ["nested inside", `{"laywright":1,"name":${nested}}`],
  ["huge bags", changed((project) => Object.assign(project, { bags: 1e9 }))],
  ["huge gap", changed((project) => Object.assign(project, { gap: 1e9 }))],
  [
    "huge length",
    changed((project) => Object.assign(panel(project), { shape: { kind: "rectangle", along: 1e9, across: 1e9 } })),
  ],
  ["negative gap", changed((project) => Object.assign(project, { gap: -2 }))],
  ["negative bags", changed((project) => Object.assign(project, { bags: -1 }))],
  ["NaN", changed((project) => Object.assign(project, { gap: "NaN" }))],
  ["a bare NaN", '{"laywright":1,"gap":NaN}'],
  ["an overflowing number", '{"laywright":1,"name":"x","gap":1e999}'],
  ["a crossed outline", changed((project) => Object.assign(panel(project), { shape: crossed }))],
  ["a name twice", changed((project) => (project["panels"] as object[]).push(panel(project)))],
  ["an unknown material", changed((project) => Object.assign(panel(project), { material: "moonsilk" }))],
  ["a bad strap", changed((project) => Object.assign(strap(project), { width: "wide" }))],
  ["an unknown key", changed((project) => Object.assign(material(project), { colour: "red" }))],
  ["a plan of nonsense", '{"laywrightPlan":1,"seed":0,"materials":[{"pieces":[[]]}]}'],
])("a file that is wrong (%s) ends with 1, says why, and writes nothing", async (name, text) => {
  const path = fileOf(`wrong ${name}`, text);
  const out = join(folder, `out ${name}`);
  const runs = [await runCli("lay", path, "--effort", "0.01", "--out", out), await runCli("check", path, "--json")];
  for (const { code, err } of runs) {
    expect({ code, err }).toMatchObject({ code: 1 });
    expect(err.length).toBeGreaterThan(20);
    expect(err.length).toBeLessThan(5000);
    expect(err).not.toMatch(/^\s+at .*:\d+/m);
  }
  expect(JSON.parse(runs[1].out).problems.length).toBeGreaterThan(0);
  expect(existsSync(out)).toBe(false);
});

test("a folder that cannot be made is told, and nothing is written", async () => {
  const blocked = fileOf("blocked", "{}");
  const run = await runCli("lay", DEMO, "--effort", "0.01", "--out", join(blocked, "below"));
  expect(run.code).toBe(1);
  expect(run.err).toContain("Nothing was written");
}, 60_000);

test("--choices --json gives every plan with its figures, --choose writes the files of one", async () => {
  const compared = await runCli("lay", DEMO, "--choices", "--effort", "0.06", "--json");
  expect(compared.code).toBe(0);
  const { materials } = JSON.parse(compared.out);
  for (const { choices } of materials) {
    expect(choices.flatMap(({ best }: { best: string[] }) => best)).toContain("shortest");
    for (const { lengthMm, extraLengthMm, plan } of choices) {
      expect(plan.lengthUsed).toBeCloseTo(lengthMm, 6);
      expect(extraLengthMm).toBeGreaterThanOrEqual(-1e-6);
    }
  }
  const [cloth] = materials;
  const easiest = cloth.choices.find(({ best }: { best: string[] }) => best.includes("easiest"));
  const out = join(folder, "easiest");
  const chosen = await runCli("lay", DEMO, "--choose", "easiest", "--effort", "0.06", "--out", out);
  expect(chosen).toMatchObject({ code: 0, err: "" });
  const plan = JSON.parse(readFileSync(join(out, "plan.json"), "utf8"));
  expect(plan.materials[0].placed).toEqual(easiest.plan.placed);
  expect(existsSync(join(out, "waxed-sailcloth-ruler-cuts.txt"))).toBe(true);
  expect((await runCli("lay", DEMO, "--choose", "easiest", "--cut", "ruler")).code).toBe(2);
  expect((await runCli("lay", DEMO, "--choices", "--out", out)).err).toContain("--choose takes one of them");
}, 120_000);
