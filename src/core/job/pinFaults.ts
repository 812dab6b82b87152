import { checkPlan } from "../lay/check/checkPlan.ts";
import type { LayProblem } from "../lay/problem/layProblem.ts";
import type { LayFinding } from "../problems/layProblems.ts";
import type { Project } from "../project/project.ts";

/**
 * What is wrong with the pins of a project by themselves, `path` in its file: pieces pinned over one another, over an
 * edge or a flaw, or at a turn that is not allowed. No search can mend that, and no plan with such pins passes.
 */
export function pinFaults(project: Project, problem: LayProblem): LayFinding[] {
  const { materialId, pinned } = problem;
  if (pinned.length === 0) return [];
  const pinsAlone = { materialId, placements: pinned, unplaced: [], uses: [], evaluations: 0, seed: 0 };
  return checkPlan(problem, pinsAlone).flatMap((finding) => {
    const at = /^placements\[(\d+)\]$/u.exec(finding.path);
    if (at === null) return [];
    const { pieceId, copy, x, y } = pinned[Number(at[1])]!;
    const index = project.pins.findIndex(
      (pin) =>
        pin.materialId === materialId && pin.pieceId === pieceId && pin.copy === copy && pin.x === x && pin.y === y,
    );
    return index < 0 ? [] : [{ ...finding, path: `pins[${index}]` }];
  });
}
