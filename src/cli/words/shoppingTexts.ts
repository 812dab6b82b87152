import type { Language } from "../../core/units/language.ts";
import { pluralOf } from "../../core/units/numberWords.ts";

/** What `shopping` says, in one language; a language that lacks a sentence does not compile. */
export interface ShoppingTexts {
  readonly title: (projects: readonly string[]) => string;
  readonly groups: Readonly<Record<"cloth" | "pieces" | "hardware" | "consumables" | "supplies", string>>;
  readonly wide: (width: string) => string;
  readonly packs: (packs: number, pack: number) => string;
  readonly total: (money: string) => string;
  readonly noTotal: (currency: string) => string;
  readonly nothing: string;
  readonly looking: (project: string) => string;
  /** Heads of the table as data. */
  readonly heads: readonly [
    group: string,
    what: string,
    amount: string,
    toPay: string,
    currency: string,
    shop: string,
    projects: string,
  ];
}

const pluralEn = pluralOf("en");
const pluralDe = pluralOf("de");

const en: ShoppingTexts = {
  title: (projects) => `To buy for ${projects.join(", ")}`,
  groups: {
    cloth: "Cloth",
    pieces: "Cloth cut to size",
    hardware: "Hardware",
    consumables: "Thread, tape and the like",
    supplies: "Besides",
  },
  wide: (width) => `${width} wide`,
  packs: (packs, pack) => (pack === 1 ? String(packs) : `${packs} ${pluralEn(packs, "pack", "packs")} of ${pack}`),
  total: (money) => `To pay: ${money}`,
  noTotal: (currency) => `Some prices in ${currency} are missing, so there is no sum.`,
  nothing: "There is nothing to buy.",
  looking: (project) => `Laying ${project}`,
  heads: ["group", "what", "amount", "to pay", "currency", "shop", "for"],
};

const de: ShoppingTexts = {
  title: (projects) => `Einzukaufen für ${projects.join(", ")}`,
  groups: {
    cloth: "Stoff",
    pieces: "Zugeschnittener Stoff",
    hardware: "Beschläge",
    consumables: "Garn, Band und dergleichen",
    supplies: "Außerdem",
  },
  wide: (width) => `${width} breit`,
  packs: (packs, pack) =>
    pack === 1 ? String(packs) : `${packs} ${pluralDe(packs, "Packung", "Packungen")} zu ${pack}`,
  total: (money) => `Zu zahlen: ${money}`,
  noTotal: (currency) => `Einige Preise in ${currency} fehlen, deshalb gibt es keine Summe.`,
  nothing: "Es gibt nichts einzukaufen.",
  looking: (project) => `${project} wird ausgelegt`,
  heads: ["Gruppe", "was", "Menge", "zu zahlen", "Währung", "Geschäft", "für"],
};

/** The sentences of each language. */
export const SHOPPING_TEXTS: Readonly<Record<Language, ShoppingTexts>> = { en, de };
