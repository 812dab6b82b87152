import type { CupboardStepKind } from "../../../core/cupboard/cupboard.ts";
import { pluralOf } from "../../../core/units/numberWords.ts";
import type { Draft } from "../../../core/words/oneLanguage.ts";
import type { enCupboard } from "../en/cupboard.ts";

const plural = pluralOf("fr");

const DID: Readonly<Record<CupboardStepKind, string>> = {
  put: "le rangement",
  kept: "la mise de côté des chutes",
  took: "la sortie",
  "gave-back": "le retour",
  "let-go": "le retrait de la liste",
  noted: "la photo",
};

/** The cupboard in French, a draft. */
export const frCupboard: Draft<typeof enCupboard> = {
  heading: (inside, out) =>
    `Placard\u00a0: ${inside} ${plural(inside, "morceau", "morceaux")}${out > 0 ? `, ${plural(out, "1 sorti", `${out} sortis`)}` : ""}`,
  about: "Les chutes que vous gardez pour d’autres projets, dans ce navigateur.",
  offers: (count) => `Dans votre placard il y a ${plural(count, "un morceau", `${count} morceaux`)} de ce tissu`,
  useAll: "Les utiliser tous d’abord",
  use: (code) => `Utiliser ${code} d’abord`,
  took: (codes) => `${codes}\u00a0: sorti pour ce projet, utilisé avant tout le reste.`,
  giveBack: (code) => `Rendre ${code}`,
  gaveBack: (code) => `${code} est de retour dans le placard.`,
  letGo: (code) => `Retirer ${code} de la liste`,
  undo: (did) => `Annuler ${DID[did]}`,
  outFor: (project) => `sorti pour ${project}`,
  largest: (box) => `rectangle ${box}`,
  strip: (box) => `bande ${box}`,
  leftHeading: "Après la coupe",
  leftAbout: "Une fois les pièces coupées, gardez ce qui reste de ce tissu pour un autre projet.",
  shade: "Nuance",
  source: "Acheté chez",
  keep: "Garder les chutes",
  keepAgain: "Coupé une fois de plus",
  kept: (count, codes) =>
    count === 0
      ? "Il ne reste rien qui vaille d’être gardé."
      : `Gardé\u00a0: ${codes}. Écrivez ${plural(count, "ce code sur le morceau", "ces codes sur les morceaux")}.`,
  labels: (count) => `Imprimer ${plural(count, "une étiquette", `${count} étiquettes`)}`,
  label: (code) => `Imprimer l’étiquette de ${code}`,
  labelsAbout:
    "Trois sur huit par feuille, en grandeur réelle. Un téléphone lit le code\u00a0; il est aussi écrit à côté en grand.",
  useShade: (shade) => `Utiliser d’abord tout en ${shade}`,
  takeMore: "Ils sont en plus pour ce projet",
  photoOf: (code) => `Photo de ${code}`,
  addPhoto: (code) => `Photo de ${code}…`,
  photoUnread: (name) => `${name} ne peut pas être lu comme image. Prenez un JPEG ou un PNG.`,
  saveFile: "Enregistrer le placard dans un fichier",
  openFile: "Reprendre un fichier de placard",
  broughtIn: (count) => plural(count, "1 morceau repris.", `${count} morceaux repris.`),
};
