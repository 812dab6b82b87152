import { minorDigits } from "../../core/buying/money.ts";
import { sumOrNull } from "../../core/buying/moneyRules.ts";
import { purchaseOf } from "../../core/buying/purchase.ts";
import { shopLength } from "../../core/buying/shopLength.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { ShopWish } from "../../core/job/shopping/shopTable.ts";
import {
  cheapestPlan,
  hasStockChoice,
  type StockChoice,
  type StockWay,
} from "../../core/job/stocks/cheapestPlan.ts";
import { copiesLeftOut } from "../../core/lay/problem/planSums.ts";
import type { Material } from "../../core/materials/material.ts";
import { stockCopyIds } from "../../core/materials/stock.ts";
import type { Language } from "../../core/units/language.ts";
import { moneyText } from "../../export/cutsheet/moneyText.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, UsageError } from "../command.ts";
import { attended } from "../timedSearch.ts";
import { BUY_TEXTS } from "../words/buyTexts.ts";
import { buyProblem } from "./buyOptions.ts";

/** Evaluations for each set of stock unless told. */
const SET_EFFORT = 20_000;
/** Other ways that are told. */
const TOLD = 6;

/** Tells what to cut into of each cloth that leaves a choice. */
export async function tellOpened(
  args: ParsedArgs,
  io: Io,
  job: ProjectJob,
  asked: readonly Material[],
  wishes: readonly ShopWish[],
): Promise<ExitCode> {
  for (const name of ["widths", "constructions", "directions", "up-to", "seconds"])
    if (args.values.has(name)) throw new UsageError((say) => say.notWith(name, "open"));
  const materials = args.values.has("material") ? asked : asked.filter(hasStockChoice);
  for (const material of args.values.has("material") || materials.length > 0 ? materials : asked)
    if (!hasStockChoice(material))
      throw buyProblem("no-choice", "--open", ({ open }) => open.noChoice(material.name));
  const evaluations = args.values.has("evaluations") ? wishes[0]!.evaluations : SET_EFFORT;
  const found: { readonly material: Material; readonly choice: StockChoice }[] = [];
  for (const material of materials) {
    const lay = job.lays.find((each) => each.material.id === material.id)!;
    const { mode, seed } = wishes[0]!;
    io.progress(BUY_TEXTS[io.language].open.title(material.name, job.project.bags));
    const steps = cheapestPlan(material, lay.problem, job.project, { mode, seed, evaluations });
    found.push({ material, choice: await attended(steps) });
  }
  io.progress("");
  if (args.switches.has("json")) io.out(`${JSON.stringify(openedData(job, found))}\n`);
  else
    io.out(`${found.map(({ material, choice }) => openedText(job, material, choice, io.language)).join("\n\n")}\n`);
  return found.every(({ choice }) => choice.best.outlay.leftOut === 0) ? EXIT.done : EXIT.input;
}

function openedText(
  job: ProjectJob,
  material: Material,
  { best, others }: StockChoice,
  language: Language,
): string {
  const { project } = job;
  const texts = BUY_TEXTS[language].open;
  const money = (minor: number | null): string | null =>
    minor === null || !Number.isFinite(minor) ? null : moneyText(minor, project.currency, language);
  const { bills, toPay } = purchaseOf(material, best.plan, project);
  const owned = bills.filter(({ source }) => source === "own").map(({ stockId }) => stockId);
  const pieces = bills.filter(({ source, buyLength }) => source === "buy" && buyLength === null);
  const lines = [
    ...(owned.length > 0 ? [texts.own(named(material, owned).join(", "))] : []),
    ...(pieces.length > 0
      ? [
          texts.buyPiece(
            named(
              material,
              pieces.map(({ stockId }) => stockId),
            ).join(", "),
            money(sumOrNull(pieces.map(({ cost }) => cost))),
          ),
        ]
      : []),
    ...bills.flatMap(({ stockId, buyLength, cost }) =>
      buyLength === null
        ? []
        : [texts.buyLength(stockId, shopLength(buyLength, material.price, language), money(cost))],
    ),
  ];
  const left = copiesLeftOut(best.plan);
  const told = otherKinds(material, best, others).map((way) => {
    const cost = money(way.outlay.toPay);
    return `  ${texts.other(named(material, way.opened), cost, copiesLeftOut(way.plan))}`;
  });
  return [
    texts.title(material.name, project.bags),
    ...lines,
    ...(best.opened.length === 0 ? [texts.nothing] : []),
    ...(left > 0 ? [texts.leftOut(left)] : toPay !== null && toPay > 0 ? [texts.inAll(money(toPay)!)] : []),
    ...(told.length > 0 ? [texts.others, ...told] : []),
  ].join("\n");
}

/** Stocks by the maker's own words for them, equal ones counted. */
function named({ stock }: Material, ids: readonly string[]): string[] {
  return stock.flatMap((one) => {
    const own = stockCopyIds(one);
    const count = ids.filter((id) => own.includes(id)).length;
    return count === 0 ? [] : [count === 1 ? one.id : `${count} × ${one.id}`];
  });
}

/** The cheapest way for each other choice of rolls and kinds of panels; how many of a kind makes no other choice. */
function otherKinds(material: Material, best: StockWay, others: readonly StockWay[]): StockWay[] {
  const kinds = (way: StockWay): string =>
    JSON.stringify(material.stock.map((one) => stockCopyIds(one).some((id) => way.opened.includes(id))));
  const seen = new Set([kinds(best)]);
  return others.filter((way) => !seen.has(kinds(way)) && seen.add(kinds(way))).slice(0, TOLD);
}

/** Money in the smallest coin, lengths in mm, areas in mm². */
function openedData(
  { project }: ProjectJob,
  found: readonly { readonly material: Material; readonly choice: StockChoice }[],
): object {
  const way = (material: Material, { opened, plan, outlay }: StockWay): object => ({
    opened,
    toPayMinor: Number.isFinite(outlay.toPay) ? outlay.toPay : null,
    leftOut: copiesLeftOut(plan),
    stocks: purchaseOf(material, plan, project).bills.map(
      ({ stockId, source, usedLength, buyLength, area, cost }) => ({
        ...{ stockId, source, usedMm: usedLength, buyMm: buyLength, areaMm2: area, costMinor: cost },
      }),
    ),
    placements: plan.placements,
  });
  return {
    laywrightBuy: 1,
    project: project.name,
    bags: project.bags,
    currency: project.currency,
    minorDigits: minorDigits(project.currency),
    materials: found.map(({ material, choice: { best, others } }) => ({
      materialId: material.id,
      name: material.name,
      best: way(material, best),
      others: others.map((other) => way(material, other)),
    })),
  };
}
