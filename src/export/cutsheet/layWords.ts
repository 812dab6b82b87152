import { planOffcuts, type StockOffcuts } from "../../core/buying/planOffcuts.ts";
import { type Purchase, purchaseOf } from "../../core/buying/purchase.ts";
import { shopLength } from "../../core/buying/shopLength.ts";
import { stockName } from "../../core/drawing/lay/stockName.ts";
import { bagsInBands } from "../../core/job/bagBands.ts";
import type { LaidCloth } from "../../core/job/laidCloth.ts";
import type { RuleCost } from "../../core/job/ruleCosts.ts";
import { isMatched } from "../../core/lay/problem/lattice.ts";
import type { LayPlan, LayProblem, StockUse } from "../../core/lay/problem/layProblem.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Project } from "../../core/project/project.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { SHEET_TEXTS } from "../../core/words/words.ts";
import { moneyText } from "./moneyText.ts";
import { spreadWords } from "./spreadWords.ts";

/** What a lay says to a person, one sentence a line: length, how good it is, what to buy, what is left. */
export function layWords({ material, problem, plan }: LaidCloth, project: Project, language: Language): string[] {
  const texts = SHEET_TEXTS[language];
  const purchase = purchaseOf(material, plan, project);
  const uses = plan.uses.filter((use) => use.usedLength > 0);
  return [
    ...spreadWords({ material, problem, plan }, project, language),
    ...uses.map((use) => useSentence(use, plan, problem.stocks.length > 1 ? material : null, project, language)),
    ...(uses.length === 0 ? [texts.nothingLaid] : []),
    ...directionWords(material, problem, plan, project, language),
    ...matchedWords(material, problem, plan, project, language),
    ...buyingWords(material, problem, purchase, project, language),
    ...offcutWords(planOffcuts(material, problem, plan, purchase), problem, project, language),
  ];
}

function useSentence(
  { stockId, usedLength, bound }: StockUse,
  { unplaced }: LayPlan,
  among: Material | null,
  project: Project,
  language: Language,
): string {
  const texts = SHEET_TEXTS[language];
  const write = (mm: number): string => cutLength(mm, project.output.lengths, language);
  const where = among === null ? "" : stockName(among.stock, stockId, write, language);
  const length = write(usedLength);
  // A bound on part of the job says nothing about the job.
  if (unplaced.length > 0) return texts.usedByPlaced(length, where);
  if (bound === null) return texts.used(length, where);
  const gap = (usedLength - bound) / bound;
  if (gap < 1e-9) return texts.usedProven(length, where);
  const least = write(bound);
  return texts.usedBound(length, where, least, withDecimalSign((100 * gap).toFixed(1), language));
}

/** Which way all pieces lie where the search has chosen it, and that the parts of each bag lie together. */
export function directionWords(
  { shadeBand }: Material,
  { sameWay, shade, pieces, spread }: LayProblem,
  { placements, uses }: LayPlan,
  project: Project,
  language: Language,
): string[] {
  const texts = SHEET_TEXTS[language];
  const [first] = placements;
  if (first === undefined) return [];
  const among = bagsInBands(project.bags, pieces, spread);
  const isTwos = shade !== undefined && spread?.folded === true && shade.bags < project.bags;
  const bagsAt = spread?.folded === false ? "layer" : isTwos ? "twos" : "one";
  const way = Math.cos(((first.turnDeg + (first.mirrored ? 180 : 0) - 45) * Math.PI) / 180) > 0 ? "up" : "down";
  const isBounded = uses.some(({ bound, usedLength }) => bound !== null && usedLength > bound * (1 + 1e-9));
  return [
    ...(sameWay === true ? [texts.sameWay(way)] : []),
    ...(shade === undefined
      ? []
      : [texts.shadeBand(cutLength(shade.band, project.output.lengths, language), bagsAt)]),
    ...(shadeBand !== undefined && typeof among === "string"
      ? [texts.bandNotKept(among, spread?.layers ?? 1)]
      : []),
    ...(shade !== undefined && isBounded ? [texts.boundUnbanded] : []),
  ];
}

