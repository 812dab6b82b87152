import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Ajv from "ajv/dist/2020.js";
import { afterAll, expect, test } from "vitest";
import { runCli } from "../tools/runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "pattern-schema-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const schema = JSON.parse(readFileSync(new URL("../../shared/pattern.schema.json", import.meta.url), "utf8"));
// A checker of JSON Schema that we did not write.
const isValid = new Ajv({ strict: false }).compile(schema);

test.each([
  [
    "whole.svg",
    '<svg width="90mm" height="90mm"><g id="cut"><rect width="50" height="20"/></g><text>2</text><path stroke="red" stroke-dasharray="3 1 1 1" fill="none" d="M1 1L9 9"/></svg>',
  ],
  ["short.svg", "<svg><rect"],
  ["nothing.dxf", "0\nSECTION\n2\nENTITIES\n0\nPOINT\n8\n0\n10\n1\n20\n2\n0\nENDSEC\n0\nEOF\n"],
])("what is printed of %s is what the schema says", async (name, text) => {
  writeFileSync(join(folder, name), text);
  const { out } = await runCli("pattern", join(folder, name), "--json");
  isValid(JSON.parse(out));
  expect(isValid.errors).toBeNull();
});

test("the schema refuses what is not so", () => {
  expect(isValid({ laywrightPattern: 1, kind: "gif", outlines: [], marks: [], problems: [] })).toBe(false);
  expect(isValid({ laywrightPattern: 1, kind: "svg", outlines: [{ name: "a" }], marks: [], problems: [] })).toBe(
    false,
  );
});
