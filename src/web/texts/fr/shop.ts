import { pluralOf } from "../../../core/units/numberWords.ts";
import type { Draft } from "../../../core/words/oneLanguage.ts";
import type { enShop } from "../en/shop.ts";
import { words } from "../words.tsx";

const plural = pluralOf("fr");

/** What to buy, in French, a draft. */
export const frShop: Draft<typeof enShop> = {
  heading: "Ce qu’il faut acheter",
  about:
    "Toutes les largeurs d’un magasin, et d’autres façons de faire les sangles. Chaque ligne est un plan entier, vérifié.",
  look: "Comparer largeurs et façons",
  lookAgain: "Comparer de nouveau",
  stop: "Cela suffit",
  progress: (found, all) => `${found} lignes sur ${all}`,
  stopped: (found, all) => `Arrêté après ${found} lignes sur ${all}.`,
  failed: "Ce calcul a échoué. C’est une faute du programme.",
  outdated: "Le projet a changé depuis\u00a0: comparez de nouveau.",
  prices: "Ce que coûte chaque largeur",
  pricesAbout: (basis) =>
    `Pour ${basis}. Une largeur sans prix à elle coûte comme le tissu\u00a0; les magasins demandent plus pour du tissu large.`,
  priceOf: (width) => `Prix du tissu large de ${width}`,
  asCloth: "comme le tissu",
  way: "Largeur et sangles",
  buy: "Acheter",
  toPay: "À payer",
  bags: "Sacs par mètre",
  asPlanned: "comme prévu",
  alsoCrosswise: "aussi avec les sangles coupées en travers",
  alsoJoined: "aussi avec des sangles raccordées là où cela économise du tissu",
  crosswise: "en travers",
  joined: "raccordées",
  used: (share) => `${share} utilisé`,
  bulk: (layers, thickness) => `sangles ${layers} ${plural(layers, "couche", "couches")}, ${thickness}`,
  best: "le mieux",
  nothing: "rien",
  bestIs: (way, length, money, rows) =>
    money === null
      ? `Le mieux\u00a0: ${way}\u00a0: ${length}, le moins de tissu de ${rows} façons. Aucun prix n’est donné.`
      : `Le mieux\u00a0: ${way}\u00a0: ${length} pour ${money}, le moins d’argent de ${rows} façons.`,
  saved: (money) => `C’est ${money} de moins que prévu.`,
  alike: (rows) =>
    `${rows} ${plural(rows, "autre façon coûte", "autres façons coûtent")} autant\u00a0; celle-ci a des sangles plus fines ou prend moins de tissu.`,
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
  opened: {
    looking: "Les autres rouleaux et coupons sont encore comparés.",
    others: (count) => `Ce que ${plural(count, "une autre façon coûterait", `${count} autres façons coûteraient`)}`,
  },
  piece: {
    heading: "Que puis-je faire de ce morceau\u00a0?",
    about: (along, across) =>
      words("J’ai un morceau de ", along, " dans le droit-fil et de ", across, " en travers."),
    along: "Longueur du morceau dans le droit-fil",
    across: "Largeur du morceau en travers",
    take: (name) => `Prendre ${name}`,
    look: "Voir ce qu’il donne",
    looking: "Placement en cours",
    bags: (bags) =>
      bags === 0 ? "Il n’en sort pas un sac entier." : `Il en sort ${bags} ${plural(bags, "sac", "sacs")}.`,
    alone: (name, count) =>
      count === 0
        ? `Il n’en sort pas une seule «\u00a0${name} ».`
        : `Rien que «\u00a0${name}\u00a0»\u00a0: ${count}.`,
    besides: (name, count, bags) =>
      count === 0
        ? `À côté ${plural(bags, "du sac", "des sacs")} il n’y a plus de place pour «\u00a0${name} ».`
        : `À côté ${plural(bags, "du sac", "des sacs")}\u00a0: encore ${count} «\u00a0${name} ».`,
    notProven:
      "Chaque nombre a été placé et vérifié\u00a0; une recherche plus longue trouve peut-être place pour un de plus.",
    plan: "Son placement",
  },
  list: {
    link: "Liste d’achats",
    about:
      "Tout ce qu’il faut pour ce projet, magasin par magasin, arrondi à ce qui se vend. Ce que vous avez d’un tissu sert d’abord.",
    what: "Quoi",
    amount: "Combien",
    cost: "Prix",
    noPrice: "sans prix",
    savePdf: "Enregistrer pour imprimer",
    saveText: "Enregistrer en texte",
    saveCsv: "Enregistrer pour un tableur",
    waiting: "La liste suit dès que chaque tissu a un placement.",
  },
};
