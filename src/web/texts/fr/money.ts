import type { Draft } from "../../../core/words/oneLanguage.ts";
import type { enMoney } from "../en/money.ts";
import { words } from "../words.tsx";

/** Costs and price in French, a draft. */
export const frMoney: Draft<typeof enMoney> = {
  heading: "Coûts et prix",
  settings: "Travail, frais généraux, taxe et fournitures",
  work: (minutes, rate, more) =>
    words("Un sac prend ", minutes, " minutes à ", rate, " l’heure, et ", more, " en plus."),
  minutesLabel: "Minutes de travail pour un sac",
  rateLabel: "Coût d’une heure de travail",
  moreLabel: "Ce qu’un sac coûte encore",
  nothing: "rien",
  overhead: (share, perBag) =>
    words("Les frais généraux sont ", share, " des matières et du travail, et ", perBag, " par sac."),
  overheadShareLabel: "Frais généraux en part",
  overheadLabel: "Frais généraux d’un sac",
  price: (by, share) => words("Le prix a une ", by, " de ", share, "."),
  byLabel: "Comment le prix se fait",
  by: { markup: "majoration (ajoutée au coût)", margin: "marge (ce qui reste du prix)" },
  shareLabel: "Majoration ou marge",
  tax: (rate, prices) =>
    words("La taxe est de ", rate, "\u00a0; les prix du tissu et des fournitures sont ", prices, "."),
  taxLabel: "Taux de la taxe",
  pricesLabel: "Prix avec ou sans taxe",
  prices: { with: "taxe comprise", without: "hors taxe" },
  onBags: "Je facture la taxe sur les sacs et récupère celle que je paie",
  supplies: "Fournitures pour chaque sac",
  supply: (name, perBag, price, pack) =>
    words(name, "\u00a0: ", perBag, " par sac, ", price, " le paquet de ", pack, "."),
  supplyName: (n) => `Fourniture ${n}\u00a0: nom`,
  supplyPerBag: (n) => `Fourniture ${n}\u00a0: combien par sac`,
  supplyPrice: (n) => `Fourniture ${n}\u00a0: prix du paquet`,
  supplyPack: (n) => `Fourniture ${n}\u00a0: combien dans un paquet`,
  newSupply: "Fourniture",
  addSupply: "Fourniture",
  removeSupply: (name) => `Supprimer ${name}`,
  noPrice: "pas de prix",
  what: "Pour tous les sacs",
  amount: "Montant",
  cloth: (name) => name,
  wasted: (money) => `dont ${money} ne finissent dans aucune pièce`,
  supplyLine: (name, needed) => `${name}, ${needed}`,
  packs: (money) => `paquets entiers\u00a0: ${money}`,
  workLine: "Travail",
  overheadLine: "Frais généraux",
  total: "Coût de tous les sacs",
  perBag: "Coût d’un sac",
  sellsAt: "Prix d’un sac",
  withTax: (money) => `${money} taxe comprise`,
  bothWays: (markup, margin) => `majoration ${markup}, marge ${margin}`,
  batch: "Prix de tous les sacs",
  left: (money) => `laisse ${money}`,
  unknown: "Il manque un prix\u00a0: donnez le sien à chaque tissu et à chaque fourniture.",
};
