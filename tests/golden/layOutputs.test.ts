// Every file that `lay` writes for three small projects, byte for byte where it is text. `UPDATE_GOLDEN=1` writes the
// expected files anew.
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { expectGolden, jsonLines } from "../tools/goldenFiles.ts";
import { pdfDigest } from "../tools/pdfDigest.ts";
import { runCli } from "../tools/runCli.ts";

const here = fileURLToPath(new URL(".", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "lay-outputs-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test.each([
  ["ferry-straps", []],
  ["tide-pouch", []],
  ["chart-folder", ["--cut", "ruler", "--lang", "de"]],
])("%s: every file is as it was", async (name, more) => {
  const out = join(folder, name);
  const words = ["lay", join(here, "projects", `${name}.json`), "--effort", "0.2", "--seed", "7", ...more];
  const written = await runCli(...words, "--out", out, "--json");
  const told = await runCli(...words);
  expect(written.code).toBe(0);
  const texts = new Map([
    ["stdout.json", `${jsonLines(JSON.parse(written.out))}\n`],
    ["stdout.txt", told.out],
    ["stderr.txt", written.err],
  ]);
  for (const file of readdirSync(out)) {
    const bytes = readFileSync(join(out, file));
    if (file.endsWith(".pdf")) texts.set(`${file}.txt`, await pdfDigest(bytes));
    else texts.set(file, file.endsWith(".json") ? planText(bytes.toString("utf8")) : bytes.toString("utf8"));
  }
  expectGolden(join(here, "outputs", name), texts);
});

/** The plan file beyond what standard output has as well; the hashes of files stand for bytes that compression decides. */
function planText(text: string): string {
  const { materials, files, ...rest } = JSON.parse(text);
  expect(materials.length).toBeGreaterThan(0);
  return `${jsonLines({ ...rest, files: files.map((file: { name: string }) => file.name) })}\n`;
}
