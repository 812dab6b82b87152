import { createContext } from "preact";
import { useContext } from "preact/hooks";
import type { Project } from "../../core/project/project.ts";
import type { Units } from "../fields/units.ts";
import { present } from "./history.ts";
import type { LayBoard } from "./lays.ts";
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

/** Changes the open project in one undoable step. */
export type ChangeProject = (change: (project: Project) => Project, label: string, joinKey?: string) => void;

/** Gives the function that changes the open project. */
export function useChange(): ChangeProject {
  const { session } = useWorkbench();
  return (change, label, joinKey) => {
    const now = present(session.state.get().history);
    session.change(change(now), label, joinKey ?? null);
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
