import { layProblemsOf } from "../../core/job/layProblems.ts";
import type { LayProblem } from "../../core/lay/problem/layProblem.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Problem } from "../../core/problems/problem.ts";
import { type CutList, cutListOf, strapMaterial } from "../../core/project/cutList.ts";
import type { Project } from "../../core/project/project.ts";
import type { StrapResult } from "../../core/straps/build/strapResult.ts";
import type { StrapMaterial } from "../../core/straps/wish/strapWish.ts";
import type { Language } from "../../core/units/language.ts";

/** What a project comes to: its cut list and lay problems, or what stands in their way. */
export interface Derived {
  readonly pieces: readonly CutPiece[];
  readonly lays: readonly LayJob[];
  /** Problems of single parts; the other parts are worked out all the same. */
  readonly troubles: readonly Problem[];
  /** Straps that work out, by id. */
  readonly straps: ReadonlyMap<string, StrapResult>;
  /** Pieces that keep lengthwise because their cloth shrinks differently along and across. */
  readonly heldLengthwise: readonly string[];
}

/** One material's lay problem. */
export interface LayJob {
  readonly material: Material;
  readonly problem: LayProblem;
}

const known: Readonly<Record<Language, WeakMap<Project, Derived>>> = { en: new WeakMap(), de: new WeakMap() };

/** Worked out once for each state of the project; parts are named in `language`. */
export function derivedOf(project: Project, language: Language): Derived {
  let derived = known[language].get(project);
  if (derived === undefined) {
    derived = derive(project, language);
    known[language].set(project, derived);
  }
  return derived;
}

/** The project's materials as the strap builder wants them. */
export function materialsOfStraps(project: Project): readonly StrapMaterial[] {
  return project.materials.map(strapMaterial);
}

const NOTHING: CutList = { pieces: [], straps: [], heldLengthwise: [] };

function derive(project: Project, language: Language): Derived {
  const troubles: Problem[] = [];
  let sound = project;
  let whole = cutListOf(sound, language);
  // A panel that follows one left out has troubles only then.
  while (!whole.ok) {
    troubles.push(...whole.problems);
    const less = withoutTroubled(sound, whole.problems);
    if (less.straps.length + less.panels.length === sound.straps.length + sound.panels.length) break;
    sound = less;
    whole = cutListOf(sound, language);
  }
  const list = whole.ok ? whole.value : NOTHING;
  const byId = new Map(project.materials.map((material) => [material.id, material]));
  return {
    pieces: list.pieces,
    lays: layProblemsOf(sound, list).map((problem) => ({ material: byId.get(problem.materialId)!, problem })),
    troubles,
    straps: new Map(list.straps.map((strap) => [strap.wish.id, strap])),
    heldLengthwise: list.heldLengthwise,
  };
}

/** The project without the parts that have problems of their own: one wrong strap must not hide the others. */
function withoutTroubled(project: Project, troubles: readonly Problem[]): Project {
  const has = (kind: string, i: number) =>
    troubles.some(({ path }) => path === `${kind}[${i}]` || path.startsWith(`${kind}[${i}].`));
  return {
    ...project,
    straps: project.straps.filter((_, i) => !has("straps", i)),
    panels: project.panels.filter((_, i) => !has("panels", i)),
  };
}
