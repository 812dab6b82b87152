import type { CupboardStepKind } from "../../core/cupboard/cupboard.ts";
import type { Language } from "../../core/units/language.ts";
import { pluralOf } from "../../core/units/numberWords.ts";

/** What `cupboard` says, in one language; a language that lacks a sentence does not compile. */
export interface CupboardTexts {
  readonly columns: {
    readonly label: string;
    readonly cloth: string;
    readonly shade: string;
    readonly size: string;
    readonly largest: string;
    readonly strip: string;
    readonly kept: string;
    readonly where: string;
  };
  readonly inside: string;
  readonly outFor: (project: string, on: string) => string;
  readonly source: string;
  readonly photo: string;
  readonly note: string;
  readonly noPieces: string;
  readonly count: (inside: number, out: number) => string;
  /** What was done, before the labels. */
  readonly did: Readonly<Record<CupboardStepKind, string>>;
  readonly undone: (did: CupboardStepKind, on: string, project: string | null) => string;
  readonly nothingLeft: string;
  readonly labels: (count: number) => string;
  readonly offered: (labels: string) => string;
  readonly used: (labels: string) => string;
  readonly noneUsed: string;
  readonly takeNext: (words: string) => string;
  readonly busy: (file: string, flag: string) => string;
  readonly notAPlan: (file: string) => string;
  readonly noSize: string;
}

const pluralEn = pluralOf("en");
const pluralDe = pluralOf("de");

const en: CupboardTexts = {
  columns: {
    label: "label",
    cloth: "cloth",
    shade: "shade",
    size: "size",
    largest: "largest rectangle",
    strip: "longest strip",
    kept: "since",
    where: "where",
  },
  inside: "in the cupboard",
  outFor: (project, on) => `out for ${project}, ${on}`,
  source: "bought at",
  photo: "photo",
  note: "note",
  noPieces: "The cupboard is empty.",
  count: (inside, out) =>
    `${inside} ${pluralEn(inside, "piece", "pieces")} in the cupboard${out > 0 ? `, ${out} out` : ""}.`,
  did: { put: "Put in", kept: "Kept", took: "Taken out", "gave-back": "Given back", "let-go": "Off the list" },
  undone: (did, on, project) => {
    const what = {
      put: "putting in",
      kept: "keeping leftovers",
      took: "taking out",
      "gave-back": "giving back",
      "let-go": "taking off the list",
    };
    return `Undone: ${what[did]} of ${on}${project === null ? "" : ` for ${project}`}.`;
  },
  nothingLeft: "Nothing is left of them that is worth keeping.",
  labels: (count) => `${count} ${pluralEn(count, "label", "labels")}`,
  offered: (labels) => `Offered from the cupboard, to be used up first: ${labels}`,
  used: (labels) => `Cut from the cupboard: ${labels}`,
  noneUsed: "Nothing in the cupboard fits.",
  takeNext: (words) => `Before you cut: ${words}`,
  busy: (file, flag) =>
    `${file}: another run has been changing it for 20 seconds, perhaps on another machine. If none is at work, delete ${flag} and try again.`,
  notAPlan: (file) => `${file} is not a plan file. Give the plan.json that lay --out wrote.`,
  noSize: 'Give --size, such as "60 x 40 cm", along the grain first.',
};

const de: CupboardTexts = {
  columns: {
    label: "Etikett",
    cloth: "Stoff",
    shade: "Farbton",
    size: "Größe",
    largest: "größtes Rechteck",
    strip: "längster Streifen",
    kept: "seit",
    where: "wo",
  },
  inside: "im Stoffschrank",
  outFor: (project, on) => `für ${project} draußen, ${on}`,
  source: "gekauft bei",
  photo: "Foto",
  note: "Notiz",
  noPieces: "Der Stoffschrank ist leer.",
  count: (inside, out) =>
    `${inside} ${pluralDe(inside, "Stück", "Stücke")} im Stoffschrank${out > 0 ? `, ${out} draußen` : ""}.`,
  did: {
    put: "Hineingelegt",
    kept: "Aufgehoben",
    took: "Herausgenommen",
    "gave-back": "Zurückgelegt",
    "let-go": "Von der Liste genommen",
  },
  undone: (did, on, project) => {
    const what = {
      put: "Hineinlegen",
      kept: "Aufheben von Resten",
      took: "Herausnehmen",
      "gave-back": "Zurücklegen",
      "let-go": "Streichen von der Liste",
    };
    return `Zurückgenommen: ${what[did]} vom ${on}${project === null ? "" : ` für ${project}`}.`;
  },
  nothingLeft: "Davon bleibt nichts übrig, was sich aufzuheben lohnt.",
  labels: (count) => `${count} ${pluralDe(count, "Etikett", "Etiketten")}`,
  offered: (labels) => `Aus dem Stoffschrank angeboten, zuerst zu verbrauchen: ${labels}`,
  used: (labels) => `Aus dem Stoffschrank zugeschnitten: ${labels}`,
  noneUsed: "Aus dem Stoffschrank passt nichts.",
  takeNext: (words) => `Vor dem Schneiden: ${words}`,
  busy: (file, flag) =>
    `${file}: Seit 20 Sekunden ändert ein anderer Lauf diese Datei, vielleicht auf einem anderen Rechner. Wenn keiner am Werk ist, löschen Sie ${flag} und versuchen Sie es noch einmal.`,
  notAPlan: (file) => `${file} ist keine Plandatei. Nennen Sie die plan.json, die lay --out geschrieben hat.`,
  noSize: 'Geben Sie --size an, etwa "60 x 40 cm", zuerst entlang des Fadenlaufs.',
};

/** The sentences of each language. */
export const CUPBOARD_TEXTS: Readonly<Record<Language, CupboardTexts>> = { en, de };
