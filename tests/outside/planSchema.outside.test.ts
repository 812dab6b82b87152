// The published JSON Schema of the plan file, run by a validator we did not write (ajv, JSON Schema draft 2020-12).
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, expect, test } from "vitest";
import { planJsonSchema } from "../../src/core/job/planDocument/planSchema.ts";
import { runCli } from "../tools/runCli.ts";

const folder = mkdtempSync(join(tmpdir(), "plan-schema-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const published = JSON.parse(readFileSync(new URL("../../shared/plan.schema.json", import.meta.url), "utf8"));
const isValid = new Ajv2020({ strict: false }).compile(published);

test("the published schema is up to date (npx tsx tests/tools/writeSchema.ts)", () => {
  expect(published).toEqual(JSON.parse(JSON.stringify(planJsonSchema())));
});

test.each([
  ["ferry-straps", []],
  ["tide-pouch", ["--cut", "few-stages"]],
  ["chart-folder", ["--cut", "ruler"]],
])("%s: the plan file and what is printed are what the schema says, key for key", async (name, more) => {
  const project = new URL(`../golden/projects/${name}.json`, import.meta.url).pathname;
  const { out } = await runCli("lay", project, "--effort", "0.01", "--out", join(folder, name), "--json", ...more);
  for (const document of [out, readFileSync(join(folder, name, "plan.json"), "utf8")]) {
    isValid(JSON.parse(document));
    expect(isValid.errors).toBeNull();
  }
  const plan = JSON.parse(out);
  expect(isValid({ ...plan, surplus: 1 })).toBe(false);
  for (const key of Object.keys(plan)) expect(isValid({ ...plan, [key]: undefined }), key).toBe(false);
  for (const key of Object.keys(plan.materials[0])) {
    const { [key]: _taken, ...material } = plan.materials[0];
    expect(isValid({ ...plan, materials: [material] }), key).toBe(false);
  }
});
