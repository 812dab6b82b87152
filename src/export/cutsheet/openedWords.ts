import { sumOrNull } from "../../core/buying/moneyRules.ts";
import { purchaseOf } from "../../core/buying/purchase.ts";
import { shopLength } from "../../core/buying/shopLength.ts";
import type { OtherWay } from "../../core/job/stocks/openedStocks.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { copiesLeftOut } from "../../core/lay/problem/planSums.ts";
import type { Material } from "../../core/materials/material.ts";
import { type MaterialStock, stockCopyIds } from "../../core/materials/stock.ts";
import type { Project } from "../../core/project/project.ts";
import type { Language } from "../../core/units/language.ts";
import { SHOPPING_TEXTS } from "../../core/words/words.ts";
import { moneyText } from "./moneyText.ts";

/** What a stock is called in sentences. */
export type NameStock = (stock: MaterialStock) => string;

/** What a plan over several stocks cuts into, what of it is bought and what that costs, a sentence each. */
export function openedWords(
  project: Project,
  material: Material,
  plan: LayPlan,
  name: NameStock,
  language: Language,
): string[] {
  const texts = SHOPPING_TEXTS[language].open;
  const money = (minor: number | null): string | null =>
    minor === null ? null : moneyText(minor, project.currency, language);
  const { bills, toPay } = purchaseOf(material, plan, project);
  const owned = bills.filter(({ source }) => source === "own").map(({ stockId }) => stockId);
  const pieces = bills.filter(({ source, buyLength }) => source === "buy" && buyLength === null);
  const ids = pieces.map(({ stockId }) => stockId);
  const cost = money(sumOrNull(pieces.map(({ cost }) => cost)));
  const left = copiesLeftOut(plan);
  return [
    ...(owned.length > 0 ? [texts.own(counted(material, owned, name).join(", "))] : []),
    ...(ids.length > 0 ? [texts.buyPiece(counted(material, ids, name).join(", "), cost)] : []),
    ...bills.flatMap(({ stockId, buyLength, cost }) => {
      if (buyLength === null) return [];
      const [roll] = counted(material, [stockId], name);
      return [texts.buyLength(roll!, shopLength(buyLength, material.price, language), money(cost))];
    }),
    ...(bills.every(({ source }) => source === "own") ? [texts.nothing] : []),
    ...(left > 0 ? [texts.leftOut(left)] : toPay !== null && toPay > 0 ? [texts.inAll(money(toPay)!)] : []),
  ];
}

/** Another way to buy, and what it costs. */
export function otherWayWords(
  project: Project,
  material: Material,
  { opened, toPay, leftOut }: OtherWay,
  name: NameStock,
  language: Language,
): string {
  const cost = toPay === null ? null : moneyText(toPay, project.currency, language);
  return SHOPPING_TEXTS[language].open.other(counted(material, opened, name), cost, leftOut);
}

/** Stocks by their names, equal ones counted. */
function counted({ stock }: Material, ids: readonly string[], name: NameStock): string[] {
  return stock.flatMap((one) => {
    const own = stockCopyIds(one);
    const count = ids.filter((id) => own.includes(id)).length;
    return count === 0 ? [] : [count === 1 ? name(one) : `${count} × ${name(one)}`];
  });
}
