// The published JSON Schema, run by a validator we did not write (ajv, JSON Schema draft 2020-12), against our reader.
import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { expect, test } from "vitest";
import { projectJsonSchema } from "../../src/core/project/file/jsonSchema.ts";
import { readProject } from "../../src/core/project/file/readProject.ts";

const published = readFileSync(new URL("../../shared/project.schema.json", import.meta.url), "utf8");
const demo = readFileSync(new URL("../../fixtures/harbour-bags.json", import.meta.url), "utf8");

test("the published schema is up to date (npx tsx tests/tools/writeSchema.ts)", () => {
  expect(JSON.parse(published)).toEqual(JSON.parse(JSON.stringify(projectJsonSchema())));
});

/** What a schema cannot say: the reader alone finds these. */
const BEYOND_SCHEMA =
  /^(length-|share-|count-|money-|thickness-|outline-|unknown-(?:material|panel|measure)|measures-in-|edge-start-|allowance-|inset-|size-|duplicate-id|grain-conflict|radius-|bow-|notch-|no-such-edge|fold-|selvedges-|key-repeated)/u;

type Group = Record<string, unknown>;

/** The demo with one place changed in each of several ways. */
function* mutants(): Generator<[string, unknown]> {
  const junk = [{}, [], true, null, 5, "x", -1, [[]]];
  const visit = function* (value: unknown, path: (string | number)[]): Generator<[string, unknown]> {
    const change = (edit: (parent: Group, key: string | number) => void): unknown => {
      const copy = JSON.parse(demo);
      let parent = copy;
      for (const step of path.slice(0, -1)) parent = parent[step];
      edit(parent, path.at(-1)!);
      return copy;
    };
    const name = path.join(".");
    if (path.length > 0) {
      for (const put of junk)
        yield [
          `${name} = ${JSON.stringify(put)}`,
          change((parent, key) => {
            parent[key] = put;
          }),
        ];
      if (typeof path.at(-1) === "string")
        yield [
          `${name} removed`,
          change((parent, key) => {
            delete parent[key];
          }),
        ];
    }
    if (typeof value !== "object" || value === null) return;
    if (!Array.isArray(value) && path.length > 0)
      yield [
        `${name} + key`,
        change((parent, key) => {
          (parent[key] as Group)["surplus"] = 1;
        }),
      ];
    for (const [key, inner] of Object.entries(value))
      yield* visit(inner, [...path, Array.isArray(value) ? Number(key) : key]);
  };
  yield* visit(JSON.parse(demo), []);
}

test("schema and reader refuse the same structures, over every place of the demo", () => {
  const validate = new Ajv2020({ strict: false, allowUnionTypes: true }).compile(JSON.parse(published));
  expect(validate(JSON.parse(demo))).toBe(true);
  const apart: string[] = [];
  let refused = 0;
  let accepted = 0;
  let turn = 0;
  for (const [name, value] of mutants()) {
    // Every eleventh: 11 shares no factor with the number of changes at a place, so all places and changes are met.
    if (turn++ % 11 !== 0) continue;
    const bySchema = validate(value);
    const read = readProject(JSON.stringify(value));
    const byStructure = read.ok || read.problems.every(({ code }) => BEYOND_SCHEMA.test(code));
    if (bySchema !== byStructure)
      apart.push(`${name}: schema ${bySchema}, reader ${JSON.stringify(read).slice(0, 200)}`);
    if (bySchema) accepted++;
    else refused++;
  }
  expect(apart).toEqual([]);
  expect(refused).toBeGreaterThan(100);
  expect(accepted).toBeGreaterThan(40);
});
