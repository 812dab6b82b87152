import { pluralOf } from "../../units/numberWords.ts";
import type { Draft } from "../oneLanguage.ts";
import type { ShoppingTexts } from "../shoppingTexts.ts";

const plural = pluralOf("fr");
const noPlace = (pieces: number): string =>
  `${pieces} ${plural(pieces, "pièce ne trouve", "pièces ne trouvent")} pas de place`;

/** Shopping lists in French. */
export const shopping: Draft<ShoppingTexts> = {
  title: (projects) => `À acheter pour ${projects.join(", ")}`,
  groups: {
    cloth: "Tissu",
    pieces: "Tissu coupé sur mesure",
    hardware: "Bouclerie",
    consumables: "Fil, adhésif et autres",
    supplies: "En plus",
  },
  wide: (width) => `large de ${width}`,
  packs: (packs, pack) =>
    pack === 1 ? String(packs) : `${packs} ${plural(packs, "paquet", "paquets")} de ${pack}`,
  total: (money) => `À payer\u00a0: ${money}`,
  noTotal: (currency) => `Il manque des prix en ${currency}, il n’y a donc pas de somme.`,
  onTop: "Ce qui n’a pas de prix ici vient en plus.",
  nothing: "Il n’y a rien à acheter.",
  open: {
    own: (stock) => `Dans ce que vous avez\u00a0: ${stock}.`,
    buyLength: (stock, length, money) => `Acheter ${length} de ${stock}${money === null ? "" : `, ${money}`}.`,
    buyPiece: (stock, money) => `Acheter ${stock}${money === null ? "" : `, ${money}`}.`,
    nothing: "Rien à acheter\u00a0: ce que vous avez suffit.",
    inAll: (money) => `En tout ${money}\u00a0: aucune des autres façons regardées ne coûte moins.`,
    others: "Autres façons\u00a0:",
    other: (stocks, money, leftOut) =>
      `${stocks.length === 0 ? "rien d’acheté" : stocks.join(" + ")}\u00a0: ${leftOut > 0 ? noPlace(leftOut) : (money ?? "pas de prix")}`,
    leftOut: (pieces) => `${noPlace(pieces)} sur tout cela\u00a0: il faut un tissu plus large ou plus long.`,
  },
  heads: ["groupe", "quoi", "combien", "à payer", "monnaie", "magasin", "pour"],
};
