import { useState } from "preact/hooks";
import type { CupboardPiece } from "../../../core/cupboard/cupboard.ts";
import { piecesFor, shadesOf } from "../../../core/cupboard/offered.ts";
import type { Material } from "../../../core/materials/material.ts";
import { TextBlank } from "../../fields/blanks.tsx";
import { useStore } from "../../state/store.ts";
import { useCupboard } from "../../state/useCupboard.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { CupboardPieces } from "./CupboardPieces.tsx";
import { Outcome } from "./CupboardShelf.tsx";
import { PrintLabels } from "./PrintLabels.tsx";

/** What lies in the cupboard of a cloth, to be used up first, and what its plan leaves, to be kept. */
export function CupboardOffers({ material }: { material: Material }) {
  const words = useTexts().cupboard;
  const hand = useCupboard();
  const { board } = useWorkbench();
  const lay = useStore(board.lays, (lays) => lays.get(material.id) ?? null);
  const [wish, setWish] = useState({ shade: "", source: "" });
  const [kept, setKept] = useState<readonly CupboardPiece[]>([]);
  const pieces = piecesFor(hand.cupboard, material, null);
  const isCut = lay?.plan !== null && lay?.plan !== undefined && lay.plan.placements.length > 0;
  const wasKept = hand.problems.some(({ code }) => code === "plan-kept-already");
  const keep = (again: boolean) => {
    if (lay === null) return;
    hand.keep(lay, { ...wish, again }, (now) => {
      setKept(now);
      return words.kept(now.length, now.map(({ code }) => code).join(", "));
    });
  };
  const [refused, setRefused] = useState<readonly string[]>([]);
  const take = (codes: readonly string[], isMore = false) => {
    setRefused(codes);
    hand.take(material, codes, isMore, (taken) => words.took(taken.map(({ code }) => code).join(", ")));
  };
  const shades = shadesOf(pieces);
  const isOthers = hand.problems.some(({ code }) => code === "project-has-pieces-out");
  return (
    <section class="stack" data-part="cupboard-offers" aria-label={words.leftHeading}>
      {pieces.length > 0 && (
        <>
          <h3>{words.offers(pieces.length)}</h3>
          <CupboardPieces pieces={pieces}>
            {({ code }) => (
              <button type="button" class="press" onClick={() => take([code])}>
                {words.use(code)}
              </button>
            )}
          </CupboardPieces>
          {pieces.length > 1 && (
            <div class="row">
              {shades.length < 2 && (
                <button type="button" class="press" onClick={() => take(pieces.map(({ code }) => code))}>
                  {words.useAll}
                </button>
              )}
              {shades.length > 1 &&
                shades.map((shade) => (
                  <button
                    key={shade}
                    type="button"
                    class="press"
                    onClick={() => take(piecesFor(hand.cupboard, material, shade).map(({ code }) => code))}
                  >
                    {words.useShade(shade)}
                  </button>
                ))}
            </div>
          )}
          {isOthers && (
            <div class="row">
              <button type="button" class="press" onClick={() => take(refused, true)}>
                {words.takeMore}
              </button>
            </div>
          )}
        </>
      )}
      {isCut && (
        <details class="more">
          <summary>{words.leftHeading}</summary>
          <p>{words.leftAbout}</p>
          <div class="row">
            <TextBlank
              labelled
              label={words.shade}
              path={`cupboard.${material.id}.shade`}
              value={wish.shade}
              onValue={(shade) => setWish((now) => ({ ...now, shade }))}
            />
            <TextBlank
              labelled
              label={words.source}
              path={`cupboard.${material.id}.source`}
              value={wish.source}
              onValue={(source) => setWish((now) => ({ ...now, source }))}
            />
            <button type="button" class="press main" onClick={() => keep(false)}>
              {words.keep}
            </button>
            {wasKept && (
              <button type="button" class="press" onClick={() => keep(true)}>
                {words.keepAgain}
              </button>
            )}
          </div>
        </details>
      )}
      <Outcome hand={hand} />
      {kept.length > 0 && hand.told !== null && <PrintLabels pieces={kept} />}
    </section>
  );
}
