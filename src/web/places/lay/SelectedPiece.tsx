import type { StockPlacement } from "../../../core/lay/types.ts";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { useLengths } from "../../fields/units.ts";
import { Icon } from "../../parts/Icon.tsx";
import type { LayState } from "../../state/lays.ts";
import { useTexts } from "../../texts/texts.ts";
import { placedBox } from "./moves.ts";
import type { PieceHand } from "./usePieceHand.ts";

/** The piece that is selected: its size, where it lies, and what can be done with it. */
export function SelectedPiece(props: {
  hand: PieceHand;
  lay: LayState;
  nameOf: (placement: StockPlacement) => string;
}) {
  const texts = useTexts();
  const lengths = useLengths();
  const { hand, lay } = props;
  const { placement } = hand;
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
          {hand.isHeld && ` ${texts.lay.inHand}`}
        </p>
        <Refusal problems={hand.troubles} />
      </div>
      <div class="row">
        {(piece?.orientations.length ?? 0) > 1 && (
          <button type="button" class="press" onClick={hand.turn}>
            <Icon name="turn" /> {texts.lay.turn}
          </button>
        )}
        {hand.isHeld ? (
          <button type="button" class="press" onClick={() => hand.select(hand.selected)}>
            {texts.lay.putBack}
          </button>
        ) : (
          <button type="button" class="press" onClick={hand.isPinned ? hand.unpin : hand.pin}>
            <Icon name="pin" /> {hand.isPinned ? texts.lay.unpin : texts.lay.pin}
          </button>
        )}
      </div>
    </div>
  );
}
