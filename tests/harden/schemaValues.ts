import type { Draw } from "./kind.ts";

export type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

/** A JSON Schema (draft 2020-12), as far as `shared` uses it. */
export interface Schema {
  readonly $ref?: string;
  readonly $defs?: Readonly<Record<string, Schema>>;
  readonly type?: string | readonly string[];
  readonly const?: Json;
  readonly enum?: readonly Json[];
  readonly anyOf?: readonly Schema[];
  readonly oneOf?: readonly Schema[];
  readonly properties?: Readonly<Record<string, Schema>>;
  readonly required?: readonly string[];
  readonly items?: Schema | boolean;
  readonly prefixItems?: readonly Schema[];
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly title?: string;
}

/** What people write for a length, and what nobody should. */
const LENGTHS: readonly Json[] = [
  ...[10, 25, 140, 300, 0, 0.01, -5, 1e6, 1e300],
  ...["1 in", "4 7/8 in", "12 cm", "1 m 20", "1,5 cm", "⅜ in", "0 mm", "1/0 in", "-2 cm", "1e400 mm", "5 furlongs"],
];
/** Few, so that references often meet something. */
const IDS = ["a", "b", "c", "body"];
const WORDS = ["Tote", "cloth", "a", "Étui", "袋", "\u202e", "", " ", "x".repeat(300)];

/** A value that a schema allows, drawn; lists are short, and optional keys stand in one of three places. */
export function schemaValue(schema: Schema, root: Schema, draw: Draw): Json {
  if (schema.$ref !== undefined) return referenced(schema.$ref.split("/").at(-1)!, root, draw);
  if (schema.const !== undefined) return schema.const;
  if (schema.enum !== undefined) return draw.one(schema.enum);
  const ways = schema.anyOf ?? schema.oneOf;
  if (ways !== undefined) return schemaValue(draw.one(ways), root, draw);
  const type = typeof schema.type === "string" ? schema.type : draw.one(schema.type ?? ["null"]);
  switch (type) {
    case "object":
      return group(schema, root, draw);
    case "array":
      return list(schema, root, draw);
    case "number":
    case "integer":
      return amount(schema, draw);
    case "string":
      return draw.one(WORDS);
    default:
      return type === "boolean" ? draw.below(2) === 0 : null;
  }
}

function referenced(name: string, root: Schema, draw: Draw): Json {
  if (name === "id") return draw.one(IDS);
  if (name === "length" || name === "thickness") return draw.one(LENGTHS);
  if (name === "count") return 1 + draw.below(4);
  return schemaValue(root.$defs![name]!, root, draw);
}

function group({ properties = {}, required = [] }: Schema, root: Schema, draw: Draw): Json {
  const made: Record<string, Json> = {};
  for (const [key, inner] of Object.entries(properties))
    if (required.includes(key) || draw.below(3) === 0) made[key] = schemaValue(inner, root, draw);
  return made;
}

function list({ items, prefixItems, minItems = 0, maxItems = 9 }: Schema, root: Schema, draw: Draw): Json[] {
  if (prefixItems !== undefined) return prefixItems.map((item) => schemaValue(item, root, draw));
  if (typeof items !== "object") return [];
  const length = Math.min(maxItems, minItems + draw.below(4));
  return Array.from({ length }, () => schemaValue(items, root, draw));
}

function amount({ minimum = 0, maximum = 1000, type }: Schema, draw: Draw): number {
  const drawn = draw.one([minimum, maximum, minimum + 1, minimum + (maximum - minimum) * (draw.below(100) / 100)]);
  return type === "integer" ? Math.round(drawn) : drawn;
}
