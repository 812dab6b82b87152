import { toMinor } from "../../core/buying/money.ts";
import { shopLength, shopWidth } from "../../core/buying/shopLength.ts";
import { namedProblem } from "../../core/drawing/lay/namedProblem.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import type { ShopCell } from "../../core/job/shopping/shopCell.ts";
import type { LaidRow, ShopRow } from "../../core/job/shopping/shopRow.ts";
import type { BestRow, ShopWish } from "../../core/job/shopping/shopTable.ts";
import type { Material } from "../../core/materials/material.ts";
import { problemLine } from "../../core/problems/describeProblem.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { sayLengths } from "../../core/units/sayLength.ts";
import { SENTENCES, STRAP_WORDS } from "../../core/words/words.ts";
import { moneyText } from "../../export/cutsheet/moneyText.ts";
import { BUY_TEXTS } from "../words/buyTexts.ts";

/** What the sentences are about. */
export interface Told {
  readonly job: ProjectJob;
  readonly material: Material;
  readonly wish: ShopWish;
  readonly language: Language;
}

/** The columns that tell these rows apart, and what every row has. */
interface Column {
  readonly head: string;
  readonly width: number;
  readonly cell: (row: LaidRow) => string;
  /** Of a column that tells ways apart: told of a row that cannot be cut too. */
  readonly way: ((cell: ShopCell) => string) | null;
}

/** Title and heads of the table. */
export function headText(told: Told): string {
  const texts = BUY_TEXTS[told.language];
  const { name, price } = told.material;
  const isOnePrice = price !== null && told.wish.widths.every(({ amount }) => amount === null);
  const isByLength = isOnePrice && price.basis.kind === "length" && told.wish.widths.length > 1;
  const note =
    isByLength && price.basis.kind === "length"
      ? [
          texts.onePrice(
            moneyOf(toMinor(price.amount, told.job.project.currency), told),
            shopLength(price.basis.mm, price, told.language),
          ),
        ]
      : [];
  const heads = columnsOf(told).map(({ head, width }) => head.padEnd(width));
  return [texts.title(name, told.job.project.bags), ...note, heads.join("  ").trimEnd()].join("\n");
}

/** One row; what is wrong with a way that cannot be cut. */
export function rowText(row: ShopRow, told: Told): string {
  const columns = columnsOf(told);
  if (row.kind === "laid")
    return columns
      .map(({ cell, width }) => cell(row).padEnd(width))
      .join("  ")
      .trimEnd();
  const ways = columns.flatMap(({ way, width }) => (way === null ? [] : [way(row.cell).padEnd(width)]));
  return [...ways, barredText(row, told)].join("  ");
}

/** The best row and why, in sentences. */
export function bestText(best: BestRow | null, rows: readonly ShopRow[], told: Told): string {
  const texts = BUY_TEXTS[told.language];
  if (best === null) return texts.noWay;
  const { row, by, saved, alike } = best;
  const way = columnsOf(told)
    .flatMap(({ way: one }) => (one === null ? [] : [one(row.cell)]))
    .join(", ");
  const money = by === "cost" && row.toPay !== null ? moneyOf(row.toPay, told) : null;
  const lines = [
    row.buyLength > 0 ? texts.best(way, lengthOf(row, told), money, rows.length) : texts.bestNothing(way),
    ...(saved !== null && saved > 0 ? [texts.saved(moneyOf(saved, told))] : []),
    ...(alike > 0 ? [texts.alike(alike)] : []),
  ];
  const names = new Map(told.job.project.materials.map(({ id, name }) => [id, name]));
  const others = row.elsewhere.map(({ materialId, area }) => {
    const square = withDecimalSign(`${(Math.abs(area) / 1e6).toFixed(3)} m²`, told.language);
    return (area > 0 ? texts.more : texts.less)(names.get(materialId) ?? materialId, square);
  });
  return [lines.join(" "), ...(others.length > 0 ? [texts.elsewhere(others)] : [])].join("\n");
}

