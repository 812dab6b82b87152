import type { Project } from "../../core/project/project.ts";
import type { FoundPlan, NamedPlan, PlanStore } from "../storage/planStore.ts";
import { present } from "./history.ts";
import type { LayBoard } from "./layBoard.ts";
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
      if (named.get().some((each) => each.signature === signature && samePlaces(each.plan, plan))) return;
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
      if (own && state?.finding === "held" && state.plan !== null && samePlaces(own.plan, state.plan))
        board.resume(own.materialId);
      named.update((all) => all.filter((each) => each.id !== id));
      void store.letGo(projectId(), id);
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
      const kept = await store.load(id);
      if (projectId() !== id) return;
      board.recall(kept.found);
      named.set(kept.named);
    },
  };
}

function samePlaces(a: NamedPlan["plan"], b: NamedPlan["plan"]): boolean {
  return JSON.stringify(a.placements) === JSON.stringify(b.placements);
}
