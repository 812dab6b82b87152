import { useEffect, useRef } from "preact/hooks";
import { useStore } from "../../state/store.ts";
import { useChange, useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { restWeighing } from "../../weigh/useWeighed.ts";
import { keyOf, withPlacement } from "./moves.ts";
import { createPieceHand, type HandTable, type PieceHand } from "./pieceHand.ts";

/** The hand over the plan that is shown; what it puts down is kept in the project. */
export function usePieceHand(table: Omit<HandTable, "putDown" | "unpin">): PieceHand {
  const { board } = useWorkbench();
  const change = useChange();
  const texts = useTexts();
  const now: HandTable = {
    ...table,
    putDown: (placement) => {
      const { job, plan } = table.lay();
      const materialId = job.material.id;
      if (plan === null) return;
      board.showMoved(materialId, withPlacement(plan, placement));
      const pin = { materialId, ...placement };
      change(
        (project) => ({
          ...project,
          pins: [
            ...project.pins.filter((other) => other.materialId !== materialId || keyOf(other) !== keyOf(placement)),
            pin,
          ],
        }),
        texts.lay.moved,
      );
    },
    unpin: (key) => {
      const materialId = table.lay().job.material.id;
      change(
        (project) => ({
          ...project,
          pins: project.pins.filter((pin) => pin.materialId !== materialId || keyOf(pin) !== key),
        }),
        texts.lay.unpinned,
      );
    },
  };
  const latest = useRef(now);
  latest.current = now;
  const hand = useRef<PieceHand | null>(null);
  hand.current ??= createPieceHand({
    lay: () => latest.current.lay(),
    stocks: () => latest.current.stocks(),
    canvas: () => latest.current.canvas(),
    frame: () => latest.current.frame(),
    putDown: (placement) => latest.current.putDown(placement),
    unpin: (key) => latest.current.unpin(key),
  });
  const isHeld = useStore(hand.current.state, ({ held }) => held !== null);
  // The plan under a piece in hand stays as it is, and the processor is the hand's.
  useEffect(() => {
    if (!isHeld) return;
    board.hush(true);
    restWeighing(true);
    return () => {
      board.hush(false);
      restWeighing(false);
    };
  }, [isHeld, board]);
  return hand.current;
}
