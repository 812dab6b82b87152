import { withDecimalSign } from "../../core/units/numberWords.ts";
import { type ByLanguage, inEveryLanguage } from "../../core/words/words.ts";
import type { CliTexts } from "./cliTexts.ts";
import { de } from "./de.ts";
import { en } from "./en.ts";

/** What is said of a wrong command line in one language; a language that lacks a sentence does not compile. */
export interface UsageTexts {
  readonly usage: string;
  readonly noCommand: (name: string, nearest: string | null) => string;
  readonly listed: string;
  readonly noOption: (name: string, nearest: string | null) => string;
  readonly twice: (option: string) => string;
  readonly noValue: (option: string) => string;
  readonly needsValue: (option: string) => string;
  readonly needs: (command: string, operands: string) => string;
  readonly oneTooMany: (operand: string) => string;
  readonly number: (option: string, whole: boolean, least: number, most: number, text: string) => string;
  readonly oneOf: (option: string, words: readonly string[], text: string) => string;
  readonly missing: (option: string) => string;
  readonly either: (one: string, other: string) => string;
  readonly oneOfThese: (options: readonly string[]) => string;
  readonly together: (one: string, other: string) => string;
  readonly onlyWith: (one: string, other: string) => string;
  readonly notWith: (one: string, other: string) => string;
  readonly chooseAndCut: string;
  readonly choicesOrChoose: string;
  readonly choicesWith: (other: string) => string;
  readonly tooManyEnds: string;
  readonly settings: (text: string) => string;
  readonly pair: (option: string, text: string) => string;
  readonly pages: (text: string) => string;
  readonly sheets: (text: string) => string;
  readonly pixels: (option: string, count: number, text: string) => string;
  readonly shares: (option: string, text: string) => string;
  readonly noThickness: string;
  readonly needsReadings: string;
  readonly needsThickness: string;
}

const usageEn: UsageTexts = {
  usage: "Usage",
  noCommand: (name, nearest) => `there is no command "${name}"${nearest ? `; did you mean ${nearest}?` : ""}`,
  listed: "laywright --help lists the commands.",
  noOption: (name, nearest) => `there is no option ${name}${nearest ? `; did you mean --${nearest}?` : ""}`,
  twice: (option) => `--${option} is given twice`,
  noValue: (option) => `--${option} takes no value`,
  needsValue: (option) => `--${option} needs a value`,
  needs: (command, operands) => `${command} needs ${operands}`,
  oneTooMany: (operand) => `"${operand}" is one word too many`,
  number: (option, whole, least, most, text) =>
    `--${option} must be ${whole ? "a whole number" : "a number"} from ${least} to ${most}, not "${text}"`,
  oneOf: (option, words, text) => `--${option} must be one of ${words.join(", ")}, not "${text}"`,
  missing: (option) => `--${option} is missing`,
  either: (one, other) => `give either --${one} or --${other}`,
  oneOfThese: (options) =>
    `give one of ${options
      .slice(0, -1)
      .map((name) => `--${name}`)
      .join(", ")} and --${options.at(-1)}`,
  together: (one, other) => `--${one} and --${other} go together`,
  onlyWith: (one, other) => `--${one} says something only with --${other}`,
  notWith: (one, other) => `--${other} has no use for --${one}: leave one of them out`,
  chooseAndCut: "--choose looks at every way of cutting; it does not go with --cut",
  choicesOrChoose: "give either --choices, to compare, or --choose, to take one",
  choicesWith: (other) => `--choices compares plans; it does not go with --${other} (--choose takes one of them)`,
  tooManyEnds: "--ends names one or two ends",
  settings: (text) => `--settings takes a JSON group such as '{"paper": "A3"}', not ${text}`,
  pair: (option, text) => `--${option} takes two lengths such as "99.2 x 100.4 mm", not "${text}"`,
  pages: (text) => `--pages takes pages such as "1-4,6", not "${text}"`,
  pixels: (option, count, text) =>
    `--${option} takes ${count} points in pixels such as "230,160", with blanks between, not "${text}"`,
  sheets: (text) => `--sheets takes sheets in a row and rows such as "3x2", not "${text}"`,
  shares: (option, text) => `--${option} takes a share such as "3 %", or "5 % x 2 %" (at most 30 %), not "${text}"`,
  noThickness: "--thickness must be more than 0 for a fold test",
  needsReadings: "--into needs --measured-width and --measured-setback",
  needsThickness: "--into needs the measured --thickness",
};

