import type { LayProblem } from "../lay/problem/layProblem.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import type { Material } from "../materials/material.ts";
import type { Problem, Result } from "../problems/problem.ts";
import { type CutList, cutListOf } from "../project/cutList.ts";
import { readProject } from "../project/file/readProject.ts";
import type { Project } from "../project/project.ts";
import type { StrapResult } from "../straps/build/strapResult.ts";
import type { Language } from "../units/language.ts";
import { layProblemsOf, singleProblemsOf } from "./layProblems.ts";
import { matchTroubles } from "./matching/matchTroubles.ts";
import { pinFaults } from "./pinFaults.ts";

/** One material and what is to be laid on it. */
export interface LayJob {
  readonly material: Material;
  readonly problem: LayProblem;
  /** The same with the cloth as one layer, for mats and paper patterns; not there unless the cloth is spread. */
  readonly singly?: LayProblem | undefined;
}

/** What a project comes to: its pieces and lay problems, or what stands in their way. */
export interface ProjectJob {
  readonly project: Project;
  /** Every piece to cut for all bags. */
  readonly pieces: readonly CutPiece[];
  /** Straps that work out, of one bag, in the project's order. */
  readonly straps: readonly StrapResult[];
  /** One for each material that pieces are cut from, in the project's order. */
  readonly lays: readonly LayJob[];
  /** Pieces that keep lengthwise because their cloth shrinks differently along and across. */
  readonly heldLengthwise: readonly string[];
  /** Problems of single parts; the other parts are worked out all the same. */
  readonly troubles: readonly Problem[];
}

const NOTHING: CutList = { pieces: [], straps: [], heldLengthwise: [] };

/** Works a project out as far as the pieces to lay; parts of straps are named in `language`. Cost: O(points). */
export function jobOf(project: Project, language: Language = "en"): ProjectJob {
  const whole = cutListOf(project, language);
  const troubles = whole.ok ? [] : whole.problems;
  const sound = whole.ok ? project : withoutTroubled(project, troubles);
  const again = whole.ok ? whole : cutListOf(sound, language);
  const list = again.ok ? again.value : NOTHING;
  return { project, ...list, lays: laysOf(sound, list), troubles: [...troubles, ...matchTroubles(sound, list)] };
}

/** What is to be laid on each material of a project, out of its cut list or another of the same materials. */
export function laysOf(project: Project, list: CutList): LayJob[] {
  const byId = new Map(project.materials.map((material) => [material.id, material]));
  return layProblemsOf(project, list).map((problem): LayJob => {
    const material = byId.get(problem.materialId)!;
    if (problem.spread === undefined) return { material, problem };
    const singly = singleProblemsOf(project, list).find(({ materialId }) => materialId === material.id);
    return { material, problem, singly };
  });
}

/** The project without the parts that have problems of their own: one wrong strap must not hide the others. */
function withoutTroubled(project: Project, troubles: readonly Problem[]): Project {
  const has = (kind: string, i: number) =>
    troubles.some(({ path }) => path === `${kind}[${i}]` || path.startsWith(`${kind}[${i}].`));
  const panels = project.panels.filter((_, i) => !has("panels", i));
  const isThere = (id: string): boolean => panels.some((panel) => panel.id === id);
  return {
    ...project,
    straps: project.straps.filter((_, i) => !has("straps", i)),
    panels,
    ...(project.seams && {
      seams: project.seams.filter(
        ({ first, second }, i) => !has("seams", i) && [...first, ...second].every(({ panel }) => isThere(panel)),
      ),
    }),
    ...(project.matches && {
      matches: project.matches.filter(
        ({ first, second }, i) => !has("matches", i) && isThere(first.panel) && isThere(second.panel),
      ),
    }),
  };
}

/**
 * A project worked out from the text of its file as far as the pieces to lay, or everything that is wrong with it.
 * Never throws, whatever the text; parts of straps are named in `language`.
 */
export function readJob(text: string, language: Language = "en"): Result<ProjectJob> {
  const project = readProject(text);
  if (!project.ok) return project;
  const job = jobOf(project.value, language);
  const problems: readonly Problem[] =
    job.troubles.length > 0 ? job.troubles : job.lays.flatMap(({ problem }) => pinFaults(project.value, problem));
  return problems.length > 0 ? { ok: false, problems } : { ok: true, value: job };
}
