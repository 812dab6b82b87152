/** One remembered state: the whole document, and the words for the change that led to it. */
export interface Step<T> {
  readonly label: string;
  readonly value: T;
  /** Changes with the same key in a row are one step (typing in one field). Null never joins. */
  readonly joinKey: string | null;
}

/**
 * Every state of a document since it was opened, and which one is current. Values are immutable and share
 * structure, so a step costs only what it changed.
 */
export interface History<T> {
  readonly steps: readonly Step<T>[];
  readonly at: number;
}

/** A history with one state and nothing to undo. */
export function startHistory<T>(value: T, label: string): History<T> {
  return { steps: [{ label, value, joinKey: null }], at: 0 };
}

/** The current document. */
export function present<T>(history: History<T>): T {
  return history.steps[history.at]!.value;
}

/**
 * History after a change. Undone steps are dropped; an identical value leaves the history as it is; a change
 * with the `joinKey` of the newest step replaces it.
 */
export function record<T>(history: History<T>, value: T, label: string, joinKey: string | null = null): History<T> {
  const current = history.steps[history.at]!;
  if (current.value === value) return history;
  const kept = history.steps.slice(0, history.at + 1);
  const isNewest = history.at === history.steps.length - 1;
  if (joinKey !== null && isNewest && current.joinKey === joinKey && kept.length > 1) kept.pop();
  kept.push({ label, value, joinKey });
  return { steps: kept, at: kept.length - 1 };
}

/** One step back, or the same history when there is none. */
export function undo<T>(history: History<T>): History<T> {
  return history.at === 0 ? history : { ...history, at: history.at - 1 };
}

/** One step forward, or the same history when there is none. */
export function redo<T>(history: History<T>): History<T> {
  return history.at === history.steps.length - 1 ? history : { ...history, at: history.at + 1 };
}

/** Words of the change that undo would take back, or null. */
export function undoLabel<T>(history: History<T>): string | null {
  return history.at === 0 ? null : history.steps[history.at]!.label;
}

/** Words of the change that redo would bring again, or null. */
export function redoLabel<T>(history: History<T>): string | null {
  return history.steps[history.at + 1]?.label ?? null;
}
