import type { Problem } from "../../core/problems/problem.ts";
import { isWorkshop, readWorkshop, withWorkshop } from "../../core/project/file/workshop.ts";
import type { Project } from "../../core/project/project.ts";
import { present } from "../state/history.ts";
import type { KeptPlans } from "../state/keptPlans.ts";
import { plansFromFile } from "../state/plansInFile.ts";
import { projectCodec } from "../state/projectCodec.ts";
import type { Session } from "../state/session.ts";
import { keepWorkshop, keptWorkshop } from "../storage/workshops.ts";
import type { Texts } from "../texts/texts.ts";
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
  if (isWorkshop(text)) return openWorkshop(file.name, text, session, texts);
  const whole = withWorkshop(text, keptWorkshop);
  const read = whole.ok ? projectCodec.read(whole.value) : whole;
  if (!read.ok) return { file: file.name, problems: read.problems };
  // Plans are kept beside the project: no undo takes one away that pages were printed from.
  const { plans: kept, ...project } = read.value;
  plans.bring(plansFromFile(project, kept ?? [], () => crypto.randomUUID()));
  session.start(project, texts.project.changes.opened(file.name));
  return null;
}

/** Keeps a workshop for the projects that name it, and gives the open project its sewing machine. */
function openWorkshop(file: string, text: string, session: Session<Project>, texts: Texts): FileTrouble | null {
  const read = readWorkshop(text);
  if (!read.ok) return { file, problems: read.problems };
  keepWorkshop(file, text);
  const { name, sewingMachine } = read.value;
  session.change(
    { ...present(session.state.get().history), sewingMachine, workshop: file },
    texts.project.changes.workshop(name),
  );
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
