// The published JSON Schema of the cupboard file, run by a validator we did not write (ajv, JSON Schema draft 2020-12).
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, expect, test } from "vitest";
import { cupboardJsonSchema, readCupboard } from "../../src/core/cupboard/cupboardFile.ts";
import { runCli } from "../tools/runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "cupboard-schema-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), "utf8");
const published = JSON.parse(read("shared/cupboard.schema.json"));
const isValid = new Ajv2020({ strict: false }).compile(published);

test("the published schema is up to date (npx tsx tests/tools/writeSchema.ts)", () => {
  expect(published).toEqual(JSON.parse(JSON.stringify(cupboardJsonSchema())));
});

test("what is written is what the schema says, and so is the page's example; a key too many is neither", async () => {
  const file = join(folder, "cupboard.json");
  const put = ["cupboard", "put", file, "--material", "Canvas", "--size", "60 x 40 cm"];
  for (const more of [[], ["--roll"], ["--skin", "--shade", "rust", "--note", "for flaps"]])
    await runCli(...put, ...more);
  await runCli("cupboard", "undo", file);
  const [example] = /\{\n {2}"laywrightCupboard"[\s\S]*?\n\}/u.exec(read("docs/reference/cupboard-file.md"))!;
  for (const text of [readFileSync(file, "utf8"), example]) {
    isValid(JSON.parse(text));
    expect(isValid.errors).toBeNull();
    expect(readCupboard(text)).toMatchObject({ ok: true });
    const more = { ...JSON.parse(text), shelf: 3 };
    expect(isValid(more)).toBe(false);
    expect(readCupboard(JSON.stringify(more)).ok).toBe(false);
  }
});
