/** The last change of a window, written before anything else is done with it. */
export interface JournalEntry {
  readonly id: string;
  /** Revision of the stored project that the change was made on; null for one that is not stored yet. */
  readonly revision: number | null;
  readonly label: string;
  readonly joinKey: string | null;
  readonly text: string;
}

/**
 * Where a change is written at once, within the keystroke that made it: a save takes the device some milliseconds, and
 * a window that is killed in them would lose it. Methods throw nothing.
 */
export interface Journal {
  write(entry: JournalEntry): void;
  /** The change is stored: nothing is left to bring back. */
  clear(id: string): void;
  /** A change of this project that was never stored, or null. */
  read(id: string): JournalEntry | null;
  /** The project that a new one became whose first change was never stored, or null. */
  newest(): JournalEntry | null;
}

const PLACE = "laywright-journal/";

/** The journal of this browser; without storage there is none. */
export const browserJournal: Journal = {
  write: (entry) => attempt(() => localStorage.setItem(PLACE + entry.id, JSON.stringify(entry))),
  clear: (id) => attempt(() => localStorage.removeItem(PLACE + id)),
  read: (id) => attempt(() => entryOf(localStorage.getItem(PLACE + id))) ?? null,
  newest: () =>
    attempt(() => {
      const keys = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i) ?? "");
      const own = keys.filter((key) => key.startsWith(PLACE)).map((key) => entryOf(localStorage.getItem(key)));
      return own.find((entry) => entry?.revision === null) ?? null;
    }) ?? null,
};

function attempt<T>(act: () => T): T | undefined {
  try {
    return act();
  } catch {
    // No storage, or no room: the save that follows tells it.
    return undefined;
  }
}

function entryOf(text: string | null): JournalEntry | null {
  const value: unknown = JSON.parse(text ?? "null");
  if (typeof value !== "object" || value === null) return null;
  const { id, revision, label, joinKey, text: file } = value as Record<string, unknown>;
  const isWhole =
    typeof id === "string" &&
    (revision === null || typeof revision === "number") &&
    typeof label === "string" &&
    (joinKey === null || typeof joinKey === "string") &&
    typeof file === "string";
  return isWhole ? { id, revision, label, joinKey, text: file } : null;
}
