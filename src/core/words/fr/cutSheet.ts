import type { PieceLine } from "../../materials/cutPiece.ts";
import { pluralOf } from "../../units/numberWords.ts";
import type { Draft } from "../oneLanguage.ts";
import type { SheetTexts } from "../sheetTexts.ts";

const plural = pluralOf("fr");

const LINES: Readonly<Record<PieceLine["role"], string>> = {
  fold: "Pli",
  tape: "Adhésif",
  stitch: "Piqûre",
  mark: "Repère",
};

const of = (stock: string): string => (stock === "" ? "" : ` (${stock})`);
const costs = (more: string | null): string => (more === null ? "pas de tissu en plus" : `${more} de plus`);

/** The cut sheet in French. */
export const cutSheet: Draft<SheetTexts> = {
  title: "Fiche de coupe",
  forBags: (bags) => plural(bags, "Pour 1 sac.", `Pour ${bags} sacs\u00a0; les nombres valent pour tous ensemble.`),
  columns: {
    number: "n°",
    cut: "nombre",
    piece: "pièce",
    size: "droit-fil × travers",
    inches: "au 1/16 in\u00a0; ≈ à plus de 0,5 mm",
    grain: "droit-fil",
  },
  table: {
    heads: [
      "numéro",
      "nom",
      "matière",
      "sorte",
      "nombre",
      "en miroir",
      "droit-fil mm",
      "travers mm",
      "droit-fil in",
      "travers in",
      "droit-fil",
      "remarques",
    ],
    kinds: { strip: "bande", panel: "pièce" },
  },
  toBuy: "À acheter",
  alsoNeeded: "Il faut aussi",
  pictures: "Images",
  takeCare: "Attention",
  onRuler: (cut, finished) => `Avec la règle à ${cut}, la sangle finit large de ${finished}.`,
  grains: {
    lengthwise: "dans la longueur",
    crosswise: "dans la largeur",
    either: "longueur ou largeur",
    free: "tous les sens",
  },
  counted: (count, mirrored) => (mirrored > 0 ? `${count} + ${mirrored} en miroir` : String(count)),
  asDrawn: (count, mirrored) => `${count} comme dessinées, ${mirrored} en miroir`,
  copy: (number, all) => `${number} sur ${all}`,
  mirroredCopy: (number, all) => `en miroir ${number} sur ${all}`,
  labelNumber: (number) => `N° ${number}`,
  page: (number, all) => `${number} sur ${all}`,
  linesAt: (role, mm, inches) =>
    `${LINES[role]} à ${mm} mm${inches === null ? "" : ` (${inches} in)`} d’un bord long`,
  nothingLaid: "Rien n’a été placé.",
  used: (length, stock) => `Les pièces prennent ${length}${of(stock)}.`,
  usedByPlaced: (length, stock) => `Les pièces qui tiennent prennent ${length}${of(stock)}.`,
  usedProven: (length, stock) => `Les pièces prennent ${length}${of(stock)}\u00a0: c’est prouvé le plus court.`,
  usedBound: (length, stock, least, gap) =>
    `Les pièces prennent ${length}${of(stock)}\u00a0; aucun plan ne peut faire moins de ${least} (écart ${gap} %).`,
  spreadFolded:
    "Pliez le tissu en long, endroit contre endroit, lisière sur lisière. La pliure est le long du bord inférieur du plan. Épinglez ou lestez les deux couches et coupez à travers les deux\u00a0; ne coupez jamais le long de la pliure là où une pièce s’y trouve.",
  spreadLayers: (layers, length, faces, oneWay) =>
    faces === "up"
      ? `Posez ${layers} longueurs de ${length} l’une sur l’autre, chacune l’endroit dessus${oneWay ? " et le poil dans le même sens" : ""}, un bord long et un bout alignés. Épinglez ou lestez, et coupez à travers toutes.`
      : `Posez ${layers} longueurs de ${length} l’une sur l’autre, tour à tour endroit contre endroit et envers contre envers${oneWay ? ", une sur deux retournée de côté pour que le poil aille partout dans le même sens" : ""}, un bord long et un bout alignés. Épinglez ou lestez, et coupez à travers toutes.`,
  givesPairs: "Chaque pièce du plan donne autant de pièces en miroir que de pièces comme dessinées.",
  givesOnFold: "Les moitiés sur la pliure s’ouvrent\u00a0: chacune donne une pièce entière.",
  spreadRepeat: (repeat) =>
    `Commencez chaque longueur au même endroit du motif\u00a0: la suivante se coupe un nombre entier de rapports de ${repeat} plus loin.`,
  spreadOnLines:
    "Épinglez les lignes de chaque couche sur celles du dessous, le long des deux bords. Ne retournez les couches que de côté, jamais bout pour bout\u00a0: les lignes en travers restent ainsi à leur place.",
  spare: (list) => `Vient en plus, sans être demandé\u00a0: ${list}.`,
  sparePiece: (count, name, mirrored) => `${count} × ${name}${mirrored ? ", en miroir" : ""}`,
  leftoversSingly: "Les chutes et les peaux se coupent en une couche\u00a0; rien n’est placé sur elles ici.",
  buy: (length, cost) => `Acheter ${length}${cost === "" ? "" : `, ${cost}`}.`,
  offcuts: (sizes, smaller, layers) =>
    `Chutes utiles${layers > 1 ? `, ${layers} de chaque` : ""}\u00a0: ${sizes}${smaller > 0 ? ` et ${smaller} plus ${plural(smaller, "petite", "petites")}` : ""}.`,
  matched: (names) => `Raccordé sur le motif\u00a0: ${names}.`,
  firstLine: (along, across) =>
    `Posez le tissu de sorte qu’une ligne du motif soit à ${[
      ...(along === null ? [] : [`${along} de son bout coupé`]),
      ...(across === null ? [] : [`${across} de son bord inférieur`]),
    ].join(" et à ")}\u00a0; le plan part de là.`,
  onPattern: (name, scale) => `${name} sur son motif, 1\u00a0: ${scale}\u00a0; numéros comme dans la liste`,
  boundUnmatched: "Le minimum possible est calculé sans le raccord du motif.",
  ruleMatch: (first, second, more) =>
    `Raccorder ${first} à ${first === second ? "la suivante" : second}\u00a0: ${costs(more)}.`,
  ruleCentred: (part, more) => `${part} à sa place sur le motif\u00a0: ${costs(more)}.`,
  ruleOneWay: (more) => `Toutes les pièces dans un sens\u00a0: ${costs(more)}.`,
  ruleBand: (more) => `Les pièces de chaque sac d’une même longueur de rouleau\u00a0: ${costs(more)}.`,
  sameWay: (way) =>
    `Toutes les pièces sont dans un sens, flèches ${way === "up" ? "vers le haut du rouleau, loin du bout coupé" : "vers le bas du rouleau, vers le bout coupé"}.`,
  shadeBand: (length, each) =>
    ({
      one: `Les pièces de chaque sac se trouvent sur ${length} de rouleau, pour être d’une même nuance\u00a0: les premières de chaque sorte font le premier sac, et ainsi de suite. Gardez-les ensemble en coupant.`,
      twos: `Les pièces de deux sacs à la fois se trouvent sur ${length} de rouleau, pour être d’une même nuance\u00a0: les premières de chaque sorte font les deux premiers sacs, et ainsi de suite. Gardez-les ensemble en coupant.`,
      layer: `Dans chaque couche, les pièces de chaque sac se trouvent sur ${length} de rouleau, pour être d’une même nuance\u00a0: les premières de chaque sorte font le premier sac de la couche, et ainsi de suite. Gardez les couches séparées en coupant.`,
    })[each],
  bandNotKept: (why, layers) =>
    `Les pièces de chaque sac ne restent pas ensemble ici\u00a0: ${
      {
        uneven:
          "toutes les pièces ne viennent pas en même nombre pour chaque sac. Triez les pièces par nuance avant de coudre.",
        layers: `${layers} couches donnent ${layers} sacs à la fois. Faites ${layers} sacs ou un multiple, ou coupez le tissu en une couche.`,
        twos: "le tissu plié donne deux sacs à la fois. Faites un nombre pair de sacs, ou coupez le tissu en une couche.",
        hands:
          "en couches endroit contre endroit, les pièces gauches et droites d’un sac viennent de couches différentes. Posez toutes les couches l’endroit dessus.",
        fold: "certaines pièces sont trop grandes pour se placer à côté de la pliure. Coupez le tissu en une couche.",
      }[why]
    }`,
  boundUnbanded: "Le minimum possible est calculé sans garder les sacs ensemble.",
  repeat: (repeat) =>
    `Le motif se répète tous les ${repeat}. Le plan ne le raccorde pas d’une pièce à l’autre. Un rapport de plus est compté dans la longueur à acheter, assez pour commencer où vous voulez\u00a0; pour raccorder les coutures, coupez à l’œil à partir de la première pièce et achetez jusqu’à un rapport de plus par pièce qui doit en rejoindre une autre.`,
};
