import { pluralOf } from "../../core/units/numberWords.ts";
import { type ByLanguage, inEveryLanguage } from "../../core/words/words.ts";

/** What `buy` says, in one language; a language that lacks a sentence does not compile. */
export interface BuyTexts {
  readonly title: (cloth: string, bags: number) => string;
  readonly columns: {
    readonly width: string;
    readonly construction: string;
    readonly direction: string;
    readonly joins: string;
    readonly buy: string;
    readonly toPay: string;
    readonly bags: string;
    readonly use: string;
    readonly bulk: string;
  };
  readonly directions: Readonly<Record<"either" | "lengthwise" | "crosswise", string>>;
  readonly joined: string;
  readonly whole: string;
  readonly asPlanned: string;
  readonly nothing: string;
  readonly bulk: (layers: number, thickness: string) => string;
  readonly shortest: string;
  readonly onePrice: (money: string, per: string) => string;
  readonly best: (way: string, length: string, money: string | null, ways: number) => string;
  readonly bestNothing: (way: string) => string;
  readonly saved: (money: string) => string;
  readonly alike: (rows: number) => string;
  readonly elsewhere: (parts: readonly string[]) => string;
  readonly more: (cloth: string, area: string) => string;
  readonly less: (cloth: string, area: string) => string;
  readonly bags: string;
  /** Beside a bag that is cut from what the bags before it need anyway. */
  readonly alsoFree: string;
  readonly makes: (length: string, bags: number, isAll: boolean) => string;
  /** What growing lengths make, `length` with its money. */
  readonly growing: (steps: readonly { readonly length: string; readonly bags: number }[]) => string;
  readonly freeBags: (bags: readonly number[]) => string;
  /** What a piece makes. */
  readonly piece: {
    readonly looking: (piece: string) => string;
    readonly bags: (piece: string, bags: number) => string;
    readonly strap: (name: string, alone: number, besides: number, bags: number) => string;
    readonly unreadable: (text: string) => string;
  };
  readonly looking: (bags: number) => string;
  readonly oneCloth: string;
  readonly noWay: string;
  readonly stopped: string;
  readonly notSold: (cloth: string) => string;
  readonly noCloth: string;
  readonly unreadableWidth: (text: string) => string;
  /** What to cut into, of several stocks. */
  readonly open: {
    readonly title: (cloth: string, bags: number) => string;
    readonly noChoice: (cloth: string) => string;
  };
}

const pluralEn = pluralOf("en");
const pluralDe = pluralOf("de");

