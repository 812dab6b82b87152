import { useLayoutEffect, useState } from "preact/hooks";

/** A value that says when it changes. */
export interface Store<T> {
  get(): T;
  set(next: T): void;
  update(change: (current: T) => T): void;
  subscribe(listener: () => void): () => void;
}

/** A store that starts with `value`; listeners run at once, in the order they came. */
export function createStore<T>(value: T): Store<T> {
  let current = value;
  const listeners = new Set<() => void>();
  const set = (next: T) => {
    if (Object.is(next, current)) return;
    current = next;
    for (const listener of [...listeners]) listener();
  };
  return {
    get: () => current,
    set,
    update: (change) => set(change(current)),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}

/** What `pick` reads from the store, drawn anew whenever that changes. */
export function useStore<T, P>(store: Store<T>, pick: (value: T) => P): P {
  const [, redraw] = useState(0);
  const picked = pick(store.get());
  useLayoutEffect(() => {
    let last = picked;
    const look = () => {
      const now = pick(store.get());
      if (Object.is(now, last)) return;
      last = now;
      redraw((n) => n + 1);
    };
    look();
    return store.subscribe(look);
  });
  return picked;
}
