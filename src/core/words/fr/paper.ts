import { pluralOf } from "../../units/numberWords.ts";
import type { Draft } from "../oneLanguage.ts";
import type { PaperTexts } from "../paperTexts.ts";

const plural = pluralOf("fr");

const nth = (number: number | null): string => (number === null ? "" : ` ${number}`);

/** Drawings and sheets in French. */
export const paper: Draft<PaperTexts> = {
  pieces: {
    mirrored: (name) => `${name}, en miroir`,
    onFold: (name) => `${name}, moitié, sur la pliure`,
    fold: "Pliure\u00a0: ne pas couper",
    copy: (number, of) => `${number} sur ${of}`,
    pattern: (count, mirrored, material) =>
      `couper ${count}${mirrored > 0 ? ` et ${mirrored} retournées` : ""}, ${material}`,
  },
  map: {
    bySize: "Pas sur ces feuilles, à couper à la règle d’après les mesures\u00a0:",
    printFirst: "Imprimez d’abord cette page, à 100 % (taille réelle), jamais «\u00a0ajuster à la page ».",
    measure:
      "Mesurez les deux carrés dans chaque sens. Si le grand s’écarte de plus d’un demi-millimètre, arrêtez\u00a0: entrez sa largeur et sa hauteur mesurées, et imprimez de nouveau.",
    printSheets: (count) => plural(count, "Imprimez la feuille.", `Imprimez les ${count} feuilles.`),
    overlapped:
      "Coupez chaque feuille le long de son cadre à gauche et en haut, là où une feuille s’y joint. Posez-la sur cette feuille jusqu’à la ligne intérieure, anneaux sur anneaux, et collez.",
    butted:
      "Coupez chaque feuille le long de son cadre à gauche et en haut, là où une feuille s’y joint. Mettez-les bord à bord, demi-anneaux contre demi-anneaux, et collez.",
    checkTape:
      "Vérifiez avec le mètre ruban dessiné le long du bord inférieur\u00a0: il part du bout coupé du tissu.",
    corrected: (across, down) => `Corrigé pour votre imprimante\u00a0: ×${across} en largeur, ×${down} en hauteur.`,
    eachWay: "dans chaque sens",
  },
  mats: {
    check: (side) => `${side} dans chaque sens\u00a0: ne pas couper`,
  },
  stocks: {
    roll: (number, width) => `rouleau${nth(number)}, large de ${width}`,
    remnant: (number, size, copy) => `chute${nth(number)}, ${size}${copy}`,
    skin: (number, size, copy) => `peau${nth(number)}, ${size}${copy}`,
    precut: (number, size, copy) => `coupon${nth(number)}, ${size}${copy}`,
    kinds: { roll: "rouleau", remnant: "chute", skin: "peau" },
    copy: (number, of) => `, ${number} sur ${of}`,
  },
  sheets: {
    sheet: (number, of) => `${number} sur ${of}`,
    lengthwise: "dans la longueur",
    oneWay: "dans la longueur, un seul sens",
    tenCm: "10 cm\u00a0: à mesurer avant de couper",
    roll: (usableWidth, used) => `largeur utile ${usableWidth}, pris ${used}`,
    patterns: "Patrons",
    oneOfEach: "une de chaque pièce courbe",
  },
  printer: {
    isTrue: "L’imprimante est juste\u00a0: pas de correction à faire.",
    fitted: (off, papers) => {
      const why = papers ? `, comme quand une page ${papers[0]} est ajustée sur ${papers[1]}` : "";
      return `Les deux sens s’écartent des mêmes ${off}${why}\u00a0: la fenêtre d’impression disait «\u00a0ajuster à la page ». Choisissez 100 % ou «\u00a0taille réelle\u00a0» et le bon papier, et imprimez encore le carré de contrôle.`;
    },
    off: (off, x, y) =>
      `L’imprimante s’écarte de ${off}\u00a0: les pages sont dessinées ×${x} en largeur et ×${y} en hauteur pour sortir justes.`,
    uneven: (x, y) =>
      `L’imprimante étire les deux sens différemment\u00a0: les pages sont dessinées ×${x} en largeur et ×${y} en hauteur pour sortir justes.`,
  },
};
