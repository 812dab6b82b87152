import type { Problem } from "../../core/problems/problem.ts";
import type { Project } from "../../core/project/project.ts";
import type { KeptPlans } from "../state/keptPlans.ts";
import { plansFromFile } from "../state/plansInFile.ts";
import { projectCodec } from "../state/projectCodec.ts";
import type { Session } from "../state/session.ts";
import type { Texts } from "../texts/en.ts";
import { saveTextFile } from "./projectFiles.ts";

/** Why a file could not be opened. */
export interface FileTrouble {
  readonly file: string;
  readonly problems: readonly Problem[];
}

/** Largest file that is looked at; a project is a few hundred kilobytes at most. */
const MOST_BYTES = 20_000_000;

/**
 * Reads a project file and makes it the open project, beside the ones that are there. Null when it went well,
 * else the reasons; the open project is then as it was.
 */
export async function openProjectFile(
  file: File,
  session: Session<Project>,
  plans: KeptPlans,
  texts: Texts,
): Promise<FileTrouble | null> {
  const text = file.size > MOST_BYTES ? "" : await file.text();
  const read = projectCodec.read(text);
  if (!read.ok) return { file: file.name, problems: read.problems };
  // Plans are kept beside the project: no undo takes one away that pages were printed from.
  const { plans: kept, ...project } = read.value;
  plans.bring(plansFromFile(project, kept ?? [], () => crypto.randomUUID()));
  session.start(project, texts.project.changes.opened(file.name));
  return null;
}

/** Saves the open project with its kept plans as a file; gives its name, or null when it was not saved. */
export function saveProjectFile(id: string, project: Project, plans: KeptPlans): Promise<string | null> {
  return saveTextFile(id, project.name, projectCodec.write(plans.withPlans(project)));
}

/** Opens the example as a project of its own beside the others. */
export async function openDemo(session: Session<Project>, label: string): Promise<void> {
  const { default: text } = await import("../../../fixtures/harbour-bags.json?raw");
  const read = projectCodec.read(text);
  if (!read.ok) throw new TypeError(`openDemo: the example does not read: ${JSON.stringify(read.problems)}`);
  session.start(read.value, label);
}
