import { stockName } from "../../../core/drawing/lay/stockName.ts";
import type { Project } from "../../../core/project/project.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { SHOPPING_TEXTS } from "../../../core/words/words.ts";
import { type NameStock, openedWords, otherWayWords } from "../../../export/cutsheet/openedWords.ts";
import { useLengths } from "../../fields/units.ts";
import type { LayState } from "../../state/layBoard.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/** Of a cloth with several stocks to buy: what is cut into, what that costs, and what the other ways would cost. */
export function OpenedStock({ lay: { job, plan, choice }, project }: { lay: LayState; project: Project }) {
  const language = useLanguage();
  const lengths = useLengths();
  const words = useTexts().shop.opened;
  const { material } = job;
  if (plan === null) return null;
  // A stock of several equal ones is called what the first is called, without its number among them.
  const name: NameStock = (stock) =>
    stockName([{ ...stock, ...(stock.kind === "roll" ? {} : { count: 1 }) }], stock.id, lengths.size, language);
  const others = choice?.others ?? [];
  return (
    <>
      <p class="opened">
        <strong>{unbroken(openedWords(project, material, plan, name, language).join(" "))}</strong>
        {choice === null && <span class="soft"> {words.looking}</span>}
      </p>
      {others.length > 0 && (
        <details>
          <summary>{words.others(others.length)}</summary>
          <p class="soft small">{SHOPPING_TEXTS[language].open.others}</p>
          <ul>
            {others.map((way) => (
              <li key={way.opened.join()}>{unbroken(otherWayWords(project, material, way, name, language))}</li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