/** Why a way cannot be cut, in a sentence. */
export function barredText(row: Extract<ShopRow, { kind: "barred" }>, { job, language }: Told): string {
  const [trouble] = row.troubles;
  const [left] = row.leftOut;
  const problem = trouble ?? (left && namedProblem(left, job.project, job.pieces, language));
  const say = sayLengths(job.project.output.lengths, language);
  return problem === undefined ? "" : problemLine(problem, SENTENCES[language], say);
}

function columnsOf(told: Told): Column[] {
  const { wish, language } = told;
  const texts = BUY_TEXTS[language];
  const heads = texts.columns;
  const names = STRAP_WORDS[language].constructions;
  const construction = (cell: ShopCell): string =>
    cell.construction === null ? texts.asPlanned : names[cell.construction].name;
  const direction = (cell: ShopCell): string =>
    cell.direction === null ? texts.asPlanned : texts.directions[cell.direction];
  const joins = (cell: ShopCell): string =>
    cell.joins === null ? texts.asPlanned : cell.joins ? texts.joined : texts.whole;
  const column = (head: string, cell: Column["cell"], least: number): Column => ({
    ...{ head, cell, way: null },
    width: Math.max(head.length, least),
  });
  const longest = (all: readonly string[]): number => Math.max(...all.map(({ length }) => length));
  const wayColumn = (head: string, way: (cell: ShopCell) => string, least: number): Column => ({
    ...{ head, way, cell: (row) => way(row.cell) },
    width: Math.max(head.length, least),
  });
  const ways = (head: string, each: readonly unknown[], way: NonNullable<Column["way"]>, all: readonly string[]) =>
    each.length > 1 || each[0] !== null ? [wayColumn(head, way, longest(all))] : [];
  const named = wish.constructions.map((id) => (id === null ? texts.asPlanned : names[id].name));
  const priced = wish.widths.some(({ amount }) => amount !== null) || told.material.price !== null;
  const hasStraps = told.job.straps.some((strap) => strap.wish.materials.outer === told.material.id);
  return [
    wayColumn(heads.width, ({ sold }) => shopWidth(sold.width, language), 8),
    ...ways(heads.construction, wish.constructions, construction, named),
    ...ways(heads.direction, wish.directions, direction, Object.values(texts.directions)),
    ...ways(heads.joins, wish.joins, joins, [texts.joined, texts.asPlanned]),
    column(heads.buy, (row) => lengthOf(row, told), 9),
    ...(priced ? [column(heads.toPay, ({ toPay }) => (toPay === null ? "–" : moneyOf(toPay, told)), 9)] : []),
    column(heads.bags, ({ bagsPerMetre }) => numberText(bagsPerMetre, 2, language), 4),
    column(heads.use, ({ utilisation }) => percentText(utilisation, language), 5),
    ...(hasStraps
      ? [
          column(
            heads.bulk,
            ({ layers, thickness }) =>
              layers === null || thickness === null
                ? "–"
                : texts.bulk(layers, formatLength(thickness, "mm", language)),
            16,
          ),
        ]
      : []),
    column("", ({ isProven, usedLength }) => (isProven && usedLength > 0 ? texts.shortest : ""), 0),
  ];
}

function lengthOf({ buyLength, material }: LaidRow, { language }: Told): string {
  return buyLength > 0 ? shopLength(buyLength, material.price, language) : BUY_TEXTS[language].nothing;
}

function moneyOf(minor: number, { job, language }: Told): string {
  return moneyText(minor, job.project.currency, language);
}

function numberText(value: number | null, digits: number, language: Language): string {
  return value === null ? "–" : withDecimalSign(value.toFixed(digits), language);
}

function percentText(share: number | null, language: Language): string {
  return share === null ? "–" : `${numberText(100 * share, 0, language)} %`;
}
