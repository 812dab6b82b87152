import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import { type Cupboard, EMPTY_CUPBOARD } from "../../core/cupboard/cupboard.ts";
import { readCupboard, writeCupboard } from "../../core/cupboard/cupboardFile.ts";
import { failed, type Result } from "../../core/problems/problem.ts";
import { createStore, type Store } from "../state/store.ts";

/** Leftovers of this browser, for all projects and in all its windows. */
export interface CupboardStore {
  /** As it is now, changes of other windows with it. */
  readonly cupboard: Store<Cupboard>;
  /**
   * Changes it whole or not at all: what is stored is read, changed and written in one transaction, so that of two
   * windows at once each sees what the other did. A change that is refused, or that cannot be stored, changes nothing.
   */
  change<T extends { readonly cupboard: Cupboard }>(act: (cupboard: Cupboard) => Result<T>): Promise<Result<T>>;
}

interface Shape extends DBSchema {
  /** The cupboard as the text of its file, so that what an older version kept is read as any old file is. */
  shelf: { key: string; value: string };
}

const KEY = "cupboard";

/** Opens the cupboard of this browser; where nothing is stored it lasts as long as the page. */
export function openCupboardStore(channel: BroadcastChannel): CupboardStore {
  const cupboard = createStore<Cupboard>(EMPTY_CUPBOARD);
  const opened = opening();
  const look = async () => {
    const db = await opened;
    if (db !== null) cupboard.set(stored(await db.get("shelf", KEY)) ?? cupboard.get());
  };
  channel.addEventListener("message", () => void look());
  void look().catch(() => {});
  return {
    cupboard,
    change: async (act) => {
      const db = await opened;
      if (db === null) {
        const done = act(cupboard.get());
        if (done.ok) cupboard.set(done.value.cupboard);
        return done;
      }
      try {
        const done = await changeStored(db, act);
        if (done.ok) {
          cupboard.set(done.value.cupboard);
          channel.postMessage("changed");
        }
        return done;
      } catch {
        return failed({ code: "cupboard-not-stored", path: "" });
      }
    },
  };
}

async function opening(): Promise<IDBPDatabase<Shape> | null> {
  try {
    return await openDB<Shape>("laywright-cupboard", 1, {
      upgrade(fresh) {
        fresh.createObjectStore("shelf");
      },
    });
  } catch {
    return null;
  }
}

async function changeStored<T extends { readonly cupboard: Cupboard }>(
  db: IDBPDatabase<Shape>,
  act: (cupboard: Cupboard) => Result<T>,
): Promise<Result<T>> {
  const transaction = db.transaction("shelf", "readwrite", { durability: "strict" });
  const text = await transaction.store.get(KEY);
  const before = stored(text);
  // What cannot be read is never written over.
  if (text !== undefined && before === null) return failed({ code: "cupboard-not-stored", path: "" });
  const done = act(before ?? EMPTY_CUPBOARD);
  const write = done.ok ? transaction.store.put(writeCupboard(done.value.cupboard), KEY) : Promise.resolve();
  await Promise.all([write, transaction.done]);
  return done;
}

function stored(text: string | undefined): Cupboard | null {
  const read = text === undefined ? null : readCupboard(text);
  return read?.ok ? { pieces: read.value.pieces, steps: read.value.steps } : null;
}
