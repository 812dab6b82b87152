import type { CupboardStepKind } from "../../../core/cupboard/cupboard.ts";
import { pluralOf } from "../../../core/units/numberWords.ts";
import type { enCupboard } from "../en/cupboard.ts";

const plural = pluralOf("de");

const DID: Readonly<Record<CupboardStepKind, string>> = {
  put: "Hineinlegen",
  kept: "Aufheben",
  took: "Herausnehmen",
  "gave-back": "Zurücklegen",
  "let-go": "Streichen",
  noted: "Foto",
};

/** Leftovers that are kept for the next project, in German. */
export const deCupboard: typeof enCupboard = {
  heading: (inside, out) =>
    `Stoffschrank: ${inside} ${plural(inside, "Stück", "Stücke")}${out > 0 ? `, ${out} draußen` : ""}`,
  about: "Reste, die Sie für andere Projekte aufheben, in diesem Browser.",
  offers: (count) =>
    `In Ihrem Stoffschrank ${plural(count, "liegt ein Stück", `liegen ${count} Stücke`)} von diesem Stoff`,
  useAll: "Alle zuerst verbrauchen",
  use: (code) => `${code} zuerst verbrauchen`,
  took: (codes) => `${codes} für dieses Projekt herausgenommen: wird vor allem anderen verbraucht.`,
  giveBack: (code) => `${code} zurücklegen`,
  gaveBack: (code) => `${code} liegt wieder im Stoffschrank.`,
  letGo: (code) => `${code} von der Liste nehmen`,
  undo: (did) => `${DID[did]} zurücknehmen`,
  outFor: (project) => `draußen für ${project}`,
  largest: (box) => `Rechteck ${box}`,
  strip: (box) => `Streifen ${box}`,
  leftHeading: "Nach dem Zuschneiden",
  leftAbout: "Sind die Teile zugeschnitten, heben Sie auf, was von diesem Stoff übrig ist.",
  shade: "Farbton",
  source: "Gekauft bei",
  keep: "Reste aufheben",
  keepAgain: "Es wurde noch einmal zugeschnitten",
  kept: (count, codes) =>
    count === 0
      ? "Es bleibt nichts übrig, was sich aufzuheben lohnt."
      : `Aufgehoben: ${codes}. Schreiben Sie ${plural(count, "diesen Code auf das Stück", "diese Codes auf die Stücke")}.`,
  labels: (count) => `${plural(count, "Ein Schild", `${count} Schilder`)} drucken`,
  label: (code) => `Das Schild von ${code} drucken`,
  labelsAbout:
    "Drei mal acht auf einem Blatt, in wahrer Größe. Ein Telefon liest den Code; er steht auch groß daneben.",
  useShade: (shade: string) => `Alle in ${shade} zuerst nehmen`,
  takeMore: "Sie sind weitere für dieses Projekt",
  photoOf: (code: string) => `Foto von ${code}`,
  addPhoto: (code: string) => `Foto von ${code} …`,
  photoUnread: (name: string) => `${name} lässt sich nicht als Bild lesen. Nehmen Sie ein JPEG oder PNG.`,
  saveFile: "Stoffschrank in eine Datei speichern",
  openFile: "Stoffschrank-Datei hereinholen",
  broughtIn: (count) => `${count} ${plural(count, "Stück", "Stücke")} hereingeholt.`,
};
