import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import type { Project } from "../../core/project/project.ts";
import type { FoundPlan, NamedPlan, PlanStore } from "../storage/planStore.ts";
import { present } from "./history.ts";
import type { LayBoard } from "./layBoard.ts";
import { type BroughtPlan, plansForFile } from "./plansInFile.ts";
import { projectCodec } from "./projectCodec.ts";
import type { Session } from "./session.ts";
import { createStore, type Store } from "./store.ts";

/** Plans that she keeps by name: those that she printed or saved from, and those that she likes. */
export interface KeptPlans {
  /** Of the open project, newest first. */
  readonly named: Store<readonly NamedPlan[]>;
  /** Keeps the plan that is laid now and holds it; one that is kept already is not kept twice. */
  keep(materialId: string, name: string, length: number): void;
  rename(id: string, name: string): void;
  letGo(id: string): void;
  /** The project with its plans, as its file has them. */
  withPlans(project: Project): Project;
  /** Plans out of a file, for the project that is opened next. */
  bring(brought: readonly BroughtPlan[]): void;
  /** Lays a kept plan again; where the project has changed since, it goes back too, as one step that undo takes back. */
  goBackTo(id: string, label: string): void;
}

/** Delay of a write, so that a search that finds many plans in a row writes the last one, ms. */
const REST = 400;

/** The kept plans of whatever project the session has open; found plans are kept beside them by themselves. */
export function createKeptPlans(
  session: Session<Project>,
  newBoard: (keep: (found: FoundPlan) => void) => LayBoard,
  store: PlanStore,
): { readonly plans: KeptPlans; readonly board: LayBoard; turnTo(projectId: string): Promise<void> } {
  const named = createStore<readonly NamedPlan[]>([]);
  let waitingToCome: readonly BroughtPlan[] = [];
  const waiting = new Map<string, ReturnType<typeof setTimeout>>();
  const projectId = () => session.state.get().id;
  const board = newBoard((found) => {
    const id = projectId();
    clearTimeout(waiting.get(found.signature));
    const write = () => {
      waiting.delete(found.signature);
      void store.keepFound(id, found);
    };
    waiting.set(found.signature, setTimeout(write, REST));
  });
  const put = (plan: NamedPlan) => {
    named.update((all) =>
      all.some(({ id }) => id === plan.id)
        ? all.map((each) => (each.id === plan.id ? plan : each))
        : [plan, ...all],
    );
    void store.keepNamed(projectId(), plan);
  };
  const plans: KeptPlans = {
    named,
    keep: (materialId, name, length) => {
      const state = board.lays.get().get(materialId);
      if (state === undefined || state.plan === null) return;
      const { signature, plan } = state;
      board.hold(materialId);
      if (named.get().some((each) => each.signature === signature && samePlaces(each, state))) return;
      const projectText = projectCodec.write(present(session.state.get().history));
      put({ id: crypto.randomUUID(), materialId, name, signature, plan, length, projectText, savedAt: Date.now() });
    },
    rename: (id, name) => {
      const own = named.get().find((each) => each.id === id);
      if (own !== undefined) put({ ...own, name });
    },
    letGo: (id) => {
      const own = named.get().find((each) => each.id === id);
      const state = own && board.lays.get().get(own.materialId);
      if (own && state?.finding === "held" && samePlaces(own, state)) board.resume(own.materialId);
      named.update((all) => all.filter((each) => each.id !== id));
      void store.letGo(projectId(), id);
    },
    withPlans: (project) => {
      const all = named.get();
      if (all.length === 0) return project;
      const isHeld = ({ materialId, signature, plan }: NamedPlan) => {
        const state = board.lays.get().get(materialId);
        return state?.finding === "held" && state.signature === signature && samePlaces({ plan }, state);
      };
      return { ...project, plans: plansForFile(project, all, isHeld) };
    },
    bring: (brought) => {
      waitingToCome = brought;
    },
    goBackTo: (id, label) => {
      const own = named.get().find((each) => each.id === id);
      if (own === undefined) return;
      if (board.lays.get().get(own.materialId)?.signature !== own.signature) {
        const read = projectCodec.read(own.projectText);
        if (read.ok) session.change(read.value, label);
      }
      board.goBackTo(own.materialId, own.plan);
    },
  };
  return {
    plans,
    board,
    turnTo: async (id) => {
      named.set([]);
      const brought = waitingToCome;
      waitingToCome = [];
      for (const { named: plan, isHeld } of brought) {
        await store.keepNamed(id, plan);
        const { signature, materialId } = plan;
        const found = { signature, materialId, plan: plan.plan, evaluations: 1, betterAt: 1, isHeld: true };
        if (isHeld) await store.keepFound(id, found);
      }
      const kept = await store.load(id);
      if (projectId() !== id) return;
      board.recall(kept.found);
      named.set(kept.named.length > 0 ? kept.named : brought.map((each) => each.named));
    },
  };
}

type Planned = { readonly plan: LayPlan | null };

function samePlaces(a: Planned, b: Planned): boolean {
  return JSON.stringify(placesOf(a)) === JSON.stringify(placesOf(b));
}

/** Places in one order of fields, however they came here. */
function placesOf({ plan }: Planned): unknown {
  return plan?.placements.map(({ stockId, pieceId, copy, x, y, turnDeg, mirrored }) => [
    ...[stockId, pieceId, copy],
    ...[x, y, turnDeg, mirrored],
  ]);
}
