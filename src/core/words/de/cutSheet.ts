import type { PieceLine } from "../../materials/cutPiece.ts";
import { pluralOf } from "../../units/numberWords.ts";
import type { SheetTexts } from "../sheetTexts.ts";

const plural = pluralOf("de");

const LINES: Readonly<Record<PieceLine["role"], string>> = {
  fold: "Falzen",
  tape: "Kleben",
  stitch: "Nähen",
  mark: "Marke",
};

const of = (stock: string): string => (stock === "" ? "" : ` (${stock})`);

/** The cut sheet in German. */
export const cutSheet: SheetTexts = {
  title: "Zuschnittblatt",
  forBags: (bags) => plural(bags, "Für 1 Tasche.", `Für ${bags} Taschen; die Zahlen gelten für alle zusammen.`),
  columns: {
    number: "Nr.",
    cut: "Anzahl",
    piece: "Teil",
    size: "längs × quer",
    inches: "auf 1/16 in; ≈ über 0,5 mm ab",
    grain: "Fadenlauf",
  },
  table: {
    heads: [
      "Nummer",
      "Name",
      "Material",
      "Art",
      "Anzahl",
      "gespiegelt",
      "längs mm",
      "quer mm",
      "längs in",
      "quer in",
      "Fadenlauf",
      "Hinweise",
    ],
    kinds: { strip: "Streifen", panel: "Teil" },
  },
  toBuy: "Zu kaufen",
  alsoNeeded: "Außerdem nötig",
  pictures: "Bilder",
  takeCare: "Vorsicht",
  onRuler: (cut, finished) => `Mit dem Lineal auf ${cut} wird der Riemen ${finished} breit.`,
  grains: { lengthwise: "längs", crosswise: "quer", either: "längs oder quer", free: "beliebig" },
  counted: (count, mirrored) => (mirrored > 0 ? `${count} + ${mirrored} gespiegelt` : String(count)),
  asDrawn: (count, mirrored) => `${count} wie gezeichnet, ${mirrored} gespiegelt`,
  copy: (number, all) => `${number} von ${all}`,
  mirroredCopy: (number, all) => `gespiegelt ${number} von ${all}`,
  labelNumber: (number) => `Nr. ${number}`,
  page: (number, all) => `${number} von ${all}`,
  linesAt: (role, mm, inches) =>
    `${LINES[role]} bei ${mm} mm${inches === null ? "" : ` (${inches} in)`} von einer Längskante`,
  nothingLaid: "Es wurde nichts gelegt.",
  used: (length, stock) => `Die Teile brauchen ${length}${of(stock)}.`,
  usedByPlaced: (length, stock) => `Die Teile, die passen, brauchen ${length}${of(stock)}.`,
  usedProven: (length, stock) =>
    `Die Teile brauchen ${length}${of(stock)}: nachweislich die kürzestmögliche Länge.`,
  usedBound: (length, stock, least, gap) =>
    `Die Teile brauchen ${length}${of(stock)}; kein Plan kann kürzer sein als ${least} (Abstand ${gap} %).`,
  spreadFolded:
    "Den Stoff längs falten, rechts auf rechts, Webkante auf Webkante. Der Bruch liegt an der Unterkante des Plans. Beide Lagen stecken oder beschweren und durch beide schneiden; nie am Bruch entlang, wo ein Teil daran liegt.",
  spreadLayers: (layers, length, faces, oneWay) =>
    faces === "up"
      ? `${layers} Längen von ${length} aufeinanderlegen, jede mit der rechten Seite nach oben${oneWay ? " und den Strich in derselben Richtung" : ""}, eine Längskante und ein Ende bündig. Stecken oder beschweren und durch alle schneiden.`
      : `${layers} Längen von ${length} aufeinanderlegen, im Wechsel rechts auf rechts und links auf links${oneWay ? ", jede zweite seitlich gewendet, damit der Strich überall gleich läuft" : ""}, eine Längskante und ein Ende bündig. Stecken oder beschweren und durch alle schneiden.`,
  givesPairs: "Jedes Teil des Plans gibt so viele Spiegelbilder wie Teile wie gezeichnet.",
  givesOnFold: "Hälften am Bruch werden aufgeklappt: jede gibt ein ganzes Teil.",
  spreadRepeat: (repeat) =>
    `Jede Länge an derselben Stelle des Musters beginnen: die nächste wird eine ganze Zahl Rapporte von ${repeat} weiter geschnitten.`,
  spreadOnLines:
    "Die Linien jeder Lage an beiden Kanten entlang auf die der unteren stecken. Lagen nur seitlich wenden, nie über ein Ende: Querlinien bleiben dann an ihrem Platz.",
  spare: (list) => `Kommt außerdem heraus, ohne gebraucht zu werden: ${list}.`,
  sparePiece: (count, name, mirrored) => `${count} × ${name}${mirrored ? ", gespiegelt" : ""}`,
  leftoversSingly: "Reste und Häute werden einlagig geschnitten; hier ist nichts auf sie gelegt.",
  buy: (length, cost) => `${length} kaufen${cost === "" ? "" : `, ${cost}`}.`,
  offcuts: (sizes, smaller, layers) =>
    `Brauchbare Reste${layers > 1 ? `, je ${layers}` : ""}: ${sizes}${smaller > 0 ? ` und ${smaller} ${plural(smaller, "kleinerer", "kleinere")}` : ""}.`,
  matched: (names) => `Auf das Muster abgestimmt: ${names}.`,
  firstLine: (along, across) =>
    `Den Stoff so legen, dass eine Linie des Musters ${[
      ...(along === null ? [] : [`${along} von der Schnittkante`]),
      ...(across === null ? [] : [`${across} von der unteren Kante`]),
    ].join(" und ")} liegt; davon geht der Plan aus.`,
  onPattern: (name, scale) => `${name} auf dem Muster, 1 : ${scale}; Nummern wie in der Liste`,
  boundUnmatched: "Die kürzestmögliche Länge ist ohne die Musterpassung gerechnet.",
  ruleMatch: (first, second, more) =>
    `${first} passend ${first === second ? "zum nächsten" : `zu ${second}`}: ${more === null ? "kein Mehrverbrauch" : `${more} mehr`}.`,
  ruleCentred: (part, more) =>
    `${part} an seinem Platz im Muster: ${more === null ? "kein Mehrverbrauch" : `${more} mehr`}.`,
  ruleOneWay: (more) => `Alle Teile in einer Richtung: ${more === null ? "kein Mehrverbrauch" : `${more} mehr`}.`,
  ruleBand: (more) =>
    `Die Teile jeder Tasche aus einem Stück der Rolle: ${more === null ? "kein Mehrverbrauch" : `${more} mehr`}.`,
  sameWay: (way) =>
    `Alle Teile liegen in einer Richtung, mit den Pfeilen ${way === "up" ? "die Rolle hinauf, von der Schnittkante weg" : "die Rolle hinab, zur Schnittkante hin"}.`,
  shadeBand: (length, each) =>
    ({
      one: `Die Teile jeder Tasche liegen auf ${length} der Rolle beisammen, damit ihr Farbton gleich ist: Die ersten jedes Teils geben die erste Tasche, und so fort. Beim Zuschneiden zusammenhalten.`,
      twos: `Die Teile von je zwei Taschen liegen auf ${length} der Rolle beisammen, damit ihr Farbton gleich ist: Die ersten jedes Teils geben die ersten zwei Taschen, und so fort. Beim Zuschneiden zusammenhalten.`,
      layer: `In jeder Lage liegen die Teile jeder Tasche auf ${length} der Rolle beisammen, damit ihr Farbton gleich ist: Die ersten jedes Teils geben die erste Tasche der Lage, und so fort. Beim Zuschneiden die Lagen getrennt halten.`,
    })[each],
  bandNotKept: (why, layers) =>
    `Die Teile jeder Tasche bleiben hier nicht beisammen: ${
      {
        uneven:
          "Nicht jedes Teil kommt für jede Tasche gleich oft vor. Sortieren Sie die Teile vor dem Nähen nach Farbton.",
        layers: `${layers} Lagen geben je ${layers} Taschen auf einmal. Machen Sie ${layers} Taschen oder ein Vielfaches davon, oder schneiden Sie den Stoff einlagig.`,
        twos: "Gefalteter Stoff gibt zwei Taschen auf einmal. Machen Sie eine gerade Zahl von Taschen, oder schneiden Sie den Stoff einlagig.",
        hands:
          "Liegen die Lagen rechts auf rechts, kommen linke und rechte Teile einer Tasche aus verschiedenen Lagen. Legen Sie alle Lagen mit der rechten Seite nach oben.",
        fold: "Manche Teile sind zu groß, um neben dem Bruch zu liegen. Schneiden Sie den Stoff einlagig.",
      }[why]
    }`,
  boundUnbanded: "Die kürzestmögliche Länge ist ohne das Zusammenhalten der Taschen gerechnet.",
  repeat: (repeat) =>
    `Das Muster wiederholt sich alle ${repeat}. Der Plan passt es nicht von Teil zu Teil an. Ein Rapport mehr ist in der Kauflänge: genug, um das Muster anfangen zu lassen, wo Sie wollen. Soll es an Nähten passen, schneiden Sie nach Augenmaß vom ersten Teil aus und kaufen bis zu einen Rapport mehr für jedes Teil, das an ein anderes anschließen muss.`,
};
