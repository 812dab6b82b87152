import { pluralOf } from "../../units/numberWords.ts";
import type { ShoppingTexts } from "../shoppingTexts.ts";

const plural = pluralOf("en");

/** Shopping lists in English. */
export const shopping: ShoppingTexts = {
  title: (projects) => `To buy for ${projects.join(", ")}`,
  groups: {
    cloth: "Cloth",
    pieces: "Cloth cut to size",
    hardware: "Hardware",
    consumables: "Thread, tape and the like",
    supplies: "Besides",
  },
  wide: (width) => `${width} wide`,
  packs: (packs, pack) => (pack === 1 ? String(packs) : `${packs} ${plural(packs, "pack", "packs")} of ${pack}`),
  total: (money) => `To pay: ${money}`,
  noTotal: (currency) => `Some prices in ${currency} are missing, so there is no sum.`,
  onTop: "What has no price here comes on top.",
  nothing: "There is nothing to buy.",
  open: {
    own: (stock) => `From what you have: ${stock}.`,
    buyLength: (stock, length, money) => `Buy ${length} of ${stock}${money === null ? "" : `, ${money}`}.`,
    buyPiece: (stock, money) => `Buy ${stock}${money === null ? "" : `, ${money}`}.`,
    nothing: "Nothing to buy: what you have is enough.",
    inAll: (money) => `In all ${money}: no other way that was looked at costs less.`,
    others: "Other ways:",
    other: (stocks, money, leftOut) =>
      `${stocks.length === 0 ? "nothing bought" : stocks.join(" + ")}: ${
        leftOut > 0 ? `${leftOut} ${plural(leftOut, "piece finds", "pieces find")} no place` : (money ?? "no price")
      }`,
    leftOut: (pieces) =>
      `${pieces} ${plural(pieces, "piece finds", "pieces find")} no place on any of it: a wider or a longer cloth is needed.`,
  },
  heads: ["group", "what", "amount", "to pay", "currency", "shop", "for"],
};
