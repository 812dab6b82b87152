import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";

/** A plan that a search found, with what the search spent on it. `signature` names the lay problem. */
export interface FoundPlan {
  readonly signature: string;
  readonly materialId: string;
  readonly plan: LayPlan;
  /** Placements tried, in all, and until the plan was found. */
  readonly evaluations: number;
  readonly betterAt: number;
  /** Pages or files were saved from it: it stays until she lets it go. */
  readonly isHeld: boolean;
  /** Whether the search had looked long enough; plans kept by earlier versions do not tell. */
  readonly isRested?: boolean;
}

/** A plan that she kept by name, and the project as it was then, as file text. */
export interface NamedPlan {
  readonly id: string;
  readonly materialId: string;
  readonly name: string;
  readonly signature: string;
  readonly plan: LayPlan;
  /** Cloth off rolls, mm. */
  readonly length: number;
  readonly projectText: string;
  /** Milliseconds since 1970. */
  readonly savedAt: number;
}

/** The plans of one project. */
export interface PlansOfProject {
  readonly found: readonly FoundPlan[];
  /** Newest first. */
  readonly named: readonly NamedPlan[];
}

interface Shape extends DBSchema {
  found: { key: [string, string]; value: FoundPlan & { readonly savedAt: number } };
  named: { key: [string, string]; value: NamedPlan };
}

/** Found plans a project remembers; the oldest are forgotten, but none that is held. */
const MOST_FOUND = 60;

/** Plans beside the projects of this browser. Methods throw nothing: without storage, plans last as long as the page. */
export interface PlanStore {
  load(projectId: string): Promise<PlansOfProject>;
  keepFound(projectId: string, found: FoundPlan): Promise<void>;
  keepNamed(projectId: string, named: NamedPlan): Promise<void>;
  letGo(projectId: string, id: string): Promise<void>;
  removeProject(projectId: string): Promise<void>;
}

/** Opens the store; one that the browser refuses remembers nothing. */
export async function openPlanStore(): Promise<PlanStore> {
  const db = await opened();
  const attempt = async <T>(act: (db: IDBPDatabase<Shape>) => Promise<T>, otherwise: T): Promise<T> => {
    try {
      return db === null ? otherwise : await act(db);
    } catch {
      return otherwise;
    }
  };
  return {
    load: (projectId) => attempt((open) => load(open, projectId), { found: [], named: [] }),
    keepFound: (projectId, found) => attempt((open) => keepFound(open, projectId, found), undefined),
    keepNamed: (projectId, named) =>
      attempt(async (open) => void (await open.put("named", named, [projectId, named.id])), undefined),
    letGo: (projectId, id) => attempt((open) => open.delete("named", [projectId, id]), undefined),
    removeProject: (projectId) =>
      attempt(async (open) => {
        await open.delete("found", allOf(projectId));
        await open.delete("named", allOf(projectId));
      }, undefined),
  };
}

/** The database, or null where the browser refuses it: at once, or later. */
async function opened(): Promise<IDBPDatabase<Shape> | null> {
  try {
    return await openDB<Shape>("laywright-plans", 1, {
      upgrade(fresh) {
        fresh.createObjectStore("found");
        fresh.createObjectStore("named");
      },
    });
  } catch {
    return null;
  }
}

const allOf = (projectId: string) => IDBKeyRange.bound([projectId, ""], [projectId, "\uffff"]);

async function load(db: IDBPDatabase<Shape>, projectId: string): Promise<PlansOfProject> {
  const [found, named] = await Promise.all([
    db.getAll("found", allOf(projectId)),
    db.getAll("named", allOf(projectId)),
  ]);
  return { found, named: named.sort((a, b) => b.savedAt - a.savedAt) };
}

async function keepFound(db: IDBPDatabase<Shape>, projectId: string, found: FoundPlan): Promise<void> {
  const transaction = db.transaction("found", "readwrite");
  await transaction.store.put({ ...found, savedAt: Date.now() }, [projectId, found.signature]);
  const all = await transaction.store.getAll(allOf(projectId));
  const old = all
    .filter(({ isHeld }) => !isHeld)
    .sort((a, b) => b.savedAt - a.savedAt)
    .slice(MOST_FOUND);
  for (const { signature } of old) await transaction.store.delete([projectId, signature]);
  await transaction.done;
}
