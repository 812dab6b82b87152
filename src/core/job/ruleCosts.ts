import { chooseEngines } from "../lay/engines/chooseEngines.ts";
import type { LayProblem } from "../lay/problem/layProblem.ts";
import { clothUsed } from "../lay/problem/planSums.ts";
import { arrange } from "../lay/search/arrange/arrange.ts";
import { inSteps } from "../lay/search/breath.ts";
import type { Material } from "../materials/material.ts";
import { cutListOf } from "../project/cutList.ts";
import type { Project } from "../project/project.ts";
import { layProblemsOf } from "./layProblems.ts";
import { matchingOf } from "./matching/matching.ts";

/** A rule about the direction of a cloth, which costs cloth: a matched seam, a part with its place, one way for all, a band for each bag. */
type ClothRule =
  | { readonly kind: "match"; readonly index: number }
  | { readonly kind: "centred"; readonly index: number }
  | { readonly kind: "one-way" }
  | { readonly kind: "band" };

/** What a rule costs: how much longer the cloth is than without it, mm; null where either does not lay everything. */
export interface RuleCost {
  readonly rule: ClothRule;
  readonly extraLength: number | null;
}

/** Evaluations for each plan: a second or two, the same with a rule and without it. */
const EFFORT = 120_000;
/** Matched seams and parts with their place that are looked at for one cloth. */
const MOST_MATCHES = 8;

/** The rules that hold pieces of a material to its pattern, to one way or to a band for each bag. */
function rulesOf(project: Project, materialId: string): readonly ClothRule[] {
  const material = project.materials.find(({ id }) => id === materialId);
  const list = cutListOf({ ...project, pins: [] });
  if (material === undefined || !list.ok) return [];
  const pieces = list.value.pieces.filter((piece) => piece.materialId === materialId);
  const matching = matchingOf(project, material, pieces);
  const held = [...(matching?.held.keys() ?? [])];
  const isHeld = (part: string): boolean => held.some(({ partId }) => partId === part);
  const matches = (project.matches ?? []).flatMap(({ first, second }, index): ClothRule[] =>
    isHeld(first.panel) && isHeld(second.panel) ? [{ kind: "match", index }] : [],
  );
  const centred = (project.centred ?? []).flatMap(({ part }, index): ClothRule[] =>
    isHeld(part) ? [{ kind: "centred", index }] : [],
  );
  // A band that cannot be kept costs nothing, which is no news: why it is not kept is said elsewhere.
  const problem = layProblemsOf(project, list.value).find((one) => one.materialId === materialId);
  return [
    ...[...matches, ...centred].slice(0, MOST_MATCHES),
    ...(material.oneWay === false || pieces.length === 0 ? [] : [{ kind: "one-way" } as const]),
    ...(problem?.shade === undefined ? [] : [{ kind: "band" } as const]),
  ];
}

/** The project without one of its rules. */
function withoutRule(project: Project, materialId: string, rule: ClothRule): Project {
  switch (rule.kind) {
    case "match":
      return { ...project, matches: project.matches?.filter((_, i) => i !== rule.index) };
    case "centred":
      return { ...project, centred: project.centred?.filter((_, i) => i !== rule.index) };
    case "one-way":
      return withMaterial(project, materialId, { oneWay: false });
    case "band":
      return withMaterial(project, materialId, { shadeBand: undefined });
  }
}

function withMaterial(project: Project, materialId: string, part: Partial<Material>): Project {
  return {
    ...project,
    materials: project.materials.map((one) => (one.id === materialId ? { ...one, ...part } : one)),
  };
}

/** What each rule of a cloth costs, each by a search with it and one without it of the same effort. Pauses yield nothing. */
export function* ruleCosts(project: Project, materialId: string): Generator<void, readonly RuleCost[], undefined> {
  const rules = rulesOf(project, materialId);
  if (rules.length === 0) return [];
  const withAll = yield* lengthFor({ ...project, pins: [] }, materialId);
  const costs: RuleCost[] = [];
  for (const rule of rules) {
    yield;
    const without = yield* lengthFor(withoutRule({ ...project, pins: [] }, materialId, rule), materialId);
    const extraLength = withAll === null || without === null ? null : withAll - without;
    costs.push({ rule, extraLength });
  }
  return costs;
}

/** Cloth that a plan found at a quick look takes, mm; null when it leaves a piece out. */
function* lengthFor(project: Project, materialId: string): Generator<void, number | null, undefined> {
  const list = cutListOf(project);
  const problem = list.ok
    ? layProblemsOf(project, list.value).find((one) => one.materialId === materialId)
    : undefined;
  return problem === undefined ? null : yield* lengthOf(problem);
}

function* lengthOf(problem: LayProblem): Generator<void, number | null, undefined> {
  const plan = yield* inSteps(arrange(problem, (job) => chooseEngines(job, "free"), { evaluations: EFFORT }, 1));
  return plan.unplaced.length > 0 ? null : clothUsed(problem, plan);
}
