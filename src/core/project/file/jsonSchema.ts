import { z } from "zod";
import { projectSchema } from "./projectSchema.ts";

/**
 * The structure of a project file as JSON Schema (draft 2020-12): keys, kinds of value, choices, list lengths.
 * What a schema cannot say is left to `readProject`: whether a text is a length, whether an outline is simple,
 * whether ids and materials fit together.
 */
export function projectJsonSchema(): object {
  return {
    $id: "laywright-project-1",
    title: "Laywright project file, version 1",
    ...z.toJSONSchema(projectSchema("mm"), { io: "input", target: "draft-2020-12", reused: "ref" }),
  };
}
