import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Problem } from "../../core/problems/problem.ts";
import { edited } from "../../core/project/edits.ts";
import type { Project } from "../../core/project/project.ts";
import type { Units } from "../fields/units.ts";
import type { CupboardStore } from "../storage/cupboardStore.ts";
import type { MaterialLibrary } from "../storage/materialLibrary.ts";
import type { SwatchPhotos } from "../storage/swatchPhotos.ts";
import { present } from "./history.ts";
import type { KeptPlans } from "./keptPlans.ts";
import type { LayBoard } from "./layBoard.ts";
import type { Route } from "./route.ts";
import type { Session } from "./session.ts";
import type { Settings } from "./settings.ts";
import { type Store, useStore } from "./store.ts";

/** Everything the page works with. */
export interface Workbench {
  readonly session: Session<Project>;
  readonly settings: Store<Settings>;
  readonly route: Store<Route>;
  readonly board: LayBoard;
  readonly plans: KeptPlans;
  readonly library: MaterialLibrary;
  readonly cupboard: CupboardStore;
  readonly swatches: SwatchPhotos;
  /** Why the last change was refused, until a field has told it beside itself or the person has read it. */
  readonly refused: Store<readonly Problem[]>;
}

/** The one workbench of the page. */
export const WorkbenchContext = createContext<Workbench | null>(null);

/** The workbench; only inside the page. */
export function useWorkbench(): Workbench {
  const bench = useContext(WorkbenchContext);
  if (bench === null) throw new TypeError("useWorkbench: used outside the page");
  return bench;
}

/** The open project. */
export function useProject(): Project {
  return useStore(useWorkbench().session.state, (state) => present(state.history));
}

/** Changes the open project in one undoable step; a change that could not be kept is refused and told. */
export type ChangeProject = (change: (project: Project) => Project, label: string, joinKey?: string) => void;

/** Gives the function that changes the open project. */
export function useChange(): ChangeProject {
  const { session, refused } = useWorkbench();
  return (change, label, joinKey) => {
    const next = edited(present(session.state.get().history), change);
    refused.set(next.ok ? NONE : next.problems);
    if (next.ok) session.change(next.value, label, joinKey ?? null);
  };
}

const NONE: readonly Problem[] = [];

/** For a field that has just changed something: takes the reason why it was refused, to tell it beside itself. */
export function useRefusal(): () => readonly Problem[] {
  const { refused } = useWorkbench();
  return () => {
    const problems = refused.get();
    refused.set(NONE);
    return problems;
  };
}

/** Units that a project is shown in. */
export function unitsOf(project: Project): Units {
  const { unit, output } = project;
  const isInches = output.lengths === "in/16" || output.lengths === "in/32" || output.lengths === "yd/8";
  return {
    system: isInches ? "inches" : "metric",
    unit,
    style: output.lengths,
    clothStyle: isInches ? "yd/8" : "m",
  };
}

/** The project shown and typed in other units; no stored length changes. */
export function withUnits(project: Project, lengths: Project["output"]["lengths"]): Project {
  const unit = lengths.startsWith("in") ? "in" : lengths === "cm" ? "cm" : "mm";
  return { ...project, unit, output: { ...project.output, lengths } };
}
