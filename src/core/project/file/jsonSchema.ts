import { z } from "zod";
import { projectSchema } from "./projectSchema.ts";
import { workshopSchema } from "./workshop.ts";

/**
 * The structure of a project file as JSON Schema (draft 2020-12): keys, kinds of value, choices, list lengths.
 * What a schema cannot say is left to `readProject`: whether a text is a length, whether an outline is simple,
 * whether ids and materials fit together.
 */
export function projectJsonSchema(): object {
  const head = { $id: "laywright-project-1", title: "Laywright project file, version 1" };
  return publishedSchema(projectSchema("mm"), "input", head);
}

/** The structure of a workshop file as JSON Schema. */
export function workshopJsonSchema(): object {
  const head = { $id: "laywright-workshop-1", title: "Laywright workshop file, version 1" };
  return publishedSchema(workshopSchema("mm"), "input", head);
}

/**
 * A schema as JSON Schema (draft 2020-12), its titled parts kept once under `$defs`. `io`: what is read of a person,
 * or what we write, which has no further keys. RangeError when two different parts have one title.
 */
export function publishedSchema(
  schema: z.ZodType,
  io: "input" | "output",
  head: { readonly $id: string; readonly title: string },
): object {
  const inline = z.toJSONSchema(schema, { io, target: "draft-2020-12", reused: "inline" });
  const definitions = new Map<string, object>();
  const document = withReferences(inline, definitions) as object;
  const $defs = Object.fromEntries([...definitions].sort(([a], [b]) => (a < b ? -1 : 1)));
  return { ...head, ...document, $defs };
}

/** A schema whose titled parts are references to `definitions`, each kept there once. RangeError when two differ. */
function withReferences(schema: unknown, definitions: Map<string, object>): unknown {
  if (Array.isArray(schema)) return schema.map((part) => withReferences(part, definitions));
  if (typeof schema !== "object" || schema === null) return schema;
  const parts = Object.entries(schema).map(([key, part]) => [key, withReferences(part, definitions)] as const);
  const { title, default: usual, ...rest } = Object.fromEntries(parts) as Record<string, unknown>;
  const ownDefault = usual === undefined ? {} : { default: usual };
  // A property may be called "title": only a text is one.
  if (typeof title !== "string") return { ...rest, ...(title === undefined ? {} : { title }), ...ownDefault };
  const known = definitions.get(title);
  if (known !== undefined && JSON.stringify(known) !== JSON.stringify(rest))
    throw new RangeError(`publishedSchema: two different parts are called ${title}`);
  definitions.set(title, rest);
  return { $ref: `#/$defs/${title}`, ...ownDefault };
}
