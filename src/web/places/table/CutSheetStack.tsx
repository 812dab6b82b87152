import type { StrapResult } from "../../../core/straps/build/strapResult.ts";
import { formatLength } from "../../../core/units/formatLength.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import type { SheetTexts } from "../../../core/words/sheetTexts.ts";
import { SHEET_TEXTS } from "../../../core/words/words.ts";
import {
  type Amount,
  type CutGroup,
  type CutRow,
  type CutSheet,
  sheetInches,
} from "../../../export/cutsheet/cutSheet.ts";
import { useAnswer } from "../../exports/askExport.ts";
import { DrawingPicture } from "../../parts/DrawingPicture.tsx";
import { derivedOf } from "../../state/derived.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { StrapPicture } from "../bag/StrapPicture.tsx";
import { SaveFiles } from "./SaveFiles.tsx";
import type { StackInput } from "./tableParts.ts";

/** The cut sheet as it is saved: pieces, lays, what to buy, order of work, pictures and cautions. */
export function CutSheetStack(input: StackInput) {
  const texts = useTexts();
  const words = texts.table.sheet;
  const language = useLanguage();
  const { project, pieces, lays } = input;
  const straps = derivedOf(project, language).straps;
  const key = JSON.stringify([project, language, lays.map(({ plan }) => [plan.uses, plan.seed, plan.evaluations])]);
  const answer = useAnswer({ kind: "sheet", project, pieces, straps, lays, language }, key);
  return (
    <section
      class="stack cut-sheet"
      aria-label={texts.table.stackNames.sheet}
      aria-busy={answer.state === "working"}
    >
      <div class="sheet row not-on-paper">
        <SaveFiles main input={input} label={words.savePdf} outputs={["cut-sheet"]} />
        <SaveFiles input={input} label={words.saveCsv} outputs={["cut-list"]} />
        <SaveFiles input={input} label={words.saveLabels} outputs={["labels"]} />
      </div>
      {answer.state === "failed" && <p class="caution">{texts.table.failed}</p>}
      {answer.value === null && answer.state === "working" && <p class="soft">{texts.table.working}</p>}
      {answer.value !== null && <WholeSheet sheet={answer.value} straps={straps} />}
    </section>
  );
}

function WholeSheet({ sheet, straps }: { sheet: CutSheet; straps: readonly StrapResult[] }) {
  const texts = SHEET_TEXTS[sheet.language];
  const { groups, purchase, consumables, work, pictures, cautions } = sheet;
  return (
    <>
      <p>{texts.forBags(sheet.bags)}</p>
      {groups.map((group) => (
        <Group key={group.material} group={group} texts={texts} inInches={sheet.inInches} />
      ))}
      {purchase.length + consumables.length > 0 && (
        <div class="sheet side-by-side">
          <Amounts title={texts.toBuy} list={purchase} />
          <Amounts title={texts.alsoNeeded} list={consumables} />
        </div>
      )}
      {cautions.length > 0 && (
        <section class="sheet stack" aria-labelledby="sheet-cautions">
          <h2 id="sheet-cautions">{texts.takeCare}</h2>
          <ul class="cautions">
            {cautions.map((caution) => (
              <li key={caution}>{unbroken(caution)}</li>
            ))}
          </ul>
        </section>
      )}
      {work
        .filter(({ steps }) => steps.length > 0)
        .map(({ title, lead, steps }, i) => (
          <section key={`${i} ${title}`} class="sheet stack" aria-label={title}>
            <h2>{title}</h2>
            {lead.map((line) => (
              <p key={line}>{unbroken(line)}</p>
            ))}
            <ol class="work-steps">
              {steps.map((step) => (
                <li key={step}>{unbroken(step)}</li>
              ))}
            </ol>
          </section>
        ))}
      {pictures.length > 0 && (
        <section class="sheet stack" aria-labelledby="sheet-pictures">
          <h2 id="sheet-pictures">{texts.pictures}</h2>
          <ul class="sheet-pictures on-wide">
            {pictures.map(({ title, drawing }) => (
              <li key={title}>
                <figure>
                  <DrawingPicture drawing={drawing} name={title} pad={2} />
                  <figcaption class="small">{unbroken(title)}</figcaption>
                </figure>
              </li>
            ))}
          </ul>
          {/* A drawing made for paper has letters too small for a phone. */}
          <div class="stack on-narrow">
            {straps.map(({ wish }) => (
              <section key={wish.id} class="stack" aria-label={wish.name}>
                <h3>{wish.name}</h3>
                <StrapPicture strap={wish} />
              </section>
            ))}
          </div>
        </section>
      )}
    </>
  );
}

function Group({ group, texts, inInches }: { group: CutGroup; texts: SheetTexts; inInches: boolean }) {
  const { columns } = texts;
  return (
    <section class="sheet stack" aria-label={group.material}>
      <h2>{group.material}</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keys */}
      <div class="wide-table" tabIndex={0} role="group" aria-label={useTexts().table.sheet.tableOf(group.material)}>
        <table>
          <thead>
            <tr>
              <th scope="col">{columns.number}</th>
              <th scope="col">{columns.piece}</th>
              <th scope="col">{columns.cut}</th>
              <th scope="col">{columns.size}</th>
              {inInches && <th scope="col">{unbroken(columns.inches)}</th>}
              <th scope="col">{columns.grain}</th>
            </tr>
          </thead>
          <tbody>
            {group.rows.map((row) => (
              <Row key={row.number} row={row} texts={texts} inInches={inInches} />
            ))}
          </tbody>
        </table>
      </div>
      {group.lay.length > 0 && (
        <ul class="lay-words">
          {group.lay.map((line) => (
            <li key={line}>{unbroken(line)}</li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Row({ row, texts, inInches }: { row: CutRow; texts: SheetTexts; inInches: boolean }) {
  const language = useLanguage();
  const size = (write: (mm: number) => string, unit: string) =>
    unbroken(`${write(row.along).replace(unit, "")} × ${write(row.across)}`);
  return (
    <>
      <tr class={row.notes.length > 0 ? "noted" : undefined}>
        <td class="number">{row.number}</td>
        <th scope="row">{row.name}</th>
        <td>{texts.counted(row.count, row.mirroredCount)}</td>
        <td class="number">{size((mm) => formatLength(mm, "mm", language), " mm")}</td>
        {inInches && <td class="number">{size(sheetInches, " in")}</td>}
        <td>{texts.grains[row.grain]}</td>
      </tr>
      {row.notes.length > 0 && (
        <tr>
          <td />
          <td colSpan={inInches ? 5 : 4} class="soft small">
            {row.notes.map((note) => (
              <p key={note}>{unbroken(note)}</p>
            ))}
          </td>
        </tr>
      )}
    </>
  );
}

function Amounts({ title, list }: { title: string; list: readonly Amount[] }) {
  if (list.length === 0) return null;
  return (
    <section class="stack" aria-label={title}>
      <h2>{title}</h2>
      <dl class="amounts">
        {list.map(({ what, amount }) => (
          <div key={what}>
            <dt>{unbroken(what)}</dt>
            <dd>{unbroken(amount)}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
