import type { enShop } from "./enShop.ts";
import { frenchPlural as plural } from "./frMatching.ts";
import { words } from "./words.tsx";

/** What to buy, in French, a draft. */
export const frShop: typeof enShop = {
  heading: "Ce qu’il faut acheter",
  about:
    "Toutes les largeurs d’un magasin, et d’autres façons de faire les sangles. Chaque ligne est un plan entier, vérifié.",
  look: "Comparer largeurs et façons",
  lookAgain: "Comparer de nouveau",
  stop: "Cela suffit",
  progress: (found, all) => `${found} lignes sur ${all}`,
  stopped: (found, all) => `Arrêté après ${found} lignes sur ${all}.`,
  failed: "Ce calcul a échoué. C’est une faute du programme.",
  outdated: "Le projet a changé depuis : comparez de nouveau.",
  prices: "Ce que coûte chaque largeur",
  pricesAbout: (basis) =>
    `Pour ${basis}. Une largeur sans prix à elle coûte comme le tissu ; les magasins demandent plus pour du tissu large.`,
  priceOf: (width) => `Prix du tissu large de ${width}`,
  asCloth: "comme le tissu",
  way: "Largeur et sangles",
  buy: "Acheter",
  toPay: "À payer",
  bags: "Sacs par mètre",
  asPlanned: "comme prévu",
  used: (share) => `${share} utilisé`,
  bulk: (layers, thickness) => `${layers} ${plural(layers, "couche", "couches")}, ${thickness}`,
  best: "le mieux",
  nothing: "rien",
  bestIs: (way, length, money, rows) =>
    money === null
      ? `Le mieux : ${way} : ${length}, le moins de tissu de ${rows} façons. Aucun prix n’est donné.`
      : `Le mieux : ${way} : ${length} pour ${money}, le moins d’argent de ${rows} façons.`,
  saved: (money) => `C’est ${money} de moins que prévu.`,
  alike: (rows) =>
    `${rows} ${plural(rows, "autre façon coûte", "autres façons coûtent")} autant ; celle-ci a des sangles plus fines ou prend moins de tissu.`,
  growHeading: "Un sac de plus",
  growAbout: (bags) =>
    words("Ce que 1 à ", bags, " sacs prennent d’un rouleau neuf, tissu et sangles comme prévus."),
  growBags: "Nombre de sacs au plus",
  grow: "Les placer",
  growing: (bags) => `Placement de 1 à ${bags} sacs`,
  makes: (steps) => `${steps.map(({ length, bags }) => `${length} en font ${bags}`).join(", ")}.`,
  free: (bags) =>
    bags.length === 1
      ? `Le sac ${bags[0]} ne coûte pas de tissu.`
      : `Les sacs ${bags.join(", ")} ne coûtent pas de tissu.`,
  curve: "Sacs selon la longueur de tissu achetée",
  curveBags: "sacs",
  curveLength: "longueur à acheter",
};
