import { useTexts } from "../../texts/texts.ts";
import { Icon } from "../Icon.tsx";
import { type DeskZoom, ZOOM_STEP } from "./deskZoom.ts";

/** The desk closer, further away and whole, for a hand without wheel and keys. */
export function ZoomButtons({ zoom }: { zoom: DeskZoom }) {
  const words = useTexts().lay;
  return (
    <div class="row desk-zoom">
      <button type="button" class="press" aria-label={words.zoomIn} onClick={() => zoom.by(ZOOM_STEP)}>
        <Icon name="plus" />
      </button>
      <button
        type="button"
        class="press"
        aria-label={words.zoomOut}
        disabled={!zoom.isCloser}
        onClick={() => zoom.by(1 / ZOOM_STEP)}
      >
        <Icon name="minus" />
      </button>
      <button type="button" class="press" aria-label={words.zoomAll} disabled={!zoom.isCloser} onClick={zoom.whole}>
        <Icon name="whole" />
      </button>
    </div>
  );
}
