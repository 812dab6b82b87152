import { pluralOf } from "../../units/numberWords.ts";
import type { ShoppingTexts } from "../shoppingTexts.ts";

const plural = pluralOf("de");

/** Shopping lists in German. */
export const shopping: ShoppingTexts = {
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
    pack === 1 ? String(packs) : `${packs} ${plural(packs, "Packung", "Packungen")} zu ${pack}`,
  total: (money) => `Zu zahlen: ${money}`,
  noTotal: (currency) => `Einige Preise in ${currency} fehlen, deshalb gibt es keine Summe.`,
  onTop: "Was hier keinen Preis hat, kommt noch dazu.",
  nothing: "Es gibt nichts einzukaufen.",
  open: {
    own: (stock) => `Aus dem, was da ist: ${stock}.`,
    buyLength: (stock, length, money) => `Kaufen: ${length} von ${stock}${money === null ? "" : `, ${money}`}.`,
    buyPiece: (stock, money) => `Kaufen: ${stock}${money === null ? "" : `, ${money}`}.`,
    nothing: "Nichts zu kaufen: Was da ist, reicht.",
    inAll: (money) => `Zusammen ${money}: Kein anderer Weg, der geprüft wurde, kostet weniger.`,
    others: "Andere Wege:",
    other: (stocks, money, leftOut) =>
      `${stocks.length === 0 ? "nichts gekauft" : stocks.join(" + ")}: ${
        leftOut > 0
          ? `${leftOut} ${plural(leftOut, "Teil findet", "Teile finden")} keinen Platz`
          : (money ?? "ohne Preis")
      }`,
    leftOut: (pieces) =>
      `${pieces} ${plural(pieces, "Teil findet", "Teile finden")} nirgends Platz: Es braucht breiteren oder längeren Stoff.`,
  },
  heads: ["Gruppe", "was", "Menge", "zu zahlen", "Währung", "Geschäft", "für"],
};
