import { useMemo } from "preact/hooks";
import { purchaseOf } from "../../../core/buying/purchase.ts";
import { shoppingList } from "../../../core/job/shopping/shoppingList.ts";
import { paperOf } from "../../../core/project/papers.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { SHOPPING_TEXTS } from "../../../core/words/words.ts";
import {
  type ShoppingSheet,
  shoppingCsv,
  shoppingSheet,
  shoppingText,
} from "../../../export/cutsheet/shoppingSheet.ts";
import { askExport } from "../../exports/askExport.ts";
import type { MadeFiles } from "../../exports/protocol.ts";
import { derivedOf } from "../../state/derived.ts";
import { useStore } from "../../state/store.ts";
import { useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { SaveMade } from "./SaveFiles.tsx";
import type { StackInput } from "./tableParts.ts";

/** What to buy for the project: cloth by shop, hardware, thread, what goes into the bags; to read, print and save. */
export function ShoppingStack(input: StackInput) {
  const texts = useTexts();
  const words = texts.shop.list;
  const language = useLanguage();
  const { board } = useWorkbench();
  const isWhole = useStore(board.lays, (lays) => [...lays.values()].every(({ plan }) => plan !== null));
  const { project, lays } = input;
  const list = useMemo(() => {
    const cloths = lays.map(({ material, plan }) => ({ material, purchase: purchaseOf(material, plan, project) }));
    const { straps } = derivedOf(project, language);
    return shoppingSheet(
      shoppingList([{ project, straps, cloths }]),
      [project.name],
      project.output.lengths,
      language,
    );
  }, [project, lays, language]);
  if (!isWhole) return <p class="soft">{words.waiting}</p>;
  const file = (name: string, data: string | Uint8Array, missingGlyphs: readonly string[] = []): MadeFiles => ({
    files: [{ name, data, about: "" }],
    missingGlyphs,
  });
  const pdf = async () => {
    const paper = paperOf(project.output.paper);
    const { bytes, missingGlyphs } = await askExport({ kind: "shopping", list, paper });
    return file("shopping-list.pdf", bytes, missingGlyphs);
  };
  return (
    <section class="stack shopping-list" aria-label={texts.table.stackNames.shopping}>
      <div class="sheet row not-on-paper">
        <SaveMade main input={input} label={words.savePdf} make={pdf} />
        <SaveMade
          input={input}
          label={words.saveText}
          make={async () => file("shopping-list.txt", shoppingText(list))}
        />
        <SaveMade
          input={input}
          label={words.saveCsv}
          make={async () => file("shopping-list.csv", shoppingCsv(list))}
        />
      </div>
      <div class="sheet stack">
        <h2>{list.title}</h2>
        <p class="soft not-on-paper">{words.about}</p>
        <Groups list={list} />
      </div>
    </section>
  );
}

function Groups({ list: { groups, totals, language } }: { list: ShoppingSheet }) {
  const words = useTexts().shop.list;
  if (groups.length === 0) return <p>{SHOPPING_TEXTS[language].nothing}</p>;
  return (
    <>
      <table class="costs">
        <thead>
          <tr>
            <th scope="col">{words.what}</th>
            <th scope="col">{words.amount}</th>
            <th scope="col">{words.cost}</th>
          </tr>
        </thead>
        {groups.map(({ heading, rows }) => (
          <tbody key={heading}>
            <tr class="group">
              <th scope="rowgroup" colSpan={3}>
                {heading}
              </th>
            </tr>
            {rows.map(([what, amount, money]) => (
              <tr key={what}>
                <th scope="row">{unbroken(what)}</th>
                <td class="number">{unbroken(amount)}</td>
                <td class="number">
                  {money === "" ? <span class="soft small">{words.noPrice}</span> : unbroken(money)}
                </td>
              </tr>
            ))}
          </tbody>
        ))}
      </table>
      {totals.map((total) => (
        <p key={total}>
          <strong>{unbroken(total)}</strong>
        </p>
      ))}
    </>
  );
}
