import { useEffect, useState } from "preact/hooks";

/** What is known of a question: still working, the answer, or our own fault. */
export type Answer<T> =
  | { readonly state: "working" | "failed"; readonly value: T | null }
  | { readonly state: "ready"; readonly value: T };

/**
 * The answer to a question, asked again whenever `key` changes and nothing has changed for `patience` ms; the old
 * answer stays until the new one is there, also while nothing is asked because `ask` is null.
 */
export function useAsked<T>(ask: (() => Promise<T>) | null, key: unknown, patience: number): Answer<T> {
  const [answer, setAnswer] = useState<Answer<T>>({ state: "working", value: null });
  useEffect(() => {
    if (ask === null) {
      setAnswer((old) => ({ state: "working", value: old.value }));
      return;
    }
    let isOld = false;
    setAnswer((old) => ({ state: "working", value: old.value }));
    const timer = setTimeout(() => {
      ask().then(
        (value) => isOld || setAnswer({ state: "ready", value }),
        (error: unknown) => {
          console.error(error);
          if (!isOld) setAnswer((old) => ({ state: "failed", value: old.value }));
        },
      );
    }, patience);
    return () => {
      isOld = true;
      clearTimeout(timer);
    };
  }, [key]);
  return answer;
}
