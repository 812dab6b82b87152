import { readProject } from "../../core/project/file/readProject.ts";
import { writeProject } from "../../core/project/file/writeProject.ts";
import type { Project } from "../../core/project/project.ts";
import type { Codec } from "./session.ts";

/** Project to file text and back. */
export const projectCodec: Codec<Project> = {
  write: writeProject,
  read: readProject,
  nameOf: (project) => project.name,
  renamed: (project, name) => ({ ...project, name }),
};
