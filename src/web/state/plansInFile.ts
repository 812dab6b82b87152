import { jobOf } from "../../core/job/projectJob.ts";
import { type LayPlan, UNPLACED_REASONS } from "../../core/lay/problem/layProblem.ts";
import type { KeptPlan } from "../../core/project/keptPlan.ts";
import type { Project } from "../../core/project/project.ts";
import type { NamedPlan } from "../storage/planStore.ts";
import { laySignature } from "./chosenStock.ts";
import { projectCodec } from "./projectCodec.ts";

/** Plans of a project by name, as they go into its file; `isHeld` says which of them are laid and stay. */
export function plansForFile(
  project: Project,
  named: readonly NamedPlan[],
  isHeld: (plan: NamedPlan) => boolean,
): readonly KeptPlan[] {
  const own = projectCodec.write(project);
  return named.map((each): KeptPlan => {
    const { plan, projectText } = each;
    return {
      ...{ name: each.name, materialId: each.materialId, savedAt: new Date(each.savedAt).toISOString() },
      ...{ held: isHeld(each), length: each.length },
      ...{ placements: plan.placements, uses: plan.uses, unplaced: plan.unplaced },
      ...(projectText === own ? {} : { project: projectText }),
    };
  });
}

/** A plan out of a file, and whether it was the one that is laid. */
export interface BroughtPlan {
  readonly named: NamedPlan;
  readonly isHeld: boolean;
}

/**
 * The plans of a file as the page keeps them. One whose project of then cannot be read, or has no such cloth, is left
 * out: nobody could go back to it. `project` is without its plans.
 */
export function plansFromFile(
  project: Project,
  kept: readonly KeptPlan[],
  newId: () => string,
): readonly BroughtPlan[] {
  const ownText = projectCodec.write(project);
  const signatures = new Map<string, ReadonlyMap<string, string>>();
  const signaturesOf = (text: string): ReadonlyMap<string, string> => {
    const known = signatures.get(text);
    if (known !== undefined) return known;
    const read = text === ownText ? { ok: true as const, value: project } : projectCodec.read(text);
    const lays = read.ok ? jobOf(read.value, "en").lays : [];
    const found = new Map(read.ok ? lays.map((lay) => [lay.material.id, laySignature(read.value, lay)]) : []);
    signatures.set(text, found);
    return found;
  };
  return kept.flatMap(({ name, materialId, savedAt, held, length, project: earlier, ...rest }): BroughtPlan[] => {
    const projectText = earlier ?? ownText;
    const signature = signaturesOf(projectText).get(materialId);
    if (signature === undefined) return [];
    const unplaced = rest.unplaced.map((left) => ({
      ...left,
      reason: UNPLACED_REASONS.find((reason) => reason === left.reason) ?? "stock-used-up",
    }));
    const plan: LayPlan = { materialId, ...rest, unplaced, evaluations: 0, seed: 0 };
    const time = Date.parse(savedAt);
    const named = { id: newId(), materialId, name, signature, plan, length, projectText };
    return [{ named: { ...named, savedAt: Number.isFinite(time) ? time : 0 }, isHeld: held }];
  });
}
