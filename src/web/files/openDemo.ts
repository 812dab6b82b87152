import type { Project } from "../../core/project/project.ts";
import { projectCodec } from "../state/projectCodec.ts";
import type { Session } from "../state/session.ts";

/** Opens the example as a project of its own beside the others. */
export async function openDemo(session: Session<Project>, label: string): Promise<void> {
  const { default: text } = await import("../../../fixtures/harbour-bags.json?raw");
  const read = projectCodec.read(text);
  if (!read.ok) throw new TypeError(`openDemo: the example does not read: ${JSON.stringify(read.problems)}`);
  session.start(read.value, label);
}