const en: BuyTexts = {
  title: (cloth, bags) => `${cloth}, for ${bags} ${pluralEn(bags, "bag", "bags")}`,
  columns: {
    width: "width",
    construction: "straps",
    direction: "straps lie",
    joins: "straps in",
    buy: "buy",
    toPay: "to pay",
    bags: "bags a metre",
    use: "cloth used",
    bulk: "thickest strap",
  },
  directions: { either: "either way", lengthwise: "lengthwise", crosswise: "crosswise" },
  joined: "parts or one",
  whole: "one piece",
  asPlanned: "as planned",
  nothing: "nothing",
  bulk: (layers, thickness) => `${layers} ${pluralEn(layers, "layer", "layers")}, ${thickness}`,
  shortest: "proven shortest",
  onePrice: (money, per) =>
    `Every width is priced at ${money} for ${per}, as the project says. Shops ask more for wide cloth: give each width its price, as --widths "110 cm at 19, 150 cm at 24".`,
  best: (way, length, money, ways) =>
    money === null
      ? `Best: ${way}: ${length}, the least cloth of ${ways} ${pluralEn(ways, "way", "ways")} (no price is given).`
      : `Best: ${way}: ${length} for ${money}, the least money of ${ways} ${pluralEn(ways, "way", "ways")}.`,
  bestNothing: (way) => `Best: ${way}: nothing to buy, the cloth you have is enough.`,
  saved: (money) => `That is ${money} less than as planned.`,
  alike: (rows) =>
    `${rows} more ${pluralEn(rows, "way costs", "ways cost")} the same; this one has thinner straps or takes less cloth.`,
  elsewhere: (parts) => `Other cloths change too: ${parts.join(", ")}.`,
  more: (cloth, area) => `${cloth} ${area} more`,
  less: (cloth, area) => `${cloth} ${area} less`,
  bags: "bags",
  alsoFree: "this bag costs no cloth",
  makes: (length, bags, isAll) =>
    isAll && bags > 0
      ? `${length} makes all ${bags} ${pluralEn(bags, "bag", "bags")} asked about, or more.`
      : `${length} makes ${bags} ${pluralEn(bags, "bag", "bags")}.`,
  growing: (steps) => `${steps.map(({ length, bags }) => `${length} makes ${bags}`).join(", ")}.`,
  freeBags: (bags) =>
    bags.length === 1
      ? `Bag ${bags[0]} costs no cloth: the length for the bag before it is enough.`
      : `Bags ${bags.join(", ")} cost no cloth: the length for the bag before each is enough.`,
  piece: {
    looking: (piece) => `Looking what ${piece} makes`,
    bags: (piece, bags) =>
      `${piece} makes ${bags === 0 ? "no whole bag" : `${bags} ${pluralEn(bags, "bag", "bags")}`}.`,
    strap: (name, alone, besides, bags) =>
      `Of "${name}" alone it makes ${alone}${bags > 0 ? `; beside the ${pluralEn(bags, "bag", "bags")} ${besides} more` : ""}.`,
    unreadable: (text) => `--have: "${text}" is no length and no piece; write it like "1.3 m" or "45 cm x 60 cm".`,
  },
  looking: (bags) => `Laying 1 to ${bags} bags`,
  oneCloth: "Name one cloth with --material: --up-to tells of one at a time.",
  noWay: "No way of these can be cut.",
  stopped: "Stopped: the ways after this one were not looked at.",
  notSold: (cloth) => `"${cloth}" is not sold off a roll, or nothing is cut from it.`,
  noCloth: "Nothing in this project is cut from cloth off a roll.",
  unreadableWidth: (text) =>
    `--widths: "${text}" is not a width with its price; write them like "110 cm at 12.50, 54 in".`,
  open: {
    title: (cloth, bags) => `${cloth}, for ${bags} ${pluralEn(bags, "bag", "bags")}: what to cut into`,
    noChoice: (cloth) =>
      `"${cloth}" is bought from one roll only: there is nothing to choose. Give the cloth more open rolls, or stock marked "toBuy".`,
  },
};

