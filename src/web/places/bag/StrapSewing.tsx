import { phraseText } from "../../../core/straps/phrase.ts";
import type { StrapWish } from "../../../core/straps/strapWish.ts";
import { useLengths } from "../../fields/units.ts";
import { strapOf } from "../../state/derived.ts";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** What to mind, what to have ready, and how the strap is made, step by step, with its cautions. */
export function StrapSewing({ strap }: { strap: StrapWish }) {
  const words = useTexts().bag.strap;
  const lengths = useLengths();
  const result = strapOf(useProject(), strap.id);
  if (result === null) return null;
  return (
    <>
      {result.warnings.map((warning) => (
        <p class="caution mind" key={warning.code + warning.text}>
          {phraseText(warning, lengths.size)}
        </p>
      ))}
      <details class="more">
        <summary>{words.making}</summary>
        <div class="stack">
          {result.consumables.length > 0 && (
            <>
              <h3>{words.ready}</h3>
              <ul>
                {result.consumables.map((each) => (
                  <li key={each.kind + each.label}>
                    {each.label}: {lengths.cloth(each.mm)}
                  </li>
                ))}
              </ul>
            </>
          )}
          <h3>{words.steps}</h3>
          <ol>
            {result.steps.map((step) => (
              <li key={step.text}>{phraseText(step, lengths.size)}</li>
            ))}
          </ol>
          {result.cautions.map((caution) => (
            <p class="caution" key={caution}>
              {caution}
            </p>
          ))}
        </div>
      </details>
    </>
  );
}
