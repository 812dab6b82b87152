import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { useChange, useWorkbench } from "./workbench.ts";

/**
 * Gives the function that lays a material as a plan says, in one step that undo takes back. Every piece gets a pin: the
 * plan is part of the project from then on and no search changes it.
 */
export function useTakePlan(): (materialId: string, plan: LayPlan, label: string) => void {
  const { board } = useWorkbench();
  const change = useChange();
  return (materialId, plan, label) => {
    board.showMoved(materialId, plan);
    const pins = plan.placements.map((placement) => ({ materialId, ...placement }));
    change(
      (project) => ({
        ...project,
        pins: [...project.pins.filter((pin) => pin.materialId !== materialId), ...pins],
      }),
      label,
    );
  };
}
