import { ok } from "../../core/problems/problem.ts";
import type { Project } from "../../core/project/project.ts";
import type { Codec } from "./session.ts";

/** Project to file text and back. */
export const projectCodec: Codec<Project> = {
  write: (project) =>
    JSON.stringify(project, (_key, value) => (value instanceof Float64Array ? { numbers: [...value] } : value), 2),
  read: (text) =>
    ok(JSON.parse(text, (_key, value) => (value?.numbers ? Float64Array.from(value.numbers) : value)) as Project),
  nameOf: (project) => project.name,
};
