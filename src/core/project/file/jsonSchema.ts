import { z } from "zod";
import { projectSchema } from "./projectSchema.ts";

/**
 * The structure of a project file as JSON Schema (draft 2020-12): keys, kinds of value, choices, list lengths.
 * What a schema cannot say is left to `readProject`: whether a text is a length, whether an outline is simple,
 * whether ids and materials fit together.
 */
export function projectJsonSchema(): object {
  const inline = z.toJSONSchema(projectSchema("mm"), { io: "input", target: "draft-2020-12", reused: "inline" });
  const definitions = new Map<string, object>();
  const project = withReferences(inline, definitions) as object;
  const $defs = Object.fromEntries([...definitions].sort(([a], [b]) => (a < b ? -1 : 1)));
  return { $id: "laywright-project-1", title: "Laywright project file, version 1", ...project, $defs };
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
    throw new RangeError(`projectJsonSchema: two different parts are called ${title}`);
  definitions.set(title, rest);
  return { $ref: `#/$defs/${title}`, ...ownDefault };
}
