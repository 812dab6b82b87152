import { pluralOf } from "../../../core/units/numberWords.ts";
import type { enShop } from "../en/shop.ts";
import { words } from "../words.tsx";

const plural = pluralOf("de");

/** Was von einem Stoff zu kaufen ist. */
export const deShop: typeof enShop = {
  heading: "Was kaufen",
  about:
    "Jede Breite, die es im Laden gibt, und andere Arten, die Riemen zu machen. Jede Zeile ist ein ganzer, geprüfter Plan.",
  look: "Breiten und Wege vergleichen",
  lookAgain: "Neu vergleichen",
  stop: "Das genügt",
  progress: (found, all) => `${found} von ${all} Zeilen`,
  stopped: (found, all) => `Nach ${found} von ${all} Zeilen beendet.`,
  failed: "Das ließ sich nicht ausrechnen. Das ist ein Fehler im Programm.",
  outdated: "Das Projekt hat sich seitdem geändert: Vergleichen Sie neu.",
  prices: "Was jede Breite kostet",
  pricesAbout: (basis) =>
    `Für ${basis}. Eine Breite ohne eigenen Preis kostet so viel wie der Stoff; breiter Stoff ist im Laden meist teurer.`,
  priceOf: (width) => `Preis des Stoffs, ${width} breit`,
  asCloth: "wie der Stoff",
  way: "Breite und Riemen",
  buy: "Kaufen",
  toPay: "Zu zahlen",
  bags: "Taschen je Meter",
  asPlanned: "wie geplant",
  alsoCrosswise: "auch mit quer geschnittenen Riemen",
  alsoJoined: "auch mit angesetzten Riemen, wo das Stoff spart",
  crosswise: "quer",
  joined: "angesetzt",
  used: (share) => `${share} genutzt`,
  bulk: (layers, thickness) => `Riemen ${layers} ${plural(layers, "Lage", "Lagen")}, ${thickness}`,
  best: "am besten",
  nothing: "nichts",
  bestIs: (way, length, money, rows) =>
    money === null
      ? `Am besten: ${way}: ${length}, der wenigste Stoff von ${rows} Wegen. Ein Preis fehlt.`
      : `Am besten: ${way}: ${length} für ${money}, das wenigste Geld von ${rows} Wegen.`,
  saved: (money) => `Das sind ${money} weniger als wie geplant.`,
  alike: (rows) =>
    `${rows} ${plural(rows, "weiterer Weg kostet", "weitere Wege kosten")} gleich viel; dieser hat dünnere Riemen oder braucht weniger Stoff.`,
  growHeading: "Eine Tasche mehr",
  growAbout: (bags) =>
    words("Was 1 bis ", bags, " Taschen von einer neuen Rolle brauchen, so wie Stoff und Riemen geplant sind."),
  growBags: "Wie viele Taschen höchstens",
  grow: "Auslegen",
  growing: (bags) => `1 bis ${bags} Taschen werden ausgelegt`,
  makes: (steps) => `${steps.map(({ length, bags }) => `${length} ergeben ${bags}`).join(", ")}.`,
  free: (bags) =>
    bags.length === 1
      ? `Tasche ${bags[0]} kostet keinen Stoff.`
      : `Die Taschen ${bags.join(", ")} kosten keinen Stoff.`,
  curve: "Taschen gegen die Länge, die gekauft wird",
  curveBags: "Taschen",
  curveLength: "Länge zu kaufen",
  opened: {
    looking: "Andere Rollen und Zuschnitte werden noch abgewogen.",
    others: (count) => `Was ${count} ${plural(count, "anderer Weg", "andere Wege")} kosten würden`,
  },
  piece: {
    heading: "Was ergibt dieses Stück?",
    about: (along, across) => words("Ich habe ein Stück, ", along, " im Fadenlauf und ", across, " quer."),
    along: "Länge des Stücks im Fadenlauf",
    across: "Breite des Stücks quer",
    take: (name) => `${name} nehmen`,
    look: "Prüfen, was es ergibt",
    looking: "Wird ausgelegt",
    bags: (bags) =>
      bags === 0 ? "Eine ganze Tasche ergibt es nicht." : `Es ergibt ${bags} ${plural(bags, "Tasche", "Taschen")}.`,
    alone: (name, count) =>
      count === 0 ? `Von „${name}“ ergibt es nicht eines.` : `Nichts als „${name}“: ${count}.`,
    besides: (name, count, bags) =>
      count === 0
        ? `Neben ${plural(bags, "der Tasche", "den Taschen")} ist für „${name}“ kein Platz mehr.`
        : `Neben ${plural(bags, "der Tasche", "den Taschen")}: noch ${count} von „${name}“.`,
    notProven: "Jede Zahl wurde ausgelegt und geprüft; eine längere Suche findet vielleicht Platz für eines mehr.",
    plan: "Der Plan dazu",
  },
  list: {
    link: "Einkaufsliste",
    about:
      "Alles, was dieses Projekt braucht, Laden für Laden, aufgerundet auf das, was verkauft wird. Was Sie von einem Stoff haben, wird zuerst verbraucht.",
    what: "Was",
    amount: "Wie viel",
    cost: "Preis",
    noPrice: "kein Preis",
    savePdf: "Zum Drucken sichern",
    saveText: "Als Text sichern",
    saveCsv: "Für eine Tabelle sichern",
    waiting: "Die Liste folgt, sobald jeder Stoff einen Plan hat.",
  },
};
