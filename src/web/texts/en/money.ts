import { type Blank, words } from "../words.tsx";

const say = (text: string): string => text;

/** Costs and price of the bags. */
export const enMoney = {
  heading: say("Costs and price"),
  settings: say("Work, overhead, tax and supplies"),
  work: (minutes: Blank, rate: Blank, more: Blank) =>
    words("One bag takes ", minutes, " minutes at ", rate, " an hour, and ", more, " besides."),
  minutesLabel: say("Minutes of work on one bag"),
  rateLabel: say("What an hour of work costs"),
  moreLabel: say("Whatever else one bag costs"),
  nothing: say("nothing"),
  overhead: (share: Blank, perBag: Blank) =>
    words("Overhead is ", share, " of materials and work, and ", perBag, " a bag."),
  overheadShareLabel: say("Overhead as a share"),
  overheadLabel: say("Overhead of one bag"),
  price: (by: Blank, share: Blank) => words("The price has a ", by, " of ", share, "."),
  byLabel: say("How the price is made"),
  by: { markup: say("mark-up (added to the cost)"), margin: say("margin (left of the price)") },
  shareLabel: say("Mark-up or margin"),
  tax: (rate: Blank, prices: Blank) =>
    words("Tax is ", rate, "; the prices of cloth and supplies are ", prices, "."),
  taxLabel: say("Tax rate"),
  pricesLabel: say("Prices with or without tax"),
  prices: { with: say("with tax"), without: say("without tax") },
  onBags: say("I charge tax on bags and get back what I pay"),
  supplies: say("Supplies for every bag"),
  supply: (name: Blank, perBag: Blank, price: Blank, pack: Blank) =>
    words(name, ": ", perBag, " a bag, ", price, " for a pack of ", pack, "."),
  supplyName: (n: number) => `Supply ${n}: name`,
  supplyPerBag: (n: number) => `Supply ${n}: how many a bag`,
  supplyPrice: (n: number) => `Supply ${n}: price of a pack`,
  supplyPack: (n: number) => `Supply ${n}: how many in a pack`,
  newSupply: say("Supply"),
  addSupply: say("Supply"),
  removeSupply: (name: string) => `Remove ${name}`,
  noPrice: say("no price"),
  what: say("For all bags"),
  amount: say("Amount"),
  cloth: (name: string) => name,
  wasted: (money: string) => `${money} of it ends in no piece`,
  supplyLine: (name: string, needed: string) => `${name}, ${needed}`,
  packs: (money: string) => `whole packs: ${money}`,
  workLine: say("Work"),
  overheadLine: say("Overhead"),
  total: say("Cost of all bags"),
  perBag: say("Cost of one bag"),
  sellsAt: say("Price of one bag"),
  withTax: (money: string) => `${money} with tax`,
  bothWays: (markup: string, margin: string) => `mark-up ${markup}, margin ${margin}`,
  batch: say("Price of all bags"),
  left: (money: string) => `leaves ${money}`,
  unknown: say("A price is missing: give every cloth and supply its price."),
};