const de: BuyTexts = {
  title: (cloth, bags) => `${cloth}, für ${bags} ${pluralDe(bags, "Tasche", "Taschen")}`,
  columns: {
    width: "Breite",
    construction: "Riemen",
    direction: "Riemen liegen",
    joins: "Riemen aus",
    buy: "kaufen",
    toPay: "zu zahlen",
    bags: "Taschen je Meter",
    use: "Stoff genutzt",
    bulk: "dickster Riemen",
  },
  directions: { either: "längs oder quer", lengthwise: "längs", crosswise: "quer" },
  joined: "Teilen oder einem Stück",
  whole: "einem Stück",
  asPlanned: "wie geplant",
  nothing: "nichts",
  bulk: (layers, thickness) => `${layers} ${pluralDe(layers, "Lage", "Lagen")}, ${thickness}`,
  shortest: "bewiesen am kürzesten",
  onePrice: (money, per) =>
    `Jede Breite ist mit ${money} für ${per} gerechnet, wie es im Projekt steht. Breiter Stoff kostet meist mehr: Geben Sie jeder Breite ihren Preis, etwa --widths "110 cm zu 19; 150 cm zu 24".`,
  best: (way, length, money, ways) =>
    money === null
      ? `Am besten: ${way}: ${length}, der wenigste Stoff von ${ways} ${pluralDe(ways, "Weg", "Wegen")} (ein Preis fehlt).`
      : `Am besten: ${way}: ${length} für ${money}, das wenigste Geld von ${ways} ${pluralDe(ways, "Weg", "Wegen")}.`,
  bestNothing: (way) => `Am besten: ${way}: nichts zu kaufen, der vorhandene Stoff reicht.`,
  saved: (money) => `Das sind ${money} weniger als wie geplant.`,
  alike: (rows) =>
    `${rows} ${pluralDe(rows, "weiterer Weg kostet", "weitere Wege kosten")} gleich viel; dieser hat dünnere Riemen oder braucht weniger Stoff.`,
  elsewhere: (parts) => `Auch andere Stoffe ändern sich: ${parts.join("; ")}.`,
  more: (cloth, area) => `${cloth} ${area} mehr`,
  less: (cloth, area) => `${cloth} ${area} weniger`,
  bags: "Taschen",
  alsoFree: "diese Tasche kostet keinen Stoff",
  makes: (length, bags, isAll) =>
    isAll && bags > 0
      ? `${length} reichen für alle ${bags} gefragten Taschen oder mehr.`
      : `${length} reichen für ${bags} ${pluralDe(bags, "Tasche", "Taschen")}.`,
  growing: (steps) => `${steps.map(({ length, bags }) => `${length}: ${bags}`).join("; ")}.`,
  freeBags: (bags) =>
    bags.length === 1
      ? `Tasche ${bags[0]} kostet keinen Stoff: Die Länge für die Tasche davor reicht.`
      : `Die Taschen ${bags.join(", ")} kosten keinen Stoff: Die Länge für die Tasche davor reicht jeweils.`,
  piece: {
    looking: (piece) => `Es wird geprüft, was ${piece} ergibt`,
    bags: (piece, bags) =>
      `${piece} ergibt ${bags === 0 ? "keine ganze Tasche" : `${bags} ${pluralDe(bags, "Tasche", "Taschen")}`}.`,
    strap: (name, alone, besides, bags) =>
      `Von "${name}" allein ergibt es ${alone}${bags > 0 ? `; neben ${pluralDe(bags, "der Tasche", "den Taschen")} noch ${besides}` : ""}.`,
    unreadable: (text) =>
      `--have: "${text}" ist keine Länge und kein Stück; schreiben Sie etwa "1,3 m" oder "45 cm x 60 cm".`,
  },
  looking: (bags) => `1 bis ${bags} Taschen werden gelegt`,
  oneCloth: "Nennen Sie einen Stoff mit --material: --up-to gilt für einen.",
  noWay: "Keiner dieser Wege lässt sich zuschneiden.",
  stopped: "Abgebrochen: Die Wege danach wurden nicht mehr geprüft.",
  notSold: (cloth) => `"${cloth}" wird nicht von der Rolle verkauft, oder es wird nichts daraus zugeschnitten.`,
  noCloth: "In diesem Projekt wird nichts aus Stoff von der Rolle zugeschnitten.",
  unreadableWidth: (text) =>
    `--widths: "${text}" ist keine Breite mit ihrem Preis; schreiben Sie etwa "110 cm zu 12,50; 54 in".`,
  open: {
    title: (cloth, bags) => `${cloth}, für ${bags} ${pluralDe(bags, "Tasche", "Taschen")}: was angeschnitten wird`,
    noChoice: (cloth) =>
      `"${cloth}" wird nur von einer Rolle gekauft: Es gibt nichts zu wählen. Geben Sie dem Stoff weitere offene Rollen oder Stücke mit "toBuy".`,
  },
};

/** The sentences of each language. */
export const BUY_TEXTS: ByLanguage<BuyTexts> = inEveryLanguage({ en, de });
