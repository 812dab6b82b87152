import { majorOf, minorDigits } from "../../buying/money.ts";
import type { Purchase } from "../../buying/purchase.ts";
import { posePolygon } from "../../geometry/pose.ts";
import { type Polygon, polygonArea, type Ring } from "../../geometry/ring.ts";
import type { LayPiece, LayPlan, LayProblem, Stock } from "../../lay/problem/layProblem.ts";
import type { LeftOut } from "../../problems/layProblems.ts";
import { costOf, type JudgedCloth } from "../laidCloth.ts";
import type { PlanCut } from "../planCut.ts";
import type { ProjectJob } from "../projectJob.ts";
import type { MaterialPlan, OutlineData, PlanDocument, Points, StockData } from "./planDocument.ts";

/** The plan of a whole project as data. */
export function planDocument({ project }: ProjectJob, laid: readonly JudgedCloth[], seed: number): PlanDocument {
  return {
    laywrightPlan: 1,
    project: project.name,
    seed,
    currency: project.currency,
    ...moneyData(laid, project),
    materials: laid.map(({ material, problem, plan, leftOut, cut, offcuts, purchase }) => ({
      ...materialPlan(material.name, problem, plan, leftOut, cut),
      offcuts,
      purchase: purchaseData(purchase, project.currency),
      cost: inCurrency(purchase.toPay, project.currency),
    })),
  };
}

/** Amounts of the file are in the currency, with as many decimals as it has coins; the sheet counts coins. */
function moneyData(laid: readonly JudgedCloth[], project: ProjectJob["project"]) {
  const costs = costOf(laid, project);
  const { currency } = project;
  return {
    toPay: inCurrency(costs.toPay, currency),
    clothPerBag: inCurrency(costs.clothPerBag, currency),
    costPerBag: inCurrency(costs.costPerBag, currency),
    pricePerBag: inCurrency(costs.pricePerBag, currency),
    markup: costs.markup,
    margin: costs.margin,
    minorDigits: minorDigits(currency),
    costs,
  };
}

function purchaseData({ bills, toPay, ownWorth, ...purchase }: Purchase, currency: string): Purchase {
  return {
    ...purchase,
    bills: bills.map((bill) => ({ ...bill, cost: inCurrency(bill.cost, currency) })),
    toPay: inCurrency(toPay, currency),
    ownWorth: inCurrency(ownWorth, currency),
  };
}

function inCurrency(minor: number | null, currency: string): number | null {
  return minor === null ? null : majorOf(minor, currency);
}

/** One material's lay as data. */
export function materialPlan(
  name: string,
  problem: LayProblem,
  plan: LayPlan,
  help: readonly LeftOut[],
  cut: PlanCut,
): MaterialPlan {
  const pieces = new Map(problem.pieces.map((piece) => [piece.id, piece]));
  const stock = problem.stocks.map((entry) => stockData(entry, plan, pieces));
  const open = stock.find((entry) => entry.bound !== null && entry.lengthUsed > 0);
  const cloth = stock.reduce((sum, entry, i) => sum + usedArea(problem.stocks[i]!, entry.lengthUsed), 0);
  const placed = plan.placements.reduce((sum, { pieceId }) => sum + polygonArea(pieces.get(pieceId)!.outline), 0);
  return {
    materialId: problem.materialId,
    name,
    lengthUsed: stock.reduce((sum, entry) => sum + entry.lengthUsed, 0),
    utilisation: shareOf(placed, cloth),
    bound: open?.bound ?? null,
    gap: open?.bound ? (open.lengthUsed - open.bound) / open.bound : null,
    cut,
    cuttingGap: problem.gap,
    edgeMargin: problem.margin,
    evaluations: plan.evaluations,
    stock,
    pieces: problem.pieces.map(({ id, count, outline, orientations, freeTurn, gives, tilt, match }) => {
      const given = gives === undefined ? {} : { gives };
      const off = tilt === undefined ? {} : { tiltDeg: tilt };
      const held = match === undefined ? {} : { match };
      return { id, count, outline: outlineData(outline), turns: orientations, freeTurn, ...given, ...off, ...held };
    }),
    placed: plan.placements.map((placement) => {
      const outline = posePolygon(pieces.get(placement.pieceId)!.outline, placement);
      return { ...placement, outline: outlineData(outline) };
    }),
    unplaced: plan.unplaced.map((left) => ({
      ...left,
      help: help.find(({ pieceId }) => pieceId === left.pieceId) ?? null,
      outline: outlineData(pieces.get(left.pieceId)!.outline),
    })),
    pinned: problem.pinned,
    ...(problem.spread === undefined ? {} : { spread: problem.spread }),
    ...(problem.pattern === undefined ? {} : { pattern: problem.pattern, phases: problem.phases ?? {} }),
    ...(problem.sameWay === undefined ? {} : { sameWay: problem.sameWay }),
    ...(problem.shade === undefined ? {} : { shade: problem.shade }),
  };
}

function stockData(stock: Stock, plan: LayPlan, pieces: ReadonlyMap<string, LayPiece>): StockData {
  const use = plan.uses.find(({ stockId }) => stockId === stock.id);
  const lengthUsed = use?.usedLength ?? 0;
  const laid = plan.placements.filter(({ stockId }) => stockId === stock.id);
  const area = laid.reduce((sum, { pieceId }) => sum + polygonArea(pieces.get(pieceId)!.outline), 0);
  const cloth = usedArea(stock, lengthUsed);
  const remnant = stock.kind === "remnant";
  const ys = remnant ? stock.outline.outer.filter((_, i) => i % 2 === 1) : [];
  const xs = remnant ? stock.outline.outer.filter((_, i) => i % 2 === 0) : [];
  return {
    id: stock.id,
    kind: stock.kind,
    width: remnant ? Math.max(...ys) - Math.min(...ys) : stock.width,
    length: remnant ? Math.max(...xs) - Math.min(...xs) : stock.length,
    outline: remnant ? outlineData(stock.outline) : null,
    flaws: stock.flaws.map(outlineData),
    ...(stock.firstLine === undefined ? {} : { firstLine: stock.firstLine }),
    lengthUsed,
    utilisation: shareOf(area, cloth),
    bound: use?.bound ?? null,
  };
}

/** Utilisation: the pieces' share of the cloth; 0 where none is used. */
function shareOf(pieces: number, cloth: number): number {
  return cloth > 0 ? pieces / cloth : 0;
}

/** Cloth taken by what lies on a stock: the used length of a roll, the whole of a remnant. */
function usedArea(stock: Stock, lengthUsed: number): number {
  if (lengthUsed === 0) return 0;
  return stock.kind === "roll" ? stock.width * lengthUsed : polygonArea(stock.outline);
}

function outlineData({ outer, holes }: Polygon): OutlineData {
  return { points: ringPoints(outer), holes: holes.map(ringPoints) };
}

function ringPoints(ring: Ring): Points {
  return Array.from({ length: ring.length / 2 }, (_, i) => [ring[2 * i]!, ring[2 * i + 1]!] as const);
}