/** What is matched on the cloth's pattern, and how the cloth has to begin for it. */
export function matchedWords(
  material: Material,
  problem: LayProblem,
  plan: LayPlan,
  project: Project,
  language: Language,
): string[] {
  if (!isMatched(problem)) return [];
  const texts = SHEET_TEXTS[language];
  const write = (mm: number): string => cutLength(mm, project.output.lengths, language);
  const parts = [...project.panels, ...project.straps];
  const matched = problem.pieces.filter(({ match }) => match !== undefined).map(({ id }) => id);
  const names = parts.filter(({ id }) => matched.some((piece) => piece === id || piece.startsWith(`${id}~`)));
  const others = matched.length > 0 && names.length === 0 ? matched : names.map(({ name }) => name);
  const rolls = material.stock.filter(({ id }) =>
    plan.uses.some((use) => use.stockId === id && use.usedLength > 0),
  );
  const { repeat } = material;
  const lines = rolls.flatMap((roll) => {
    if (roll.kind !== "roll" || repeat === null) return [];
    const first = roll.firstLine ?? { along: repeat.firstAlong, across: repeat.firstAcross };
    const [along, across] = [repeat.along, repeat.across];
    return [
      texts.firstLine(along === null ? null : write(first.along), across === null ? null : write(first.across)),
    ];
  });
  const isBounded = plan.uses.some(({ bound, usedLength }) => bound !== null && usedLength > bound * (1 + 1e-9));
  return [texts.matched(others.join(", ")), ...new Set(lines), ...(isBounded ? [texts.boundUnmatched] : [])];
}

/** What each rule of a cloth costs, a sentence each. */
export function ruleCostWords(costs: readonly RuleCost[], project: Project, language: Language): string[] {
  const texts = SHEET_TEXTS[language];
  const nameOf = (part: string): string =>
    [...project.panels, ...project.straps].find(({ id }) => id === part)?.name ?? part;
  return costs.flatMap(({ rule, extraLength }) => {
    if (extraLength === null) return [];
    // Less than a millimetre is none, and a search that did worse without a rule shows no saving.
    const more = extraLength < 1 ? null : cutLength(extraLength, project.output.lengths, language);
    if (rule.kind === "band") return [texts.ruleBand(more)];
    if (rule.kind === "one-way") return [texts.ruleOneWay(more)];
    if (rule.kind === "centred") return [texts.ruleCentred(nameOf(project.centred![rule.index]!.part), more)];
    const { first, second } = project.matches![rule.index]!;
    return [texts.ruleMatch(nameOf(first.panel), nameOf(second.panel), more)];
  });
}

function buyingWords(
  material: Material,
  problem: LayProblem,
  { buyLength, toPay }: Purchase,
  project: Project,
  language: Language,
): string[] {
  const texts = SHEET_TEXTS[language];
  if (buyLength === 0) return [];
  const buy = texts.buy(
    shopLength(buyLength, material.price, language),
    toPay === null ? "" : moneyText(toPay, project.currency, language),
  );
  const along = material.repeat?.along ?? 0;
  if (along === 0 || isMatched(problem)) return [buy];
  return [buy, texts.repeat(cutLength(along, project.output.lengths, language))];
}

function offcutWords(
  stocks: readonly StockOffcuts[],
  { spread }: LayProblem,
  project: Project,
  language: Language,
): string[] {
  const texts = SHEET_TEXTS[language];
  const all = stocks.flatMap(({ offcuts }) => offcuts).sort((a, b) => b.along * b.across - a.along * a.across);
  if (all.length === 0) return [];
  const size = (mm: number): string => cutLength(Math.floor(mm), project.output.lengths, language);
  const shown = all.slice(0, 3).map(({ along, across }) => `${size(along)} × ${size(across)}`);
  return [texts.offcuts(shown.join(", "), Math.max(0, all.length - 3), spread?.layers ?? 1)];
}
