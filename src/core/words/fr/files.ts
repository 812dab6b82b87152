import type { LaserRisk } from "../../materials/laser.ts";
import { pluralOf } from "../../units/numberWords.ts";
import type { FileTexts } from "../fileTexts.ts";
import type { Draft } from "../oneLanguage.ts";

const plural = pluralOf("fr");

const sheetsOf = (count: number, paper: string): string =>
  `${count} ${plural(count, "feuille", "feuilles")} ${paper}`;

const LASER_RISKS: Readonly<Record<LaserRisk, string>> = {
  pvc: "c’est du PVC",
  "unknown-coating": "personne n’a dit de quoi elle est enduite, elle compte donc comme du PVC",
  "unknown-polymer": "personne n’a dit de quoi elle est faite, elle compte donc comme du PVC",
};

/** Files in French. */
export const files: Draft<FileTexts> = {
  photoSheet: {
    title: "Feuille de repère",
    measure:
      "Imprimez en taille réelle. Ce trait doit mesurer 100 mm\u00a0; sinon, dites ce qu'il mesure (--line).",
    use: [
      "Posez-la à plat près du patron, à une main de distance, sur une table sombre. Ou dessinez le patron entre les anneaux.",
      "Les sept anneaux dans l'image, une lumière égale, pas d'ombre sur eux. Tenez-vous aussi haut que possible.",
    ],
  },
  titles: { cutSheet: "fiche de coupe", patterns: "patrons" },
  kinds: {
    sheets: "pages à assembler",
    longSheet: "une longue feuille pour un magasin de tirages",
    patterns: "une de chaque pièce courbe",
    mats: "tapis pour la machine à couper",
  },
  about: {
    cutSheetToPrint: "fiche de coupe à imprimer",
    cutSheetAsText: "fiche de coupe en texte",
    cutList: "liste de coupe pour un tableur",
    labels: "une étiquette par pièce",
    layPlan: "plan de coupe en vraie grandeur",
    forDrawing: (about) => `${about}, pour les programmes de dessin`,
    tiles: (sheets, paper) => `${sheetsOf(sheets, paper)} à assembler, et leur carte`,
    longSheets: (sheets, rollWidth) =>
      `${plural(sheets, "une longue feuille", `${sheets} longues feuilles`)} pour le rouleau de ${rollWidth} d’un magasin de tirages`,
    projector: "lignes épaisses et claires pour un projecteur",
    patterns: (sheets, paper) =>
      `une de chaque pièce courbe sur ${sheetsOf(sheets, paper)}\u00a0; coupez les rectangles d’après leurs mesures`,
    rulerCuts: (cuts) => `${cuts} coupes à la règle dans l’ordre, chacune dessinée`,
    rulerList: "coupes à la règle dans l’ordre",
    mat: (number, of) => `tapis ${number} sur ${of} pour la machine à couper`,
  },
  tooLarge: (names, material) =>
    `Trop grand pour le tapis de la machine\u00a0; coupez à la main ou assemblez\u00a0: ${names} (${material}).`,
  tooManySheets: (what, sheets, paper, most) =>
    `Pas de feuilles à assembler (${what})\u00a0: il y en aurait ${sheetsOf(sheets, paper)}, et ${most} au plus sont écrites. Prenez un papier plus grand, les pièces courbes seules, ou la longue feuille.`,
  tooNarrow: (file, strips, least) =>
    `Pas de ${file}\u00a0: ce plan est placé librement, et à la règle ${plural(strips, "une coupe enlèverait", `${strips} coupes enlèveraient`)} une bande de moins de ${least}. Pour couper à la règle, faites placer le tissu pour des coupes droites.`,
  tooManyLetters: (file, names, most) =>
    `${file}\u00a0: les noms sont écrits en texte, pas dessinés. Il y en a ${names}, et les lettres sont dessinées pour ${most} au plus, car peu de programmes ouvrent un fichier si gros. Pour des lettres dessinées, placez moins de sacs, ou coupez sur des tapis.`,
  laserRefusal: (material, risk) =>
    `Pas de fichier laser pour ${material}\u00a0: ${LASER_RISKS[risk]}, et le PVC dégage du chlorure d’hydrogène. Demandez le polymère au fournisseur et dites-le comme ${risk === "unknown-polymer" ? "polymère" : "enduction"} de la matière, ou coupez-la avec une lame.`,
};
