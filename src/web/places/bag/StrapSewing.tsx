import { useMemo } from "preact/hooks";
import { threadingPicture } from "../../../core/drawing/strap/threadingPicture.ts";
import { cautionText } from "../../../core/materials/caution.ts";
import type { StrapWish } from "../../../core/straps/wish/strapWish.ts";
import { phraseText } from "../../../core/words/phrase.ts";
import { hardwareText } from "../../../core/words/strapWords.ts";
import { CAUTION_TABLES, STRAP_WORDS } from "../../../core/words/words.ts";
import { useLengths } from "../../fields/units.ts";
import { DrawingPicture } from "../../parts/DrawingPicture.tsx";
import { useDerived } from "../../state/derived.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/** Room of the threading picture as drawn, mm. */
const THREADING_ROOM = 180;

/** What to mind, what to have ready, and how the strap is made, step by step, with its cautions. */
export function StrapSewing({ strap }: { strap: StrapWish }) {
  const words = useTexts().bag.strap;
  const language = useLanguage();
  const core = STRAP_WORDS[language];
  const lengths = useLengths();
  const result = useDerived().straps.find(({ wish }) => wish.id === strap.id);
  const threading = useMemo(() => {
    if (result === undefined) return null;
    const drawn = lengths.units.system === "inches" ? result : { ...result, inches: null };
    return threadingPicture(drawn, core, THREADING_ROOM);
  }, [result, core, lengths.units.system]);
  if (result === undefined) return null;
  return (
    <>
      {result.warnings.map((warning) => (
        <p class="caution mind" key={warning.code}>
          {phraseText(warning, lengths.size, core)}
        </p>
      ))}
      <details class="more">
        <summary>{words.making}</summary>
        <div class="stack">
          {(result.consumables.length > 0 || result.hardware.length > 0 || result.sewnWith !== null) && (
            <>
              <h3>{words.ready}</h3>
              <ul>
                {result.sewnWith !== null && (
                  <li>{core.sewnWith(result.sewnWith.needle, result.sewnWith.thread)}</li>
                )}
                {result.hardware.map((each) => (
                  <li key={`${each.kind} ${each.innerWidth} ${each.opening}`}>
                    {hardwareText(each, core, lengths.size)}
                  </li>
                ))}
                {result.consumables.map((each) => (
                  <li key={each.code}>
                    {core.consumables[each.code]}: {lengths.cloth(Math.ceil(each.mm / 10) * 10)}
                  </li>
                ))}
              </ul>
            </>
          )}
          <h3>{words.steps}</h3>
          <ol class="work-steps">
            {result.steps.map((step) => (
              <li key={step.parts.join()}>{phraseText(step, lengths.size, core)}</li>
            ))}
          </ol>
          {threading !== null && (
            <DrawingPicture drawing={threading} name={core.picture.threading.title} class="threading" />
          )}
          {result.cautions.map((caution) => (
            <p class="caution" key={caution.code}>
              {cautionText(caution, CAUTION_TABLES[language])}
            </p>
          ))}
        </div>
      </details>
    </>
  );
}
