import { type SeamEdge, seamLengths } from "../panels/seams.ts";
import { sizePanels } from "../panels/sizePanels.ts";
import type { PanelWords } from "../words/panelWords.ts";
import type { Project } from "./project.ts";

/** A seam whose first side is longer than its second by `overMm` (shorter when negative), sides in words. */
export interface UnevenSeam {
  readonly first: string;
  readonly second: string;
  readonly overMm: number;
}

/** A difference that scissors make anyway, mm. */
const EVEN = 0.5;

/** Seams of a project whose sides differ by more than half a millimetre from what they are meant to. */
export function unevenSeams(project: Project, words: PanelWords): UnevenSeam[] {
  const sized = sizePanels(project.panels, project.measures);
  if (!sized.ok) return [];
  const seams = seamLengths(sized.value, project.seams ?? []);
  if (!seams.ok) return [];
  const names = new Map(project.panels.map(({ id, name }) => [id, name]));
  const edge = (ref: string | number): string =>
    typeof ref === "string" && Object.hasOwn(words.edges, ref)
      ? words.edges[ref as keyof PanelWords["edges"]]
      : String(ref);
  const side = (edges: readonly SeamEdge[]): string =>
    edges.map((one) => `${names.get(one.panel) ?? one.panel} (${edge(one.edge)})`).join(" + ");
  return seams.value
    .filter(({ over }) => Math.abs(over) > EVEN)
    .map(({ seam, over }) => ({ first: side(seam.first), second: side(seam.second), overMm: over }));
}
