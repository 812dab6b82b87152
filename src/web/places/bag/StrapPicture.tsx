import { useMemo } from "preact/hooks";
import { strapSectionArt } from "../../../core/drawing/strap/foldPicture.ts";
import { contourBox } from "../../../core/geometry/contourArcs.ts";
import { rulerOffers } from "../../../core/straps/build/roundToRuler.ts";
import type { StrapResult } from "../../../core/straps/build/strapResult.ts";
import type { StrapWish } from "../../../core/straps/wish/strapWish.ts";
import { useLengths } from "../../fields/units.ts";
import { PiecePicture } from "../../parts/PiecePicture.tsx";
import { SectionPicture } from "../../parts/SectionPicture.tsx";
import { materialsOfStraps, useDerived } from "../../state/derived.ts";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import type { SetStrap } from "./StrapCore.tsx";

/** The strap cut across, above its pieces laid flat, with what was worked out; with `set` it can be changed. */
export function StrapPicture({ strap, set }: { strap: StrapWish; set?: SetStrap }) {
  const texts = useTexts();
  const lengths = useLengths();
  const result = useDerived().straps.find(({ wish }) => wish.id === strap.id);
  if (result === undefined) return <p class="soft">{texts.bag.strap.noPicture}</p>;
  const words = texts.bag.strap;
  return (
    <div class="stack">
      <figure class="stack">
        <SectionPicture art={strapSectionArt(result)} name={words.sectionOf(strap.name)} />
        <figcaption>
          {words.finishedAs(lengths.size(result.finishedWidth), lengths.thickness(result.thickness), result.layers)}
        </figcaption>
      </figure>
      <CutWidth result={result} />
      {set !== undefined && <OnRuler result={result} set={set} />}
      {result.pieces.map((piece) => {
        const box = contourBox(piece.contour);
        const size = lengths.box(box.maxY - box.minY, box.maxX - box.minX);
        return (
          <figure key={piece.id} class="stack flat-strip">
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

/** The trade's round number, the computed one, and the difference. */
function CutWidth({ result }: { result: StrapResult }) {
  const words = useTexts().bag.strap;
  const lengths = useLengths();
  const difference = result.cutWidth - result.nominalWidth;
  if (Math.abs(difference) < 0.05) return <p>{words.cutWidthRound(lengths.size(result.cutWidth))}</p>;
  return (
    <p>
      {words.cutWidth(
        lengths.size(result.cutWidth),
        lengths.size(result.nominalWidth),
        lengths.thickness(Math.abs(difference)),
        difference > 0,
      )}
    </p>
  );
}

/** Cut widths that her ruler has, a press each, and the finished width that comes of it. */
function OnRuler({ result, set }: { result: StrapResult; set: SetStrap }) {
  const words = useTexts().bag.strap;
  const lengths = useLengths();
  const project = useProject();
  const offers = useMemo(
    () => rulerOffers(result, materialsOfStraps(project), lengths.units.system),
    [result, project, lengths.units.system],
  );
  if (offers.length === 0) return null;
  return (
    <p class="ruler-offers">
      {offers.map(({ cutWidth, finishedWidth }) => {
        const said = words.onRuler(lengths.size(cutWidth), lengths.size(finishedWidth));
        return (
          <button
            key={cutWidth}
            type="button"
            class="press"
            onClick={() => set({ width: { kind: "cut", mm: cutWidth }, cutBy: undefined }, said)}
          >
            {said}
          </button>
        );
      })}
    </p>
  );
}
