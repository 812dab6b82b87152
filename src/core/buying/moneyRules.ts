import type { Project } from "../project/project.ts";
import { partOf, shareOf } from "./money.ts";

/** What money is reckoned in: the project's currency and its tax. */
export type MoneyRules = Pick<Project, "currency" | "tax">;

/** A sum of whole coins; null when one of them is not known. */
export function sumOrNull(amounts: readonly (number | null)[]): number | null {
  return amounts.reduce<number | null>((sum, amount) => (sum === null || amount === null ? null : sum + amount), 0);
}

/** What is paid at the till for something that costs so much as the project has its prices. Smallest coins. */
export function tillPrice(cost: number, { tax }: MoneyRules): number {
  return tax === undefined || tax.inPrices ? cost : cost + shareOf(cost, tax.rate);
}

/** What a bag is charged with of something paid: without the tax where the maker gets it back. Smallest coins. */
export function countedCost(paid: number, { tax }: MoneyRules): number {
  return tax?.onBags === true ? paid - partOf(paid, tax.rate, 1 + tax.rate) : paid;
}
