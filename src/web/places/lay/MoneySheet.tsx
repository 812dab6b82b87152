import { useMemo } from "preact/hooks";
import type { CostSheet } from "../../../core/buying/costSheet.ts";
import { purchaseOf } from "../../../core/buying/purchase.ts";
import { costOf } from "../../../core/job/laidCloth.ts";
import type { Project } from "../../../core/project/project.ts";
import type { Language } from "../../../core/units/language.ts";
import { unbroken, withDecimalSign } from "../../../core/units/numberWords.ts";
import { moneyText } from "../../../export/cutsheet/moneyText.ts";
import type { Lays } from "../../state/layBoard.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { MoneyWords } from "./MoneyWords.tsx";

/** What all bags cost and sell at, line by line, and the maker's say in it. */
export function MoneySheet({ lays, project }: { lays: Lays; project: Project }) {
  const words = useTexts().money;
  const laid = [...lays.values()];
  const costs = useMemo(() => {
    const cloths = laid.flatMap(({ job: { material, problem }, plan }) =>
      plan === null ? [] : [{ problem, plan, purchase: purchaseOf(material, plan, project) }],
    );
    return cloths.length < laid.length ? null : costOf(cloths, project);
  }, [lays, project]);
  return (
    <section class="sheet stack money-sheet" aria-label={words.heading}>
      <h2>{words.heading}</h2>
      {costs !== null && <CostTable costs={costs} project={project} />}
      <details>
        <summary>{words.settings}</summary>
        <MoneyWords />
      </details>
    </section>
  );
}

/** A share to a tenth of a per cent: a mark-up of 50 % is a margin of 33.3 %. */
function shareText(share: number, language: Language): string {
  return unbroken(withDecimalSign(`${Number((100 * share).toFixed(1))} %`, language));
}

interface Line {
  readonly key: string;
  readonly what: string;
  readonly more: string | null;
  readonly minor: number | null;
  readonly isSum?: boolean;
}

function CostTable({ costs, project }: { costs: CostSheet; project: Project }) {
  const language = useLanguage();
  const words = useTexts().money;
  const money = (minor: number) => unbroken(moneyText(minor, project.currency, language));
  const lines = costLines(costs, project, words, money, (value) =>
    withDecimalSign(String(Number(value.toFixed(3))), language),
  );
  const { pricePerBag, priceWithTax, markup, margin, batchPrice, batchLeft } = costs;
  const isPriced = pricePerBag !== null && markup !== null && margin !== null;
  const priced: Line[] = isPriced
    ? [
        {
          ...{ key: "price", what: words.sellsAt, minor: pricePerBag, isSum: true },
          more: [
            words.bothWays(shareText(markup, language), shareText(margin, language)),
            ...(priceWithTax === null ? [] : [words.withTax(money(priceWithTax))]),
          ].join("; "),
        },
        {
          ...{ key: "batch", what: words.batch, minor: batchPrice, isSum: true },
          more: batchLeft === null ? null : words.left(money(batchLeft)),
        },
      ]
    : [];
  const isUnknown =
    costs.cloths.some(({ cost }) => cost === null) || costs.supplies.some(({ cost }) => cost === null);
  return (
    <>
      <table class="costs">
        <thead>
          <tr>
            <th scope="col">{words.what}</th>
            <th scope="col">{words.amount}</th>
          </tr>
        </thead>
        <tbody>
          {[...lines, ...priced].map(({ key, what, more, minor, isSum }) => (
            <tr key={key} class={isSum ? "sum" : undefined}>
              <th scope="row">
                {what}
                {more !== null && <span class="soft small"> {more}</span>}
              </th>
              <td class="number">{minor === null ? "–" : money(minor)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {isUnknown && <p class="soft small">{words.unknown}</p>}
    </>
  );
}

function costLines(
  costs: CostSheet,
  { materials }: Project,
  words: ReturnType<typeof useTexts>["money"],
  money: (minor: number) => string,
  number: (value: number) => string,
): Line[] {
  const names = new Map(materials.map(({ id, name }) => [id, name]));
  const { cloths, supplies, work, overhead, total, costPerBag, bags } = costs;
  const sums: readonly (readonly [string, string, number | null])[] = [
    ["total", words.total, total],
    ...(bags > 1 ? ([["perBag", words.perBag, costPerBag]] as const) : []),
  ];
  return [
    ...cloths.map(({ materialId, cost, wasted }) => ({
      ...{ key: `cloth ${materialId}`, what: words.cloth(names.get(materialId) ?? materialId), minor: cost },
      more: wasted === null || wasted === 0 ? null : words.wasted(money(wasted)),
    })),
    ...supplies.map(({ id, name, needed, toPay, cost }) => ({
      ...{ key: `supply ${id}`, what: words.supplyLine(name, number(needed)), minor: cost },
      more: toPay === null || toPay === cost ? null : words.packs(money(toPay)),
    })),
    ...(work === null ? [] : [{ key: "work", what: words.workLine, more: null, minor: work }]),
    ...(overhead === null || overhead === 0
      ? []
      : [{ key: "overhead", what: words.overheadLine, more: null, minor: overhead }]),
    ...(total === null ? [] : sums.map(([key, what, minor]) => ({ key, what, more: null, minor, isSum: true }))),
  ];
}
