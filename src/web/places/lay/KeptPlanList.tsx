import { clothUsed } from "../../../core/lay/problem/planSums.ts";
import { TextBlank } from "../../fields/blanks.tsx";
import { useLengths } from "../../fields/units.ts";
import { Icon } from "../../parts/Icon.tsx";
import type { LayState } from "../../state/layBoard.ts";
import { useStore } from "../../state/store.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/** Plans of this cloth that she kept or printed from, each one tap away. */
export function KeptPlanList({ lay }: { lay: LayState }) {
  const texts = useTexts();
  const words = texts.lay.kept;
  const language = useLanguage();
  const lengths = useLengths();
  const { plans } = useWorkbench();
  const { material, problem } = lay.job;
  const own = useStore(plans.named, (all) => all).filter(({ materialId }) => materialId === material.id);
  const { plan } = lay;
  if (plan?.placements.length === 0) return null;
  const keep = () =>
    plan !== null && plans.keep(material.id, words.liked(own.length + 1), clothUsed(problem, plan));
  return (
    <section class="sheet stack not-on-paper" data-part="kept" aria-label={words.heading}>
      <div class="row">
        <h2>{words.heading}</h2>
        <button type="button" class="press" disabled={plan === null} onClick={keep}>
          <Icon name="pin" /> {words.keep}
        </button>
      </div>
      {own.length === 0 ? (
        <p class="soft">{words.none}</p>
      ) : (
        <ul class="kept-plans">
          {own.map((each) => (
            <li key={each.id} class="row">
              <TextBlank
                label={words.name}
                path={`plans.${each.id}`}
                value={each.name}
                onValue={(name) => plans.rename(each.id, name)}
              />
              {each.length > 0 && <strong>{lengths.taken(each.length)}</strong>}
              <span class="soft small">
                {new Date(each.savedAt).toLocaleString(language, { dateStyle: "medium", timeStyle: "short" })}
              </span>
              <button
                type="button"
                class="press"
                onClick={() => plans.goBackTo(each.id, words.wentBack(each.name))}
              >
                {words.goBack}
              </button>
              <button
                type="button"
                class="press plain"
                aria-label={words.letGo(each.name)}
                title={words.letGo(each.name)}
                onClick={() => plans.letGo(each.id)}
              >
                <Icon name="bin" />
              </button>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
