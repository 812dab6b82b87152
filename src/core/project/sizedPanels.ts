import type { Measure } from "../panels/measure.ts";
import type { SizedPanel } from "../panels/sizedPanel.ts";
import { sizePanels } from "../panels/sizePanels.ts";
import { Sizing } from "../panels/sizing.ts";
import type { Project } from "./project.ts";

interface Known {
  readonly panels: Project["panels"];
  readonly measures: Project["measures"];
  readonly sized: ReadonlyMap<string, SizedPanel>;
}

/** States that stay worked out: the one at hand and those it is set beside. Undo steps of a day would hold a day. */
const MOST_KNOWN = 4;
let known: readonly Known[] = [];

/** A panel of the project with its measures worked out, once for each state at hand; null when they do not fit. */
export function sizedPanelOf({ panels, measures }: Project, id: string): SizedPanel | null {
  let own = known.find((one) => one.panels === panels && one.measures === measures);
  if (own === undefined) {
    const all = sizePanels(panels, measures);
    own = { panels, measures, sized: new Map(all.ok ? all.value.map((one) => [one.panel.id, one]) : []) };
    known = [own, ...known].slice(0, MOST_KNOWN);
  }
  return own.sized.get(id) ?? null;
}

/** What a measure comes to in the project, mm; null when it cannot be worked out. */
export function lengthNow(project: Project, measure: Measure): number | null {
  return new Sizing(project.panels, project.measures ?? [], () => "").lengthOf(measure, "");
}
