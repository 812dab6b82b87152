import { useState } from "preact/hooks";
import type { Contour } from "../../../../core/geometry/contour.ts";
import { flattenContour } from "../../../../core/geometry/contourArcs.ts";
import { contourCrossing, turnedRound } from "../../../../core/geometry/contourCrossing.ts";
import { signedArea } from "../../../../core/geometry/ring.ts";
import { type Corrections, carriedOver, type LineNow } from "../../../../core/patterns/correctPattern.ts";
import { type History, present, record, redo, startHistory, undo } from "../../../state/history.ts";
import { useWorkbench } from "../../../state/workbench.ts";

/** Lines put right by hand before a pattern comes in, with steps of their own to go back. */
export interface CorrectingHand {
  readonly corrections: Corrections;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
  correct(key: string, contour: Contour, joinKey: string): void;
  /** The line as it was read. */
  letGo(key: string): void;
  undo(): void;
  redo(): void;
  /** Lines that came out otherwise keep what was put right, in every step. */
  carry(became: ReadonlyMap<string, LineNow>): void;
}

/** The corrections of one pattern. */
export function useCorrections(): CorrectingHand {
  const { refused } = useWorkbench();
  const [history, setHistory] = useState<History<Corrections>>(() => startHistory(new Map(), ""));
  const corrections = present(history);
  return {
    corrections,
    canUndo: history.at > 0,
    canRedo: history.at < history.steps.length - 1,
    correct: (key, contour, joinKey) => {
      const crossing = contourCrossing(contour);
      if (crossing !== null) {
        const { edges, x: xMm, y: yMm } = crossing;
        refused.set([{ code: "outline-crosses-itself", path: "", edges, xMm, yMm }]);
        return;
      }
      const kept = signedArea(flattenContour(contour)) < 0 ? turnedRound(contour) : contour;
      setHistory((now) => record(now, new Map(present(now)).set(key, kept), "", joinKey));
    },
    letGo: (key) =>
      setHistory((now) => {
        const next = new Map(present(now));
        next.delete(key);
        return record(now, next, "");
      }),
    carry: (became) =>
      setHistory((now) => ({
        ...now,
        steps: now.steps.map((step) => ({ ...step, value: carriedOver(step.value, became) })),
      })),
    undo: () => setHistory(undo),
    redo: () => setHistory(redo),
  };
}
