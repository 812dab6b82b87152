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

/** A seam of a project with both sides in words and measured, mm. */
export interface MeasuredSeam extends UnevenSeam {
  readonly firstMm: number;
  readonly secondMm: number;
  /** Whether they differ by no more than scissors do anyway. */
  readonly isEven: boolean;
}

/** A difference that scissors make anyway, mm. */
const EVEN = 0.5;

/** Every seam of a project in its order; none when panels or seams cannot be worked out. */
export function measuredSeams(project: Project, words: PanelWords): MeasuredSeam[] {
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
  const sum = (lengths: readonly number[]): number => lengths.reduce((total, length) => total + length, 0);
  return seams.value.map(({ seam, first, second, over }) => ({
    first: side(seam.first),
    second: side(seam.second),
    firstMm: sum(first),
    secondMm: sum(second),
    overMm: over,
    isEven: Math.abs(over) <= EVEN,
  }));
}

/** Seams of a project whose sides differ by more than half a millimetre from what they are meant to. */
export function unevenSeams(project: Project, words: PanelWords): UnevenSeam[] {
  return measuredSeams(project, words)
    .filter(({ isEven }) => !isEven)
    .map(({ first, second, overMm }) => ({ first, second, overMm }));
}
