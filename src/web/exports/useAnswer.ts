import { useEffect, useState } from "preact/hooks";
import { askExport } from "./askExport.ts";
import type { Answers, Ask } from "./protocol.ts";

/** What is known of a question: still working, the answer, or our own fault. */
export type Answer<T> =
  | { readonly state: "working" | "failed"; readonly value: T | null }
  | { readonly state: "ready"; readonly value: T };

/** After the plan or a setting changes, the question waits this long for the next change, ms. */
const PATIENCE = 250;

/**
 * The export worker's answer to a question, asked again whenever `key` changes; the old answer stays until the
 * new one is there. Nothing is asked while `ask` is null.
 */
export function useAnswer<A extends Ask>(ask: A | null, key: unknown): Answer<Answers[A["kind"]]> {
  const [answer, setAnswer] = useState<Answer<Answers[A["kind"]]>>({ state: "working", value: null });
  useEffect(() => {
    if (ask === null) {
      setAnswer({ state: "working", value: null });
      return;
    }
    let isOld = false;
    setAnswer((old) => ({ state: "working", value: old.value }));
    const timer = setTimeout(() => {
      askExport(ask).then(
        (value) => isOld || setAnswer({ state: "ready", value }),
        (error: unknown) => {
          console.error(error);
          if (!isOld) setAnswer((old) => ({ state: "failed", value: old.value }));
        },
      );
    }, PATIENCE);
    return () => {
      isOld = true;
      clearTimeout(timer);
    };
  }, [key]);
  return answer;
}
