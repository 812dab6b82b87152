import { type DBSchema, type IDBPDatabase, openDB } from "idb";

/** One stored state of a project, as project file text. */
export interface StoredStep {
  readonly label: string;
  readonly text: string;
  readonly joinKey: string | null;
}

/** A project on this device. `first` … `last` are the numbers of its stored steps, `at` the current one. */
export interface StoredProject {
  readonly id: string;
  readonly name: string;
  /** Goes up by one with every save; a save that expects another one is refused. */
  readonly revision: number;
  readonly first: number;
  readonly last: number;
  readonly at: number;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
}

/** A project with all its stored steps. */
export interface LoadedProject {
  readonly project: StoredProject;
  readonly steps: readonly StoredStep[];
}

/** What to write: steps from number `from` on replace what was stored there and after. */
export interface Save {
  readonly id: string;
  readonly name: string;
  /** Null for a project that is new to the device. */
  readonly expectedRevision: number | null;
  readonly from: number;
  readonly steps: readonly StoredStep[];
  readonly at: number;
  readonly savedAt: number;
}

/** `elsewhere`: another window saved it since. `full`: no room. `refused`: the browser keeps nothing here. */
export type SaveOutcome =
  | { readonly ok: true; readonly project: StoredProject }
  | { readonly ok: false; readonly reason: "elsewhere" | "full" | "refused" };

interface Shape extends DBSchema {
  projects: { key: string; value: StoredProject };
  steps: { key: [string, number]; value: StoredStep };
}

/** How many undo steps a project keeps. */
export const STEPS_KEPT = 300;

/** The projects kept in this browser. Methods throw nothing: a refusal is a value. */
export interface ProjectStore {
  list(): Promise<readonly StoredProject[]>;
  load(id: string): Promise<LoadedProject | null>;
  save(save: Save): Promise<SaveOutcome>;
  remove(id: string): Promise<void>;
}

/** Opens the store, or null where the browser refuses one (private window, blocked site data). */
export async function openProjectStore(): Promise<ProjectStore | null> {
  try {
    const db = await openDB<Shape>("laywright", 1, {
      upgrade(fresh) {
        fresh.createObjectStore("projects", { keyPath: "id" });
        fresh.createObjectStore("steps");
      },
    });
    return {
      list: async () => (await db.getAll("projects")).sort((a, b) => b.savedAt - a.savedAt),
      load: (id) => load(db, id),
      save: (save) => write(db, save).catch((error: unknown) => ({ ok: false, reason: reasonOf(error) })),
      remove: (id) => remove(db, id),
    };
  } catch {
    return null;
  }
}

const stepsOf = (id: string, from = 0) => IDBKeyRange.bound([id, from], [id, Number.MAX_SAFE_INTEGER]);

async function load(db: IDBPDatabase<Shape>, id: string): Promise<LoadedProject | null> {
  const transaction = db.transaction(["projects", "steps"]);
  const project = await transaction.objectStore("projects").get(id);
  if (project === undefined) return null;
  const steps = await transaction.objectStore("steps").getAll(stepsOf(id, project.first));
  return { project, steps };
}

async function write(db: IDBPDatabase<Shape>, save: Save): Promise<SaveOutcome> {
  const transaction = db.transaction(["projects", "steps"], "readwrite", { durability: "strict" });
  const projects = transaction.objectStore("projects");
  const steps = transaction.objectStore("steps");
  const known = await projects.get(save.id);
  if ((known?.revision ?? null) !== save.expectedRevision) return { ok: false, reason: "elsewhere" };
  const last = save.from + save.steps.length - 1;
  const first = Math.max(known?.first ?? save.from, save.at - STEPS_KEPT);
  const project: StoredProject = {
    id: save.id,
    name: save.name,
    revision: (known?.revision ?? 0) + 1,
    first,
    last,
    at: save.at,
    savedAt: save.savedAt,
  };
  const writes: Promise<unknown>[] = [projects.put(project)];
  if (known !== undefined && last < known.last) writes.push(steps.delete(stepsOf(save.id, last + 1)));
  if (known !== undefined && first > known.first)
    writes.push(steps.delete(IDBKeyRange.bound([save.id, 0], [save.id, first], false, true)));
  save.steps.forEach((step, i) => {
    if (save.from + i >= first) writes.push(steps.put(step, [save.id, save.from + i]));
  });
  await Promise.all([...writes, transaction.done]);
  return { ok: true, project };
}

async function remove(db: IDBPDatabase<Shape>, id: string): Promise<void> {
  const transaction = db.transaction(["projects", "steps"], "readwrite");
  await Promise.all([
    transaction.objectStore("projects").delete(id),
    transaction.objectStore("steps").delete(stepsOf(id)),
    transaction.done,
  ]);
}

function reasonOf(error: unknown): "full" | "refused" {
  const name = error instanceof DOMException || error instanceof Error ? error.name : "";
  return name === "QuotaExceededError" ? "full" : "refused";
}
