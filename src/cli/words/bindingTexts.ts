import { pluralOf } from "../../core/units/numberWords.ts";
import { type ByLanguage, inEveryLanguage } from "../../core/words/words.ts";

/** What `binding` says, in one language; a language that lacks a sentence does not compile. */
export interface BindingTexts {
  readonly title: (isBias: boolean, width: string, length: string) => string;
  readonly joined: (lost: string) => string;
  readonly fromCloth: (cloth: string, length: string, strips: number, strip: string, isBias: boolean) => string;
  readonly fromSquare: (side: string, strips: number) => string;
  readonly tooShort: (cloth: string) => string;
}

const pluralEn = pluralOf("en");
const pluralDe = pluralOf("de");

const en: BindingTexts = {
  title: (isBias, width, length) =>
    `${isBias ? "True bias" : "Straight grain"}: strips cut ${width} wide, ${length} long in all`,
  joined: (lost) => `Each join takes ${lost} of the length.`,
  fromCloth: (cloth, length, strips, strip, isBias) =>
    `From cloth ${cloth} wide: ${length} of it, ${strips} ${pluralEn(strips, "strip", "strips")} of ${strip}${isBias ? ", from selvedge to selvedge at 45°" : " across it"}.`,
  fromSquare: (side, strips) =>
    `From a square: ${side} a side, ${strips} ${pluralEn(strips, "strip", "strips")} on both sides of its diagonal.`,
  tooShort: (cloth) => `Cloth ${cloth} wide gives no strips: a join takes all of one. Take wider cloth.`,
};

const de: BindingTexts = {
  title: (isBias, width, length) =>
    `${isBias ? "Im schrägen Fadenlauf" : "Im geraden Fadenlauf"}: Streifen ${width} breit zugeschnitten, zusammen ${length} lang`,
  joined: (lost) => `Jeder Ansatz nimmt ${lost} von der Länge.`,
  fromCloth: (cloth, length, strips, strip, isBias) =>
    `Aus Stoff von ${cloth} Breite: ${length} davon, ${strips} ${pluralDe(strips, "Streifen", "Streifen")} von ${strip}${isBias ? ", unter 45° von Webkante zu Webkante" : " quer darüber"}.`,
  fromSquare: (side, strips) =>
    `Aus einem Quadrat: ${side} Seitenlänge, ${strips} ${pluralDe(strips, "Streifen", "Streifen")} beiderseits der Diagonale.`,
  tooShort: (cloth) =>
    `Stoff von ${cloth} Breite gibt keine Streifen: Ein Ansatz nimmt einen ganzen. Nehmen Sie breiteren Stoff.`,
};

/** The sentences of each language. */
export const BINDING_TEXTS: ByLanguage<BindingTexts> = inEveryLanguage({ en, de });