const decimal = (value: number): string => withDecimalSign(String(value), "de");

const usageDe: UsageTexts = {
  usage: "Aufruf",
  noCommand: (name, nearest) => `es gibt keinen Befehl "${name}"${nearest ? `; meinen Sie ${nearest}?` : ""}`,
  listed: "laywright --help nennt die Befehle (auf Englisch).",
  noOption: (name, nearest) => `es gibt keine Option ${name}${nearest ? `; meinen Sie --${nearest}?` : ""}`,
  twice: (option) => `--${option} ist zweimal angegeben`,
  noValue: (option) => `--${option} nimmt keinen Wert`,
  needsValue: (option) => `--${option} braucht einen Wert`,
  needs: (command, operands) => `${command} braucht ${operands}`,
  oneTooMany: (operand) => `"${operand}" ist eine Angabe zu viel`,
  number: (option, whole, least, most, text) =>
    `--${option} muss eine ${whole ? "ganze Zahl" : "Zahl"} von ${decimal(least)} bis ${decimal(most)} sein, nicht "${text}"`,
  oneOf: (option, words, text) => `--${option} muss eines von ${words.join(", ")} sein, nicht "${text}"`,
  missing: (option) => `--${option} fehlt`,
  either: (one, other) => `geben Sie entweder --${one} oder --${other} an`,
  oneOfThese: (options) =>
    `geben Sie genau eines an: ${options
      .slice(0, -1)
      .map((name) => `--${name}`)
      .join(", ")} oder --${options.at(-1)}`,
  together: (one, other) => `--${one} und --${other} gehören zusammen`,
  onlyWith: (one, other) => `--${one} sagt nur mit --${other} etwas`,
  notWith: (one, other) => `--${other} hat keine Verwendung für --${one}: lassen Sie eines davon weg`,
  chooseAndCut: "--choose betrachtet jede Art zu schneiden; es geht nicht mit --cut zusammen",
  choicesOrChoose: "geben Sie entweder --choices an, um zu vergleichen, oder --choose, um einen Plan zu nehmen",
  choicesWith: (other) =>
    `--choices vergleicht Pläne; es geht nicht mit --${other} zusammen (--choose nimmt einen)`,
  tooManyEnds: "--ends nennt ein oder zwei Enden",
  settings: (text) => `--settings nimmt eine JSON-Gruppe wie '{"paper": "A3"}', nicht ${text}`,
  pair: (option, text) => `--${option} nimmt zwei Längen wie "99,2 x 100,4 mm", nicht "${text}"`,
  pages: (text) => `--pages nimmt Seiten wie "1-4,6", nicht "${text}"`,
  pixels: (option, count, text) =>
    `--${option} nimmt ${count} Punkte in Pixeln wie "230,160", durch Leerzeichen getrennt, nicht "${text}"`,
  sheets: (text) => `--sheets nimmt Blätter je Reihe und Reihen wie "3x2", nicht "${text}"`,
  shares: (option, text) =>
    `--${option} nimmt einen Anteil wie "3 %" oder "5 % x 2 %" (höchstens 30 %), nicht "${text}"`,
  noThickness: "--thickness muss für eine Faltprobe größer als 0 sein",
  needsReadings: "--into braucht --measured-width und --measured-setback",
  needsThickness: "--into braucht die gemessene --thickness",
};

/** The sentences of each language. */
export const USAGE_TEXTS: ByLanguage<UsageTexts> = inEveryLanguage({ en: usageEn, de: usageDe });

/** What the commands say by language. */
export const CLI_TEXTS: ByLanguage<CliTexts> = inEveryLanguage({ en, de });
