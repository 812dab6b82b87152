import type { Panel } from "../../core/panels/panel.ts";
import type { UnderstoodPattern } from "../../core/patterns/patternOutline.ts";
import { patternPanels } from "../../core/patterns/patternPanels.ts";
import { nearestWord } from "../../core/problems/nearestWord.ts";
import type { FileEdit, FileValue } from "../../core/project/file/editedText.ts";
import { panelJson } from "../../core/project/file/writePanel.ts";
import { lengthWriter } from "../../core/project/file/writeProject.ts";
import { foundPanels } from "../../core/project/foundPanels.ts";
import type { Project } from "../../core/project/project.ts";
import type { LengthStyle } from "../../core/units/formatLength.ts";
import { editProjectFile } from "../inOut/editProjectFile.ts";
import { plainProblem } from "../inOut/toldProblem.ts";

/** Where panels go and what the pattern cannot say of them. */
export interface IntoWish {
  readonly file: string;
  /** The first that is no interfacing or webbing when left out. */
  readonly material: string | undefined;
  readonly count: number;
  readonly seamAllowance: number;
}

/** What was added, and how the project shows lengths. */
export interface AddedPanels {
  readonly panels: readonly Panel[];
  readonly lengths: LengthStyle;
}

/**
 * Adds the panels of a pattern to a project file; every other byte of it stays. Returns what was added.
 * Throws `InputProblem` when the file is no project, has no such material, or a panel cannot be.
 */
export function addToProject(pattern: UnderstoodPattern, wish: IntoWish): AddedPanels {
  let added: readonly Panel[] = [];
  let lengths: LengthStyle = "mm";
  editProjectFile(wish.file, (project) => {
    added = foundPanels(project, patternPanels(pattern), { ...wish, materialId: materialOf(project, wish) });
    lengths = project.output.lengths;
    const say = lengthWriter(project.unit);
    const values = added.map((panel) => JSON.parse(JSON.stringify(panelJson(panel, say))) as FileValue);
    if (project.panels.length === 0 && values.length > 0) return [{ path: ["panels"], value: values }];
    return values.map((value, i): FileEdit => ({ path: ["panels", project.panels.length + i], value }));
  });
  return { panels: added, lengths };
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
