import type { Project, Supply } from "../project/project.ts";
import { amountFor, partOf, shareOf, toMinor } from "./money.ts";
import { countedCost, type MoneyRules, sumOrNull, tillPrice } from "./moneyRules.ts";
import type { Purchase } from "./purchase.ts";
import { roundUpTo } from "./quantity.ts";

/** What one cloth costs for all bags. */
export interface ClothCost {
  readonly materialId: string;
  /** Paid at the till, and worth of own stock used up. */
  readonly toPay: number | null;
  readonly ownWorth: number | null;
  /** What the bags are charged with: both, without the tax that the maker gets back. */
  readonly cost: number | null;
  /** The part of it that does not end in pieces; null where the areas are not known. */
  readonly wasted: number | null;
}

/** What one supply costs for all bags. */
export interface SupplyCost {
  readonly id: string;
  readonly name: string;
  /** How many go into the bags, and how many packs hold them. */
  readonly needed: number;
  readonly packs: number;
  /** Whole packs at the till. */
  readonly toPay: number | null;
  /** What goes into the bags. */
  readonly cost: number | null;
}

/**
 * What the bags of a project cost and sell at, in whole smallest coins of its currency. Every line is rounded once, half
 * a coin up, and sums are sums of lines. Null where a price is missing: nothing is made up.
 */
export interface CostSheet {
  readonly bags: number;
  readonly cloths: readonly ClothCost[];
  readonly supplies: readonly SupplyCost[];
  /** To be paid in the shop for the cloth, and for whole packs of supplies. */
  readonly toPay: number | null;
  readonly suppliesToPay: number | null;
  /** Work and overhead of all bags; null without pricing in the project. */
  readonly work: number | null;
  readonly overhead: number | null;
  /** Cloth, supplies, work and overhead of all bags; null with neither pricing nor supplies in the project. */
  readonly total: number | null;
  /** Of one bag, by the number of bags. */
  readonly clothPerBag: number | null;
  readonly costPerBag: number | null;
  /** Selling price of one bag, and with tax on it where the maker charges one. */
  readonly pricePerBag: number | null;
  readonly priceWithTax: number | null;
  /** All bags at that price, and what is left of it after their cost. */
  readonly batchPrice: number | null;
  readonly batchLeft: number | null;
  /** The same price said both ways, so that mark-up and margin are not mixed up. */
  readonly markup: number | null;
  readonly margin: number | null;
}

/** A cloth as it goes into the sheet: what is bought, and the area of its pieces, mm², where that is known. */
export interface CountedCloth {
  readonly purchase: Purchase;
  readonly piecesArea?: number | null;
}

/** The part of a project that its costs hang on. */
export type CostRules = Pick<Project, "bags" | "pricing" | "supplies"> & MoneyRules;

/** Costs of all bags and the price of one. */
export function costSheet(counted: readonly CountedCloth[], rules: CostRules): CostSheet {
  const { bags, pricing, currency } = rules;
  const cloths = counted.map((cloth) => clothCost(cloth, rules));
  const supplies = (rules.supplies ?? []).map((supply) => supplyCost(supply, rules));
  const cloth = sumOrNull(cloths.map(({ cost }) => cost));
  const materials = sumOrNull([cloth, ...supplies.map(({ cost }) => cost)]);
  const byMinute = amountFor(pricing?.hourlyRate ?? 0, (pricing?.minutesPerBag ?? 0) * bags, 60, currency);
  const work = pricing === undefined ? null : toMinor(pricing.workPerBag, currency) * bags + byMinute;
  const overhead = overheadOf(materials, work, rules);
  const isAsked = pricing !== undefined || supplies.length > 0;
  const total = isAsked ? sumOrNull([materials, ...(pricing === undefined ? [] : [work, overhead])]) : null;
  return {
    bags,
    cloths,
    supplies,
    toPay: sumOrNull(cloths.map(({ toPay }) => toPay)),
    suppliesToPay: sumOrNull(supplies.map(({ toPay }) => toPay)),
    work,
    overhead,
    total,
    clothPerBag: cloth === null ? null : partOf(cloth, 1, bags),
    costPerBag: total === null ? null : partOf(total, 1, bags),
    ...priced(total, rules),
  };
}

function clothCost({ purchase, piecesArea = null }: CountedCloth, rules: CostRules): ClothCost {
  const { materialId, toPay, ownWorth, bills } = purchase;
  const paid = sumOrNull([toPay, ownWorth]);
  const cost = paid === null ? null : countedCost(paid, rules);
  const area = bills.reduce((sum, bill) => sum + bill.area, 0);
  const isKnown = cost !== null && piecesArea !== null && area > 0;
  const wasted = isKnown ? cost - partOf(cost, Math.min(1, piecesArea / area), 1) : null;
  return { materialId, toPay, ownWorth, cost, wasted };
}

/** Rounding in the arithmetic of parts of things: 3 × 0.1 of a reel are 0.3. */
const PARTS = 1e-9;

function supplyCost({ id, name, perBag, price, pack }: Supply, rules: CostRules): SupplyCost {
  const { bags, currency } = rules;
  const needed = perBag * bags;
  const packs = Math.ceil(roundUpTo(needed, pack) / pack - PARTS);
  if (price === null) return { id, name, needed, packs, toPay: null, cost: null };
  const used = tillPrice(amountFor(price, needed, pack, currency), rules);
  return {
    ...{ id, name, needed, packs },
    toPay: tillPrice(toMinor(price, currency) * packs, rules),
    cost: countedCost(used, rules),
  };
}

function overheadOf(materials: number | null, work: number | null, { bags, pricing, currency }: CostRules) {
  if (pricing === undefined || work === null) return null;
  const { overheadShare = 0, overheadPerBag = 0 } = pricing;
  const fixed = toMinor(overheadPerBag, currency) * bags;
  if (overheadShare === 0) return fixed;
  return materials === null ? null : fixed + shareOf(materials + work, overheadShare);
}

type Prices = Pick<CostSheet, "pricePerBag" | "priceWithTax" | "batchPrice" | "batchLeft" | "markup" | "margin">;

const UNPRICED: Prices = {
  ...{ pricePerBag: null, priceWithTax: null, batchPrice: null, batchLeft: null },
  ...{ markup: null, margin: null },
};

function priced(total: number | null, { bags, pricing, tax }: CostRules): Prices {
  if (total === null || pricing === undefined) return UNPRICED;
  const { share } = pricing;
  const byMarkup = pricing.by === "markup";
  // Straight from the cost of all bags, so that one price is rounded once.
  const pricePerBag = byMarkup ? partOf(total, 1 + share, bags) : partOf(total, 1, (1 - share) * bags);
  return {
    pricePerBag,
    priceWithTax: tax?.onBags === true ? pricePerBag + shareOf(pricePerBag, tax.rate) : null,
    batchPrice: pricePerBag * bags,
    batchLeft: pricePerBag * bags - total,
    markup: byMarkup ? share : share / (1 - share),
    margin: byMarkup ? share / (1 + share) : share,
  };
}
