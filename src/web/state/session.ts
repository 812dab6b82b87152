import type { Problem, Result } from "../../core/problems/problem.ts";
import type { Journal } from "../storage/journal.ts";
import {
  type LoadedProject,
  type ProjectStore,
  STEPS_KEPT,
  type StoredProject,
  type StoredStep,
} from "../storage/projectStore.ts";
import { type History, present, record, redo, type Step, startHistory, undo } from "./history.ts";
import { createStore, type Store } from "./store.ts";

/** How a document becomes file text and back. */
export interface Codec<T> {
  write(value: T): string;
  read(text: string): Result<T>;
  nameOf(value: T): string;
  /** The same document under another name. */
  renamed(value: T, name: string): T;
}

/** What a window is working on, and how safely it is kept. */
export interface SessionState<T> {
  readonly id: string;
  readonly history: History<T>;
  /** `kept`: everything is on the device. `saving`: a write is under way. Else why nothing is kept any more. */
  readonly keeping: "kept" | "saving" | "full" | "refused";
  /** Something that happened to the project by itself and that the person should hear of. */
  readonly notice: "taken-over" | "split-off" | null;
  readonly projects: readonly StoredProject[];
}

/** The work of one window: every change is recorded, kept on the device at once, and told to other windows. */
export interface Session<T> {
  readonly state: Store<SessionState<T>>;
  /** Makes `value` the current document. */
  change(value: T, label: string, joinKey?: string | null): void;
  undo(): void;
  redo(): void;
  /** Turns to another kept project. Problems when it cannot be read. */
  open(id: string): Promise<readonly Problem[]>;
  /** Starts a project of its own beside the others. */
  start(value: T, label: string): void;
  remove(id: string): Promise<void>;
  dismissNotice(): void;
  /** Tries to keep again after a refusal. */
  retry(): void;
  /** Resolves when every change so far is kept or refused. */
  settled(): Promise<void>;
}

/** What the session needs from its surroundings. */
export interface Surroundings {
  readonly store: ProjectStore | null;
  readonly journal: Journal;
  readonly channel: Pick<BroadcastChannel, "postMessage"> & { onmessage: ((event: MessageEvent) => void) | null };
  newId(): string;
  now(): number;
}

/** What one window tells the others. */
interface Told {
  readonly id: string;
  readonly revision: number;
}

interface Kept<T> {
  readonly revision: number | null;
  readonly steps: readonly Step<T>[];
  /** Number of the first step in the store. */
  readonly first: number;
  readonly at: number;
}

const NOTHING_KEPT = { revision: null, steps: [], first: 0, at: -1 } as const;

/**
 * A session that begins with a new document `value`.
 *
 * Two windows on one project: a window without changes of its own follows the other one (its last state stays in
 * the undo list); when both changed at once, the later window goes on in a project of its own, and nothing is lost.
 */
