import type { Contour } from "../../core/geometry/contour.ts";
import type { Panel } from "../../core/panels/panel.ts";
import type { UnderstoodPattern } from "../../core/patterns/patternOutline.ts";
import { patternPanels, projectPanel } from "../../core/patterns/patternPanels.ts";
import { nearestWord } from "../../core/problems/nearestWord.ts";
import { freshIdIn } from "../../core/project/edits.ts";
import type { FileEdit, FileValue } from "../../core/project/file/editedText.ts";
import { panelJson } from "../../core/project/file/writePanel.ts";
import { lengthWriter } from "../../core/project/file/writeProject.ts";
import type { Project } from "../../core/project/project.ts";
import { editProjectFile } from "../inOut/editProjectFile.ts";
import { plainProblem } from "../inOut/problemReport.ts";

/** Where panels go and what the pattern cannot say of them. */
export interface IntoWish {
  readonly file: string;
  /** The first that is no interfacing or webbing when left out. */
  readonly material: string | undefined;
  readonly count: number;
  readonly seamAllowance: number;
}

/**
 * Adds the panels of a pattern to a project file; every other byte of it stays. Returns what was added.
 * Throws `InputProblem` when the file is no project, has no such material, or a panel cannot be.
 */
export function addToProject(pattern: UnderstoodPattern, wish: IntoWish): readonly Panel[] {
  const added: Panel[] = [];
  editProjectFile(wish.file, (project) => {
    const materialId = materialOf(project, wish);
    const taken = { ...project, panels: [...project.panels] };
    for (const found of patternPanels(pattern)) {
      const id = freshIdIn(taken, slugOf(found.name));
      const panel = projectPanel(found, { id, materialId, count: wish.count, seamAllowance: wish.seamAllowance });
      taken.panels.push(panel);
      added.push(rounded(panel));
    }
    const say = lengthWriter(project.unit);
    const values = added.map((panel) => JSON.parse(JSON.stringify(panelJson(panel, say))) as FileValue);
    if (project.panels.length === 0 && values.length > 0) return [{ path: ["panels"], value: values }];
    return values.map((value, i): FileEdit => ({ path: ["panels", project.panels.length + i], value }));
  });
  return added;
}

function materialOf({ materials }: Project, { material, file }: IntoWish): string {
  const found =
    material === undefined
      ? (materials.find(({ kind }) => kind !== "interfacing" && kind !== "webbing") ?? materials[0])
      : materials.find(({ id }) => id === material);
  if (found) return found.id;
  const ids = materials.map(({ id }) => id);
  const wanted = material ?? "";
  throw plainProblem("material-unknown", file, ({ files }) =>
    files.noMaterial(file, wanted, nearestWord(wanted, ids), ids.join(", ")),
  );
}

/** Letters, digits and hyphens, as ids are written. */
function slugOf(name: string): string {
  const slug = name
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z\d]+/gu, "-")
    .replace(/^-+|-+$/gu, "")
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
