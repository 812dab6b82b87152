import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import { writeProject } from "../../core/project/file/writeProject.ts";

const folder = mkdtempSync(join(tmpdir(), "fold-test-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const strap = (...words: string[]) => runCli("strap", ...words);

test("a fold test says what to fold, then fits what was read", async () => {
  const ask = await strap("--fold-test", "--thickness", "1 mm");
  expect(ask.out).toContain("Cut a strip 100 mm");
  const told = await strap(
    "--fold-test",
    "--thickness",
    "1 mm",
    "--measured-width",
    "35.05 mm",
    "--measured-setback",
    "3.36 mm",
    "--json",
  );
  const { fit } = JSON.parse(told.out);
  expect(fit.neutral).toBeCloseTo(0.5, 1);
  expect(fit.neutralError).toBeGreaterThan(0);
});

test("a fold test's fit is stored with its material and nothing else changes", async () => {
  const file = join(folder, "bag.json");
  const before = readProject(readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8"));
  if (!before.ok) throw new Error("the demo project cannot be read");
  writeFileSync(file, writeProject(before.value));
  const { id } = before.value.materials[0]!;
  const measured = ["--thickness", "1 mm", "--measured-width", "35.2 mm", "--measured-setback", "3 mm"];
  const done = await strap("--fold-test", ...measured, "--into", file, "--of", id);
  expect(done).toMatchObject({ code: 0 });
  const after = readProject(readFileSync(file, "utf8"));
  if (!after.ok) throw new Error("the stored project cannot be read");
  const [first, ...others] = after.value.materials;
  const reading = { construction: "three-raw", thickness: 1, cutWidth: 100, finishedWidth: 35.2, setback: 3 };
  expect(first).toMatchObject({ thickness: 1, fold: { tests: [{ ...reading, readingError: 0.5 }] } });
  expect(others).toEqual(before.value.materials.slice(1));
  expect({ ...after.value, materials: [] }).toEqual({ ...before.value, materials: [] });
  const unknown = await strap("--fold-test", ...measured, "--into", file, "--of", "moonstone");
  expect(unknown.code).toBe(1);
});

test("a second test of a material is averaged with the first, and one that says nothing is not stored", async () => {
  const file = join(folder, "tests.json");
  const text = readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8");
  writeFileSync(file, text);
  const project = readProject(text);
  if (!project.ok) throw new Error("the demo project cannot be read");
  const { id } = project.value.materials[0]!;
  const measured = (width: string) => [
    "--thickness",
    "1 mm",
    "--measured-width",
    width,
    "--measured-setback",
    "3 mm",
  ];
  const into = ["--into", file, "--of", id];
  const fine = ["--reading-error", "0.1 mm"];
  expect(await strap("--fold-test", ...measured("35.2 mm"), ...fine, ...into)).toMatchObject({ code: 0 });
  const second = await strap("--fold-test", ...measured("35.1 mm"), ...fine, ...into);
  expect(second.out).toMatch(/All 2 tests of this material together: K 0\.\d\d ± 0\.0\d/u);
  const before = readFileSync(file, "utf8");
  const thin = ["--thickness", "0.3 mm", "--measured-width", "34 mm", "--measured-setback", "1 mm"];
  const nothing = await strap("--fold-test", ...thin, "--reading-error", "2 mm", ...into);
  expect(nothing.code).toBe(1);
  expect(nothing.err).toContain("says nothing");
  expect(readFileSync(file, "utf8")).toBe(before);
});

test("8: storing a fold test keeps every other byte of the file: its units, order, blanks and schema", async () => {
  const file = join(folder, "own-words.json");
  const text = readFileSync(new URL("../../../fixtures/harbour-bags.json", import.meta.url), "utf8");
  const project = readProject(text);
  if (!project.ok) throw new Error("the demo project cannot be read");
  const { id, thickness } = project.value.materials[0]!;
  writeFileSync(file, `\ufeff${text}`);
  const measured = ["--thickness", `${thickness} mm`, "--measured-width", "35.2 mm", "--measured-setback", "3 mm"];
  expect(await strap("--fold-test", ...measured, "--into", file, "--of", id)).toMatchObject({ code: 0 });
  const after = readFileSync(file, "utf8");
  // What was put in, taken out again, leaves the file as it was.
  expect(after).not.toBe(text);
  expect(after.replace(/,\s*"fold": \{[^}]*\}[^}]*\}/u, "")).toBe(`\ufeff${text}`);
  expect(text).toContain("$schema");
});

test("a workshop file gives one strap its machine; a project beside it names it, and a fold test goes into that project", async () => {
  const folder = mkdtempSync(join(tmpdir(), "workshop-test-"));
  const shop = join(folder, "quay.json");
  const needles = [{ kind: "vinyl", needle: "100/16", thread: "polyester 40" }];
  const vinyl = { id: "black", kind: "vinyl", thickness: "0.95 mm" };
  const sewingMachine = { maxThickness: "9 mm", needles };
  writeFileSync(shop, JSON.stringify({ laywrightWorkshop: 1, name: "Quay", sewingMachine, materials: [vinyl] }));
  const strap = [
    "strap",
    "--construction",
    "fourfold",
    "--width",
    "1 in",
    "--length",
    "1 m",
    "--material",
    "vinyl",
  ];
  const ends = ["--ends", "fold-back", "--thickness", "1 mm"];
  expect((await runCli(...strap, ...ends)).out).toContain("a home machine takes about");
  const hers = await runCli(...strap, ...ends, "--machine", shop);
  expect(hers.out).not.toContain("home machine");
  expect(hers.out).toContain("needle 100/16, thread polyester 40");
  const low = await runCli(...strap, ...ends, "--machine", shop, "--machine-thickness", "5 mm");
  expect(low.out).toContain("more than the machine's 5 mm");
  const project = join(folder, "sling.json");
  const sling = {
    id: "sling",
    construction: "fourfold",
    width: "25 mm",
    length: "1 m",
    materials: { outer: "outer" },
  };
  const text = JSON.stringify({
    ...{ laywright: 1, name: "Sling", workshop: "quay.json", straps: [sling] },
    materials: [{ id: "outer", from: "black", stock: [{ kind: "roll", id: "roll", width: "137 cm" }] }],
  });
  writeFileSync(project, text);
  expect((await runCli("check", project)).code).toBe(0);
  const read = ["--measured-width", "35.2 mm", "--measured-setback", "3 mm", "--thickness", "0.95 mm"];
  const kept = await runCli("strap", "--fold-test", ...read, "--into", project, "--of", "outer");
  expect(kept.code).toBe(0);
  expect(readFileSync(project, "utf8")).toContain('"from":"black"');
  writeFileSync(project, text.replace("quay.json", "away.json"));
  expect((await runCli("check", project)).err).toContain('names the workshop "away.json", which is not there');
  rmSync(folder, { recursive: true });
});
