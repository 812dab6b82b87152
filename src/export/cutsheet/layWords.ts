import { planOffcuts, type StockOffcuts } from "../../core/buying/planOffcuts.ts";
import { type Purchase, purchaseOf } from "../../core/buying/purchase.ts";
import { shopLength } from "../../core/buying/shopLength.ts";
import type { LayPlan, LayProblem, StockUse } from "../../core/lay/types.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Project } from "../../core/project/project.ts";
import { formatLength } from "../../core/units/formatLength.ts";

/** A material's lay as the words about it need it; passed by the checker. */
export interface LaidCloth {
  readonly material: Material;
  readonly problem: LayProblem;
  readonly plan: LayPlan;
}

/** What a lay says to a person, one sentence a line: length, how good it is, what to buy, what is left. */
export function layWords({ material, problem, plan }: LaidCloth, project: Project): string[] {
  const purchase = purchaseOf(material, plan);
  const uses = plan.uses.filter((use) => use.usedLength > 0);
  return [
    ...uses.map((use) => useSentence(use, problem.stocks.length > 1, project)),
    ...(uses.length === 0 ? ["Nothing was laid."] : []),
    ...buyingWords(material, purchase, project),
    ...offcutWords(planOffcuts(material, problem, plan, purchase), project),
  ];
}

function useSentence({ stockId, usedLength, bound }: StockUse, named: boolean, project: Project): string {
  const length = formatLength(usedLength, project.output.lengths);
  const where = named ? ` of ${stockId}` : "";
  if (bound === null) return `The pieces take ${length}${where}.`;
  const gap = (usedLength - bound) / bound;
  if (gap < 1e-9) return `The pieces take ${length}${where}: proven, no plan is shorter.`;
  const least = formatLength(bound, project.output.lengths);
  return `The pieces take ${length}${where}; no plan can be shorter than ${least} (gap ${(100 * gap).toFixed(1)} %).`;
}

function buyingWords(material: Material, { buyLength, toPay }: Purchase, project: Project): string[] {
  if (buyLength === 0) return [];
  const cost = toPay === null ? "" : `, ${money(toPay, project)}`;
  return [`Buy ${shopLength(buyLength, material.price)}${cost}.`];
}

/** An amount in the project's currency. */
export function money(amount: number, { currency }: Project): string {
  return `${amount.toFixed(2)} ${currency}`.trim();
}

function offcutWords(stocks: readonly StockOffcuts[], project: Project): string[] {
  const all = stocks.flatMap(({ offcuts }) => offcuts).sort((a, b) => b.along * b.across - a.along * a.across);
  if (all.length === 0) return [];
  const size = (mm: number): string => formatLength(Math.floor(mm), project.output.lengths);
  const shown = all.slice(0, 3).map(({ along, across }) => `${size(along)} × ${size(across)}`);
  return [`Useful offcuts: ${shown.join(", ")}${all.length > 3 ? ` and ${all.length - 3} smaller` : ""}.`];
}
