import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";
import { contourEdges } from "../../core/geometry/contourArcs.ts";
import { readProject } from "../../core/project/file/readProject.ts";

const folder = mkdtempSync(join(tmpdir(), "pattern-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const FLAP = file(
  "flap.svg",
  `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200">
    <rect id="Flap" x="20" y="30" width="240" height="160" rx="20" fill="none" stroke="black"/></svg>`,
);

test("a file is told with its lines and sizes, and as one JSON document", async () => {
  const told = await runCli("pattern", FLAP);
  expect(told).toMatchObject({ code: 0, err: "" });
  expect(told.out).toContain("Flap  cut line  240 mm × 160 mm  closed, 4 straight + 4 arcs");
  const { code, out, err } = await runCli("pattern", FLAP, "--json");
  expect({ code, err }).toEqual({ code: 0, err: "" });
  const document = JSON.parse(out);
  expect(document).toMatchObject({
    laywrightPattern: 1,
    kind: "svg",
    outlines: [{ name: "Flap", layer: "", role: "cut", closed: true, widthMm: 240, heightMm: 160 }],
    marks: [],
    problems: [],
  });
  expect(document.outlines[0].areaMm2).toBeCloseTo(240 * 160 - (4 - Math.PI) * 400, 4);
  expect(Math.max(...document.outlines[0].points.map((point: number[]) => point[1]))).toBe(170);
});

test("nothing usable ends with 1 and the document all the same", async () => {
  for (const path of [
    file("empty.svg", "<svg/>"),
    file("cut.svg", "<svg><rect width='3'"),
    file("x.txt", "hello"),
    join(folder, "none"),
  ]) {
    const { code, out, err } = await runCli("pattern", path, "--json");
    expect(code, path).toBe(1);
    expect(JSON.parse(out), path).toMatchObject({ laywrightPattern: 1, outlines: [] });
    expect(JSON.parse(out).problems, path).toHaveLength(path.endsWith("empty.svg") ? 2 : 1);
    expect(err, path).not.toBe("");
  }
});

test("mends, units and roles are asked for by options", async () => {
  const open = file("open.svg", '<svg><path id="tab" d="M0 0H90V90H0V5" fill="none" stroke="#f00"/></svg>');
  const plain = await runCli("pattern", open, "--json");
  expect(JSON.parse(plain.out).outlines[0].closed).toBe(false);
  const mended = await runCli(
    "pattern",
    open,
    "--json",
    "--mend",
    "all",
    "--unit",
    "px90",
    "--roles",
    "#ff0000=stitch",
  );
  expect(JSON.parse(mended.out).outlines[0]).toMatchObject({
    closed: true,
    role: "stitch",
    told: "asked",
    widthMm: 25.4,
    areaMm2: 645.16,
  });
  for (const words of [
    ["--mend", "holes"],
    ["--unit", "ell"],
    ["--roles", "a=b"],
    ["--roles", "cut"],
  ])
    expect((await runCli("pattern", open, ...words)).code, words.join(" ")).toBe(2);
});

const CANVAS = {
  id: "canvas",
  name: "Canvas",
  kind: "woven",
  thickness: 0.5,
  stock: [{ kind: "roll", id: "roll", width: 1000 }],
};

test("panels are added to a project with what lies in them, and every other byte of it stays", async () => {
  const project = file("bag.json", `{ "laywright": 1, "name":  "Bag", "materials": [${JSON.stringify(CANVAS)}] }`);
  const flap = file(
    "flap-in.svg",
    `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="200mm" viewBox="0 0 300 200" fill="none" stroke="black">
      <rect id="Flap" x="20" y="30" width="240" height="160"/><rect x="30" y="40" width="220" height="140" stroke-dasharray="3"/>
      <path d="M100 190v-6"/><circle cx="140" cy="100" r="2"/><path id="grain" d="M60 100H220"/>
      <path id="fold" d="M260 30V190"/><text x="80" y="90">cut 2</text></svg>`,
  );
  const told = await runCli("pattern", flap, "--into", project, "--count", "2");
  expect(told).toMatchObject({ code: 0, err: "" });
  expect(told.out).toContain("Flap (flap-1)");
  const text = readFileSync(project, "utf8");
  expect(text).toContain('{ "laywright": 1, "name":  "Bag"');
  const read = readProject(text);
  const [panel] = read.ok ? read.value.panels : [];
  expect(panel).toMatchObject({
    ...{ id: "flap-1", name: "Flap", materialId: "canvas", count: 2, drawn: "cut", seamAllowance: 10 },
    grainArrow: [40, 90, 200, 90],
    drills: [{ x: 120, y: 90 }],
    texts: [{ x: 60, y: 100, text: "cut 2" }],
  });
  // The right edge lies on the fold; the notch stands 80 mm from the lower left corner on the lower one.
  const edges = panel!.shape.kind === "outline" ? contourEdges(panel!.shape.contour) : [];
  expect(edges[panel!.foldEdge as number]).toMatchObject({ x0: 240, x1: 240 });
  expect(edges[panel!.notches[0]!.edge as number]).toMatchObject({ y0: 0, y1: 0 });
  expect(panel!.notches[0]!.at).toBe(80);
  const again = await runCli("pattern", FLAP, "--into", project, "--allowance", "1/2 in", "--json");
  expect(again.code).toBe(0);
  const second = readProject(readFileSync(project, "utf8"));
  expect(second.ok && second.value.panels.map(({ id, seamAllowance }) => [id, seamAllowance])).toEqual([
    ["flap-1", 10],
    ["flap-2", 12.7],
  ]);
  expect((await runCli("check", project)).code).toBe(0);
  expect((await runCli("pattern", FLAP, "--into", project, "--material", "silk")).code).toBe(1);
  expect((await runCli("pattern", FLAP, "--count", "2")).code).toBe(2);
});

test("into a project in inches, sizes and problems are said in inches; a broken file in inches too", async () => {
  const open = file(
    "gap.svg",
    `<svg xmlns="http://www.w3.org/2000/svg" width="8in" height="6in" viewBox="0 0 203.2 152.4">
      <rect id="Back" x="10" y="10" width="101.6" height="76.2" fill="none" stroke="#000"/>
      <path id="Tab" d="M120 10H170V60H120V10.5" fill="none" stroke="#000"/></svg>`,
  );
  const materials = [{ id: "canvas", kind: "woven", thickness: "0.6 mm" }];
  const project = file("inches.json", JSON.stringify({ laywright: 1, name: "Bag", unit: "in", materials }));
  const plain = await runCli("pattern", open);
  expect(plain.err).toContain("open by 0.5 mm");
  const told = await runCli("pattern", open, "--into", project);
  expect(told.err).toContain("open by 0.0197 in");
  expect(told.out).toContain("4 in × 3 in");
  const panel = { id: "p", material: "canvas", shape: { kind: "rectangle", along: 4, across: 4 } };
  const notched = { ...panel, notches: [{ edge: "top", at: 5 }] };
  const wrong = file(
    "wrong.json",
    JSON.stringify({ laywright: 1, name: "Bag", unit: "in", materials, panels: [notched] }),
  );
  const { code, err } = await runCli("check", wrong);
  expect(code).toBe(1);
  expect(err).toContain("A notch 5 in along its edge is off an edge 4 in long.");
});
