import { amountFor } from "../../buying/money.ts";
import { type MoneyRules, sumOrNull, tillPrice } from "../../buying/moneyRules.ts";
import type { Purchase } from "../../buying/purchase.ts";
import { bought } from "../../buying/quantity.ts";
import { contourBox } from "../../geometry/contourArcs.ts";
import { shapeContour } from "../../geometry/shape.ts";
import type { Material } from "../../materials/material.ts";
import type { Price } from "../../materials/price.ts";
import { type ClothRoll, isBought, type MaterialStock, stockCopyIds } from "../../materials/stock.ts";
import type { Project } from "../../project/project.ts";
import type { StrapResult } from "../../straps/build/strapResult.ts";
import type { HardwareNeeded } from "../../straps/wish/strapWish.ts";
import type { ConsumableCode } from "../../words/strapWords.ts";

/** A project with what its plans take. */
export interface ProjectToBuy {
  readonly project: Project;
  readonly straps: readonly StrapResult[];
  readonly cloths: readonly { readonly material: Material; readonly purchase: Purchase }[];
}

/** A cloth off a roll. mm; `toPay` in smallest coins, null without a price. */
export interface ClothToBuy {
  readonly name: string;
  /** The shop, where the projects say it. */
  readonly source: string | null;
  readonly width: number;
  readonly price: Price | null;
  /** What the plans take, and what the shop cuts for all of them at once. */
  readonly needed: number;
  readonly buy: number;
  readonly toPay: number | null;
  readonly currency: string;
  readonly projects: readonly string[];
}

/** Packs of something that goes into the bags. */
export interface SupplyToBuy {
  readonly name: string;
  readonly needed: number;
  readonly pack: number;
  readonly packs: number;
  readonly toPay: number | null;
  readonly currency: string;
  readonly projects: readonly string[];
}

/** Cloth cut to size in the shop or a skin, equal ones counted, or a length off a limited roll. mm. */
export interface PieceToBuy {
  readonly name: string;
  readonly source: string | null;
  /** As the project calls it. */
  readonly stockId: string;
  readonly kind: MaterialStock["kind"];
  readonly count: number;
  /** Sides along the grain and across; the length of a roll as it lies in the shop and its width. */
  readonly along: number;
  readonly across: number;
  /** What is cut off a limited roll; null for what is bought whole. */
  readonly length: number | null;
  readonly price: Price | null;
  /** For all of them, in smallest coins. */
  readonly toPay: number | null;
  readonly currency: string;
  readonly project: string;
}

/** What to buy for one project or several, the same thing of all projects as one line. */
export interface ShoppingList {
  readonly cloths: readonly ClothToBuy[];
  /** Pieces of cloth cut to size in the shop, and rolls of a set length: each is bought whole. */
  readonly pieces: readonly PieceToBuy[];
  readonly hardware: readonly HardwareNeeded[];
  /** mm, rounded up to a centimetre once. */
  readonly consumables: readonly { readonly code: ConsumableCode; readonly mm: number }[];
  readonly supplies: readonly SupplyToBuy[];
}

/** Of lengths bought by the metre the next whole centimetre is asked for, mm. */
const CENTIMETRE = 10;

/**
 * Adds up what several projects need. Equal things are one line: cloth of one name, shop, width, price and tax; hardware of one
 * kind and size; consumables of one kind; supplies of one name, price and pack. Every line is rounded once, to what is
 * sold, after it was added up.
 */
export function shoppingList(all: readonly ProjectToBuy[]): ShoppingList {
  return { cloths: clothsOf(all), pieces: piecesOf(all), ...smallThings(all), supplies: suppliesOf(all) };
}

function clothsOf(all: readonly ProjectToBuy[]): ClothToBuy[] {
  const lines = new Map<string, { roll: ClothRoll; rules: MoneyRules; line: Omit<ClothToBuy, "buy" | "toPay"> }>();
  for (const { project, cloths } of all)
    for (const { material, purchase } of cloths)
      for (const { stockId, source: from, usedLength } of purchase.bills) {
        const roll = openRoll(material, stockId);
        if (from !== "buy" || usedLength === null || roll === null) continue;
        const price = roll.price ?? material.price;
        const { currency, tax } = project;
        const source = material.source ?? null;
        const key = JSON.stringify([
          sameName(material.name),
          source && sameName(source),
          roll.width,
          price,
          currency,
          tax,
        ]);
        // One repeat more, so that the pattern can start where it is wanted (common practice, no source).
        const needed = usedLength + (material.repeat?.along ?? 0);
        const before = lines.get(key)?.line;
        const line = {
          ...{ name: before?.name ?? material.name, source, width: roll.width, price, currency },
          needed: (before?.needed ?? 0) + needed,
          projects: withName(before?.projects, project.name),
        };
        lines.set(key, { roll, rules: project, line });
      }
  return [...lines.values()].map(({ roll, rules, line }) => {
    const { price, needed, currency } = line;
    if (price === null || price.basis.kind === "each") return { ...line, buy: needed, toPay: null };
    const per = price.basis.kind === "area" ? roll.width : 1;
    const { quantity, cost } = bought(price, needed * per, currency);
    return { ...line, buy: quantity / per, toPay: tillPrice(cost, rules) };
  });
}

