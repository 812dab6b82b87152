import type { Contour } from "../geometry/contour.ts";
import type { Panel } from "../panels/panel.ts";
import { type PatternPanel, projectPanel } from "../patterns/patternPanels.ts";
import { freshIdIn } from "./edits.ts";
import type { Project } from "./project.ts";

/** What the pattern cannot say of its panels; the allowance, mm, is for those that show none. */
export interface FoundPanelsWish {
  readonly materialId: string;
  readonly count: number;
  readonly seamAllowance: number;
}

/** The panels of a pattern as panels of a project, in their order, with ids that nothing in it has. */
export function foundPanels(
  project: Project,
  found: readonly PatternPanel[],
  wish: FoundPanelsWish,
): readonly Panel[] {
  const taken = { ...project, panels: [...project.panels] };
  return found.map((one) => {
    const panel = projectPanel(one, { ...wish, id: freshIdIn(taken, slugOf(one.name)) });
    taken.panels.push(panel);
    return rounded(panel);
  });
}

/** Letters, digits and hyphens, as ids are written. */
function slugOf(name: string): string {
  const slug = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z\d]+/gu, "-")
    .replace(/^-|-$/gu, "")
    .slice(0, 30);
  return slug === "" ? "panel" : slug;
}

/** A tenth of a micrometre: what no cutter sees does not fill the file. */
function rounded(panel: Panel): Panel {
  const mm = (value: number): number => Math.round(value * 1e4) / 1e4 || 0;
  const neat = ({ vertices, closed }: Contour): Contour => ({
    vertices: vertices.map((value, i) => (i % 3 === 2 ? value : mm(value))),
    closed,
  });
  const place = <T extends { readonly x: unknown; readonly y: unknown }>(one: T): T => ({
    ...one,
    x: mm(one.x as number),
    y: mm(one.y as number),
  });
  return {
    ...panel,
    shape: panel.shape.kind === "outline" ? { ...panel.shape, contour: neat(panel.shape.contour) } : panel.shape,
    notches: panel.notches.map((notch) => ({ ...notch, at: mm(notch.at as number) })),
    ...(panel.grainArrow
      ? { grainArrow: panel.grainArrow.map(mm) as unknown as [number, number, number, number] }
      : {}),
    ...(panel.drills ? { drills: panel.drills.map(place) } : {}),
    ...(panel.texts ? { texts: panel.texts.map(place) } : {}),
    ...(panel.lines ? { lines: panel.lines.map((line) => ({ ...line, contour: neat(line.contour) })) } : {}),
  };
}
