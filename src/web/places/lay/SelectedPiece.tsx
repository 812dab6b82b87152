import type { StockPlacement } from "../../../core/lay/problem/layProblem.ts";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { useLengths } from "../../fields/units.ts";
import { Icon } from "../../parts/Icon.tsx";
import type { LayState } from "../../state/layBoard.ts";
import { useStore } from "../../state/store.ts";
import { useTexts } from "../../texts/texts.ts";
import { placedBox } from "./moves.ts";
import { isPinned, type PieceHand, placementOf } from "./pieceHand.ts";

/** The piece that is selected: its size, where it lies, and what can be done with it. */
export function SelectedPiece(props: {
  hand: PieceHand;
  lay: LayState;
  nameOf: (placement: StockPlacement) => string;
}) {
  const texts = useTexts();
  const lengths = useLengths();
  const { hand, lay } = props;
  const state = useStore(hand.state, (now) => now);
  const placement = placementOf(state, lay);
  const isHeld = state.held !== null;
  const pinned = isPinned(lay.job.problem, state.selected);
  if (placement === null) return <div role="status" class="only-read" />;
  const { problem } = lay.job;
  const box = placedBox(problem, placement);
  const piece = problem.pieces.find(({ id }) => id === placement.pieceId);
  return (
    <div class="selected-piece sheet">
      <div role="status" aria-live="polite">
        <p>
          <strong>{props.nameOf(placement)}</strong>
        </p>
        <p class="small">
          {texts.lay.liesAt(lengths.size(box.minX), lengths.size(box.minY))}
          {isHeld && ` ${texts.lay.inHand}`}
        </p>
        <Refusal problems={state.held?.troubles ?? []} />
      </div>
      <div class="row">
        {(piece?.orientations.length ?? 0) > 1 && (
          <button type="button" class="press" onClick={hand.turn}>
            <Icon name="turn" /> {texts.lay.turn}
          </button>
        )}
        {isHeld ? (
          <button type="button" class="press" onClick={() => hand.select(state.selected)}>
            {texts.lay.putBack}
          </button>
        ) : (
          <button type="button" class="press" onClick={pinned ? hand.unpin : hand.pin}>
            <Icon name="pin" /> {pinned ? texts.lay.unpin : texts.lay.pin}
          </button>
        )}
      </div>
    </div>
  );
}
