import type { Measure } from "../panels/measure.ts";
import type { SizedPanel } from "../panels/sizedPanel.ts";
import { sizePanels } from "../panels/sizePanels.ts";
import { Sizing } from "../panels/sizing.ts";
import type { Project } from "./project.ts";

const known = new WeakMap<Project, ReadonlyMap<string, SizedPanel>>();

/** A panel of the project with its measures worked out, once for each state of it; null when they do not fit. */
export function sizedPanelOf(project: Project, id: string): SizedPanel | null {
  let sized = known.get(project);
  if (sized === undefined) {
    const all = sizePanels(project.panels, project.measures);
    sized = new Map(all.ok ? all.value.map((one) => [one.panel.id, one]) : []);
    known.set(project, sized);
  }
  return sized.get(id) ?? null;
}

/** What a measure comes to in the project, mm; null when it cannot be worked out. */
export function lengthNow(project: Project, measure: Measure): number | null {
  return new Sizing(project.panels, project.measures ?? [], () => "").lengthOf(measure, "");
}