function openRoll({ stock }: Material, stockId: string): ClothRoll | null {
  const found = stock.find(({ id }) => id === stockId);
  return found?.kind === "roll" && found.length === null ? found : null;
}

function piecesOf(all: readonly ProjectToBuy[]): PieceToBuy[] {
  return all.flatMap(({ project, cloths }) =>
    cloths.flatMap(({ material, purchase }) =>
      material.stock
        .filter((stock) => isBought(stock) && openRoll(material, stock.id) === null)
        .flatMap((stock): PieceToBuy[] => {
          const ids = stockCopyIds(stock);
          const bills = purchase.bills.filter(({ stockId }) => ids.includes(stockId));
          if (bills.length === 0) return [];
          return [
            {
              ...{ name: material.name, source: material.source ?? null, stockId: stock.id, kind: stock.kind },
              ...{ count: bills.length, ...sidesOf(stock), length: bills[0]!.buyLength },
              ...{ price: stock.price ?? material.price, toPay: sumOrNull(bills.map(({ cost }) => cost)) },
              ...{ currency: project.currency, project: project.name },
            },
          ];
        }),
    ),
  );
}

function sidesOf(stock: MaterialStock): Pick<PieceToBuy, "along" | "across"> {
  if (stock.kind === "roll") return { along: stock.length ?? 0, across: stock.width };
  const { minX, minY, maxX, maxY } = contourBox(shapeContour(stock.shape));
  return { along: maxX - minX, across: maxY - minY };
}

function smallThings(all: readonly ProjectToBuy[]): Pick<ShoppingList, "hardware" | "consumables"> {
  const hardware = new Map<string, HardwareNeeded>();
  const lengths = new Map<ConsumableCode, number>();
  for (const { project, straps } of all)
    for (const strap of straps) {
      for (const one of strap.hardware) {
        const key = JSON.stringify({ ...one, count: 0 });
        hardware.set(key, { ...one, count: (hardware.get(key)?.count ?? 0) + one.count * project.bags });
      }
      for (const { code, mm } of strap.consumables) lengths.set(code, (lengths.get(code) ?? 0) + mm * project.bags);
    }
  return {
    hardware: [...hardware.values()],
    consumables: [...lengths].map(([code, mm]) => ({ code, mm: Math.ceil(mm / CENTIMETRE - 1e-9) * CENTIMETRE })),
  };
}

function suppliesOf(all: readonly ProjectToBuy[]): SupplyToBuy[] {
  const lines = new Map<
    string,
    { price: number | null; rules: MoneyRules; line: Omit<SupplyToBuy, "packs" | "toPay"> }
  >();
  for (const { project } of all)
    for (const { name, perBag, price, pack } of project.supplies ?? []) {
      const { currency, tax, bags } = project;
      const key = JSON.stringify([sameName(name), price, pack, currency, tax]);
      const before = lines.get(key)?.line;
      const line = {
        ...{ name: before?.name ?? name, pack, currency },
        needed: (before?.needed ?? 0) + perBag * bags,
        projects: withName(before?.projects, project.name),
      };
      lines.set(key, { price, rules: project, line });
    }
  return [...lines.values()].map(({ price, rules, line }) => {
    const packs = Math.ceil(line.needed / line.pack - 1e-9);
    const toPay = price === null ? null : tillPrice(amountFor(price, packs, 1, line.currency), rules);
    return { ...line, packs, toPay };
  });
}

/** What is paid in all, by currency; null where a price is missing. */
export function listTotals({ cloths, pieces, supplies }: ShoppingList): ReadonlyMap<string, number | null> {
  const lines = [...cloths, ...pieces, ...supplies];
  const currencies = [...new Set(lines.map(({ currency }) => currency))];
  return new Map(
    currencies.map((currency) => [
      currency,
      sumOrNull(lines.filter((line) => line.currency === currency).map(({ toPay }) => toPay)),
    ]),
  );
}

function sameName(name: string): string {
  return name.trim().replace(/\s+/gu, " ").toLowerCase();
}

function withName(names: readonly string[] | undefined, name: string): readonly string[] {
  return [...new Set([...(names ?? []), name])];
}
