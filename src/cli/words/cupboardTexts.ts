import type { CupboardStepKind } from "../../core/cupboard/cupboard.ts";
import { pluralOf } from "../../core/units/numberWords.ts";
import { type ByLanguage, inEveryLanguage } from "../../core/words/words.ts";
import type { Flag } from "../cupboard/changeFile.ts";

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
  /** That another run holds the file: on which machine, for how long, and what helps. */
  readonly busy: (file: string, flag: Flag) => string;
  /** Machines whose flags were taken down, with how long they had stood. */
  readonly freed: (flags: readonly Flag[]) => string;
  /** A picture too large for the cupboard: only its name is kept. */
  readonly photoNamed: (file: string, kb: number, most: number) => string;
  readonly picture: (kb: number) => string;
  readonly notAPlan: (file: string) => string;
  readonly noSize: string;
}

/** How long something has been: minutes, hours or days, in whole ones. */
function age(ms: number): readonly [number, "minute" | "hour" | "day"] {
  const minutes = Math.max(1, Math.floor(ms / 60_000));
  if (minutes < 120) return [minutes, "minute"];
  const hours = Math.floor(minutes / 60);
  return hours < 48 ? [hours, "hour"] : [Math.floor(hours / 24), "day"];
}

function agoEn(ms: number): string {
  const [count, unit] = age(ms);
  return `${count} ${unit}${count === 1 ? "" : "s"}`;
}

function agoDe(ms: number): string {
  const [count, unit] = age(ms);
  const [one, many] = { minute: ["Minute", "Minuten"], hour: ["Stunde", "Stunden"], day: ["Tag", "Tagen"] }[unit]!;
  return `${count} ${count === 1 ? one : many}`;
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
  did: {
    put: "Put in",
    kept: "Kept",
    took: "Taken out",
    "gave-back": "Given back",
    "let-go": "Off the list",
    noted: "Noted",
  },
  undone: (did, on, project) => {
    const what = {
      put: "putting in",
      kept: "keeping leftovers",
      took: "taking out",
      "gave-back": "giving back",
      "let-go": "taking off the list",
      noted: "noting",
    };
    return `Undone: ${what[did]} of ${on}${project === null ? "" : ` for ${project}`}.`;
  },
  nothingLeft: "Nothing is left of them that is worth keeping.",
  labels: (count) => `${count} ${pluralEn(count, "label", "labels")}`,
  offered: (labels) => `Offered from the cupboard, to be used up first: ${labels}`,
  used: (labels) => `Cut from the cupboard: ${labels}`,
  noneUsed: "Nothing in the cupboard fits.",
  takeNext: (words) => `Before you cut: ${words}`,
  busy: (file, { isHere, host, pid, ms }) =>
    isHere
      ? `${file}: another run on this machine (process ${pid}) is changing it. Wait until it has ended, and try again.`
      : ms < 60_000
        ? `${file}: a run on the machine ${host} is changing it. Try again in a minute.`
        : `${file}: a run on the machine ${host} began to change it ${agoEn(ms)} ago and never ended; a change takes less than a second. If nobody is at work there, free the file: laywright cupboard free ${file}`,
  freed: (flags) =>
    flags.length === 0
      ? "Nothing holds the file."
      : `Freed; left behind by ${flags.map(({ host, ms }) => `${host}, ${agoEn(ms)} ago`).join("; ")}.`,
  photoNamed: (file, kb, most) =>
    `${file} has ${kb} kB: only its name is kept. A picture of at most ${most} kB is kept in the cupboard itself and seen on the page.`,
  picture: (kb) => `a picture of ${kb} kB`,
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
    noted: "Vermerkt",
  },
  undone: (did, on, project) => {
    const what = {
      put: "Hineinlegen",
      kept: "Aufheben von Resten",
      took: "Herausnehmen",
      "gave-back": "Zurücklegen",
      "let-go": "Streichen von der Liste",
      noted: "Vermerken",
    };
    return `Zurückgenommen: ${what[did]} vom ${on}${project === null ? "" : ` für ${project}`}.`;
  },
  nothingLeft: "Davon bleibt nichts übrig, was sich aufzuheben lohnt.",
  labels: (count) => `${count} ${pluralDe(count, "Etikett", "Etiketten")}`,
  offered: (labels) => `Aus dem Stoffschrank angeboten, zuerst zu verbrauchen: ${labels}`,
  used: (labels) => `Aus dem Stoffschrank zugeschnitten: ${labels}`,
  noneUsed: "Aus dem Stoffschrank passt nichts.",
  takeNext: (words) => `Vor dem Schneiden: ${words}`,
  busy: (file, { isHere, host, pid, ms }) =>
    isHere
      ? `${file}: Ein anderer Lauf auf diesem Rechner (Prozess ${pid}) ändert diese Datei. Warten Sie, bis er zu Ende ist, und versuchen Sie es noch einmal.`
      : ms < 60_000
        ? `${file}: Ein Lauf auf dem Rechner ${host} ändert diese Datei. Versuchen Sie es in einer Minute noch einmal.`
        : `${file}: Ein Lauf auf dem Rechner ${host} hat vor ${agoDe(ms)} begonnen, sie zu ändern, und ist nicht zu Ende gekommen; eine Änderung dauert keine Sekunde. Ist dort niemand am Werk, geben Sie die Datei frei: laywright cupboard free ${file}`,
  freed: (flags) =>
    flags.length === 0
      ? "Nichts hält die Datei."
      : `Freigegeben; zurückgelassen von ${flags.map(({ host, ms }) => `${host} vor ${agoDe(ms)}`).join("; ")}.`,
  photoNamed: (file, kb, most) =>
    `${file} hat ${kb} kB: Nur der Name wird behalten. Ein Bild von höchstens ${most} kB kommt in den Stoffschrank selbst und ist auf der Seite zu sehen.`,
  picture: (kb) => `ein Bild von ${kb} kB`,
  notAPlan: (file) => `${file} ist keine Plandatei. Nennen Sie die plan.json, die lay --out geschrieben hat.`,
  noSize: 'Geben Sie --size an, etwa "60 x 40 cm", zuerst entlang des Fadenlaufs.',
};

/** The sentences of each language. */
export const CUPBOARD_TEXTS: ByLanguage<CupboardTexts> = inEveryLanguage({ en, de });
