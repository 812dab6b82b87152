import { contourBox } from "../../../core/geometry/contourArcs.ts";
import type { StrapWish } from "../../../core/straps/strapWish.ts";
import { useLengths } from "../../fields/units.ts";
import { PiecePicture } from "../../parts/PiecePicture.tsx";
import { piecesOf } from "../../state/derived.ts";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import type { SetStrap } from "./strapWords.ts";

/** The strap's fold section over its flat pieces. */
export function StrapPicture({ strap }: { strap: StrapWish; set: SetStrap }) {
  const texts = useTexts();
  const lengths = useLengths();
  const pieces = piecesOf(useProject()).filter(({ partId }) => partId === strap.id);
  return (
    <div class="stack">
      {pieces.map((piece) => {
        const box = contourBox(piece.contour);
        const size = lengths.box(box.maxY - box.minY, box.maxX - box.minX);
        return (
          <figure key={piece.id} class="stack">
            <PiecePicture piece={piece} name={texts.bag.pictureOf(piece.name, size)} />
            <figcaption>
              {piece.name}: {texts.bag.cutSize(size)}
            </figcaption>
          </figure>
        );
      })}
    </div>
  );
}
