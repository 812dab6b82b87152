import { minorDigits } from "../../core/buying/money.ts";
import { purchaseOf } from "../../core/buying/purchase.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { ShopWish } from "../../core/job/shopping/shopTable.ts";
import {
  cheapestPlan,
  hasStockChoice,
  type StockChoice,
  type StockWay,
} from "../../core/job/stocks/cheapestPlan.ts";
import { otherKinds } from "../../core/job/stocks/openedStocks.ts";
import { copiesLeftOut } from "../../core/lay/problem/planSums.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Language } from "../../core/units/language.ts";
import { SHOPPING_TEXTS } from "../../core/words/words.ts";
import { type NameStock, openedWords, otherWayWords } from "../../export/cutsheet/openedWords.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, UsageError } from "../command.ts";
import { attended } from "../timedSearch.ts";
import { BUY_TEXTS } from "../words/buyTexts.ts";
import { buyProblem } from "./buyOptions.ts";

/** Evaluations for each set of stock unless told. */
const SET_EFFORT = 20_000;

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
  { project }: ProjectJob,
  material: Material,
  { best, others }: StockChoice,
  language: Language,
): string {
  const name: NameStock = ({ id }) => id;
  const told = otherKinds(material, best.opened, others).map(
    (way) => `  ${otherWayWords(project, material, way, name, language)}`,
  );
  return [
    BUY_TEXTS[language].open.title(material.name, project.bags),
    ...openedWords(project, material, best.plan, name, language),
    ...(told.length > 0 ? [SHOPPING_TEXTS[language].open.others, ...told] : []),
  ].join("\n");
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