export function createSession<T>(value: T, label: string, codec: Codec<T>, around: Surroundings): Session<T> {
  const state = createStore<SessionState<T>>({
    id: around.newId(),
    history: startHistory(value, label),
    keeping: around.store === null ? "refused" : "kept",
    notice: null,
    projects: [],
  });
  let kept: Kept<T> = NOTHING_KEPT;
  let queue: Promise<void> = Promise.resolve();
  const patch = (part: Partial<SessionState<T>>) => state.update((now) => ({ ...now, ...part }));

  const takeIn = ({ project, steps }: LoadedProject): readonly Problem[] => {
    const stored = project.at - project.first;
    // A state that cannot be read any more must not cost those before it.
    let at = stored;
    while (at > 0 && !codec.read(steps[at]?.text ?? "").ok) at--;
    const current = codec.read(steps[at]?.text ?? "");
    if (!current.ok) return current.problems;
    const read = steps.map((step, i) =>
      i === at
        ? { label: step.label, joinKey: step.joinKey, value: current.value }
        : lazyStep(step, codec, current.value),
    );
    kept = { revision: project.revision, steps: read, first: project.first, at: stored };
    patch({ id: project.id, history: { steps: read, at }, keeping: "kept" });
    bringBack(project.id);
    return [];
  };
  /** A change that was made in the last moments of a window and never stored is made again. */
  const bringBack = (id: string) => {
    const lost = around.journal.read(id);
    if (lost === null || lost.revision !== kept.revision) return;
    const read = codec.read(lost.text);
    if (read.ok) move(record(state.get().history, read.value, lost.label, lost.joinKey));
  };
  const listAgain = async () => {
    if (around.store !== null) patch({ projects: await around.store.list() });
  };

  const keepOnce = async (): Promise<void> => {
    const { id, history } = state.get();
    const from = firstDifference(history.steps, kept.steps);
    if (
      around.store === null ||
      (from === history.steps.length && from === kept.steps.length && history.at === kept.at)
    ) {
      if (state.get().keeping === "saving") patch({ keeping: "kept" });
      return;
    }
    patch({ keeping: "saving" });
    const before = kept;
    const fresh = history.steps.slice(from).map((step) => writeStep(step, codec));
    const outcome = await around.store.save({
      id,
      name: codec.nameOf(present(history)),
      expectedRevision: kept.revision,
      from: kept.first + from,
      steps: fresh,
      at: kept.first + history.at,
      savedAt: around.now(),
    });
    if (state.get().id !== id || kept !== before) return;
    if (outcome.ok) {
      kept = { ...kept, revision: outcome.project.revision, steps: history.steps, at: history.at };
      // A change that was made meanwhile waits for its own save: nobody is told that it is kept.
      const isNewest = state.get().history === history;
      if (isNewest) patch({ keeping: "kept" });
      if (isNewest) around.journal.clear(id);
      around.channel.postMessage({ id, revision: outcome.project.revision } satisfies Told);
      await listAgain();
    } else if (outcome.reason === "elsewhere") {
      await splitOff();
      await keepOnce();
    } else patch({ keeping: outcome.reason });
  };
  /** The history without steps that are stored and so far back that the device forgets them too. */
  const withoutOldest = (history: History<T>): History<T> => {
    const over = Math.min(history.steps.length - STEPS_KEPT, history.at, kept.at);
    if (over <= 0 || firstDifference(history.steps, kept.steps) < over) return history;
    kept = { ...kept, steps: kept.steps.slice(over), first: kept.first + over, at: kept.at - over };
    return { steps: history.steps.slice(over), at: history.at - over };
  };
  const splitOff = async () => {
    around.journal.clear(state.get().id);
    kept = NOTHING_KEPT;
    const { history } = state.get();
    const step = history.steps[history.at]!;
    // Two projects of one name could not be told apart in the list.
    const renamed = { ...step, value: await freshlyNamed(step.value) };
    patch({
      id: around.newId(),
      history: { ...history, steps: history.steps.with(history.at, renamed) },
      notice: "split-off",
    });
  };
  const freshlyNamed = async (fresh: T): Promise<T> => {
    const taken = ((await around.store?.list()) ?? []).map(({ name }) => name);
    const name = codec.nameOf(fresh);
    return taken.includes(name) ? codec.renamed(fresh, freshName(name, taken)) : fresh;
  };
  const inTurn = (act: () => Promise<void>) => {
    queue = queue.then(act).catch(() => patch({ keeping: "refused" }));
  };
  const keep = () => inTurn(keepOnce);
  const move = (next: History<T>) => {
    if (next === state.get().history) return;
    const history = withoutOldest(next);
    patch({ history });
    const { label, joinKey, value: now } = history.steps[history.at]!;
    around.journal.write({
      id: state.get().id,
      revision: kept.revision,
      label,
      joinKey,
      text: codec.write(now),
    });
    keep();
  };

  around.channel.onmessage = (event: MessageEvent<Told>) => {
    inTurn(async () => {
      const { id, history } = state.get();
      await listAgain();
      const isMine = event.data.id === id && event.data.revision > (kept.revision ?? 0);
      if (!isMine || around.store === null) return;
      // A change of mine that came in between is not lost: its save is refused and it goes on by itself.
      if (firstDifference(history.steps, kept.steps) < history.steps.length) return;
      const loaded = await around.store.load(id);
      if (loaded !== null && state.get().history === history && takeIn(loaded).length === 0)
        patch({ notice: "taken-over" });
    });
  };

  return {
    state,
    change: (next, words, joinKey = null) => move(record(state.get().history, next, words, joinKey)),
    undo: () => move(undo(state.get().history)),
    redo: () => move(redo(state.get().history)),
    open: async (id) => {
      await queue;
      const loaded = (await around.store?.load(id)) ?? null;
      await listAgain();
      return loaded === null ? [] : takeIn(loaded);
    },
    start: (fresh, words) => {
      inTurn(async () => {
        const named = await freshlyNamed(fresh);
        kept = NOTHING_KEPT;
        patch({ id: around.newId(), history: startHistory(named, words) });
      });
      keep();
    },
    remove: async (id) => {
      await around.store?.remove(id);
      await listAgain();
    },
    dismissNotice: () => patch({ notice: null }),
    retry: keep,
    settled: () => queue,
  };
}

/** Index of the first step that is not the very same object in both lists. */
function firstDifference<T>(steps: readonly Step<T>[], others: readonly Step<T>[]): number {
  let i = 0;
  while (i < steps.length && steps[i] === others[i]) i++;
  return i;
}

function writeStep<T>(step: Step<T>, codec: Codec<T>): StoredStep {
  return { label: step.label, joinKey: step.joinKey, text: codec.write(step.value) };
}

/** A stored step that is read only when somebody goes back to it. */
function lazyStep<T>(stored: StoredStep, codec: Codec<T>, otherwise: T): Step<T> {
  let value: T | undefined;
  return {
    label: stored.label,
    joinKey: stored.joinKey,
    get value() {
      if (value === undefined) {
        const read = codec.read(stored.text);
        value = read.ok ? read.value : otherwise;
      }
      return value;
    },
  };
}

/** The name, with a number when something is called so already. */
export function freshName(name: string, taken: readonly string[]): string {
  if (!taken.includes(name)) return name;
  let n = 2;
  while (taken.includes(`${name} ${n}`)) n++;
  return `${name} ${n}`;
}
