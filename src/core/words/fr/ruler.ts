import { pluralOf } from "../../units/numberWords.ts";
import type { Draft } from "../oneLanguage.ts";
import type { RulerTexts } from "../rulerTexts.ts";

const plural = pluralOf("fr");

/** Ruler cuts in French. */
export const ruler: Draft<RulerTexts> = {
  title: (project, cloth) => `${project}\u00a0: coupes à la règle dans ${cloth}`,
  byRuler: "À la règle",
  counts: (cuts, settings) =>
    `${cuts} ${plural(cuts, "coupe", "coupes")}, ${settings} ${plural(settings, "réglage", "réglages")} de la règle`,
  measure:
    "Chaque coupe va de bord à bord du morceau nommé. Mesurez depuis le dernier bord coupé, dans le droit-fil.",
  naming:
    "Les longueurs sont A, B, C depuis le bout coupé\u00a0; A1 est la première bande de la longueur A, A1B la deuxième partie de cette bande.",
  curved:
    "Une pièce à bords courbes ou penchés se coupe d’abord en rectangle, «\u00a0son cadre\u00a0»\u00a0; coupez ensuite son contour.",
  boxOf: (name) => `${name}, son cadre`,
  wholeCloth: "le tissu",
  straighten: (margin) =>
    `Mettez le bout coupé d’équerre avec la lisière${margin === "" ? "" : `, ${margin} en retrait, et rognez un bord long d’autant`}`,
  crosscut: (cloth, at) => `Coupez ${cloth} en travers à ${at}`,
  rip: (cloth, at) => `Coupez ${cloth} en long à ${at}`,
  again: (at) => `encore ${at}`,
  setRuler: "réglez la règle",
  rulerStands: "règle sans changement",
  comesOff: (what) => `donne ${what}`,
  remains: (what) => `laisse ${what}`,
  offcut: "chute",
  cutFurther: (name) => `${name}, à couper encore`,
  freeMatched: "Placé librement\u00a0: aucun plan à coupes droites n’a été trouvé où chaque pièce garde le motif.",
  freePinned:
    "Placé librement\u00a0: des coupes droites de bord à bord ne séparent pas les pièces épinglées. Retirez leurs épingles, ou épinglez-les en rangées.",
  freeAslant:
    "Placé librement\u00a0: certaines pièces ne peuvent être que de biais, où des coupes de bord à bord ne les séparent pas.",
  freeCramped:
    "Placé librement\u00a0: avec des coupes droites seules, toutes les pièces ne tiennent pas sur ce tissu.",
  moreStages: (stages) =>
    `Un tissu de longueur limitée, avec des défauts ou des pièces épinglées ne se place pas en peu de tours\u00a0: ce plan en demande ${stages}.`,
  narrowStrips: (count, least) =>
    count === 1
      ? `Une coupe détache une bande plus étroite que ${least}\u00a0: aucun plan presque aussi bon qui l’évite n’a été trouvé.`
      : `${count} coupes détachent une bande plus étroite que ${least}\u00a0: aucun plan presque aussi bon qui les évite n’a été trouvé.`,
  skinFirst:
    "Ce morceau n’a pas de bord droit\u00a0: tracez-y son droit-fil, et mesurez en long et en travers depuis ses points les plus éloignés.",
  page: (number, all) => `${number} sur ${all}`,
};
