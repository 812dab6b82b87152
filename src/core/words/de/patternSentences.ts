import type {
  LeftOutThing,
  PatternLimit,
  PatternProblem,
  UnreadableReason,
} from "../../problems/patternProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

const times = (count: number, one: string, many: string): string => (count === 1 ? `1 ${one}` : `${count} ${many}`);

const UNREADABLE: Readonly<Record<UnreadableReason, readonly [what: string, remedy: string]>> = {
  "not-xml": [
    "ist kein vollständiges XML",
    "Öffnen Sie sie in dem Programm, das sie geschrieben hat, und sichern Sie sie neu als einfaches SVG.",
  ],
  "not-svg": ["ist XML, aber keine SVG-Zeichnung", "Sichern Sie den Schnitt als SVG, DXF oder PDF."],
  entities: ["verwendet Entitäten, die nicht nur Text sind", "Sichern Sie sie neu als einfaches SVG."],
  "not-dxf": ["ist keine vollständige DXF-Zeichnung", "Sichern Sie sie neu als Text-DXF (R12 oder 2000)."],
  "binary-dxf": ["ist ein binäres DXF", "Sichern Sie sie als Text-DXF (ASCII)."],
  packed: ["ist gepackt", "Entpacken Sie sie zuerst und geben Sie die Datei darin an."],
  "not-pdf": ["ist kein vollständiges PDF", "Laden oder sichern Sie sie neu."],
  "no-such-page": ["hat diese Seite nicht", "Nennen Sie Seiten, die sie hat."],
  "not-image": ["ist kein lesbares Bild", "Sichern Sie sie als PNG oder JPEG."],
  damaged: ["ist beschädigt oder abgeschnitten", "Laden oder sichern Sie sie neu."],
  "unknown-kind": ["ist keine hier bekannte Art von Schnitt", "Geben Sie SVG, DXF, PDF, PNG oder JPEG an."],
};

const LIMITS: Readonly<Record<PatternLimit, (limit: number) => string>> = {
  megabytes: (limit) => `ist größer als ${limit} MB`,
  lines: (limit) => `hat mehr als ${limit} Linien`,
  points: (limit) => `hat mehr als ${limit} Punkte`,
  "style-rules": (limit) => `hat mehr als ${limit} Stilregeln`,
  nesting: (limit) => `ist mehr als ${limit} Ebenen tief verschachtelt`,
  copies: (limit) => `wiederholt ihre Teile mehr als ${limit}-mal`,
  pages: (limit) => `hat mehr als ${limit} Seiten`,
  megapixels: (limit) => `hat mehr als ${limit} Millionen Pixel`,
  seconds: (limit) => `braucht zum Lesen mehr als ${limit} s`,
  memory: (limit) => `braucht mehr als ${limit} MB Speicher`,
};

const THINGS: Readonly<Record<LeftOutThing, readonly [one: string, many: string]>> = {
  picture: ["Bild", "Bilder"],
  script: ["Skript, das nicht ausgeführt wurde", "Skripte, die nicht ausgeführt wurden"],
  "outside-reference": [
    "Verweis auf eine andere Datei, die nicht geöffnet wurde",
    "Verweise auf andere Dateien, die nicht geöffnet wurden",
  ],
  entity: ["Entität", "Entitäten"],
  hidden: ["verborgenes Ding", "verborgene Dinge"],
  "off-layer": ["Ding auf einer ausgeschalteten Ebene", "Dinge auf ausgeschalteten Ebenen"],
  "frame-of-text": ["Textrahmen", "Textrahmen"],
  "unknown-shape": ["Ding unbekannter Art", "Dinge unbekannter Art"],
  solid: ["gefüllte Fläche oder Körper", "gefüllte Flächen oder Körper"],
  dimension: ["Bemaßung", "Bemaßungen"],
};

const UNITS: Readonly<Record<string, string>> = {
  px72: "72 px je Zoll",
  px90: "90 px je Zoll",
  px96: "96 px je Zoll",
  mm: "Millimeter",
  cm: "Zentimeter",
  m: "Meter",
  in: "Zoll",
  ft: "Fuß",
};
const unitWords = (unit: string): string => UNITS[unit] ?? unit;

/** Eigene Schnitte auf Deutsch. */
export const patternSentences: SentenceTable<PatternProblem> = {
  "pattern-unreadable": ({ reason, line }) => ({
    what: `Die Datei ${UNREADABLE[reason][0]}${line > 0 ? ` (Zeile ${line})` : ""}.`,
    remedy: UNREADABLE[reason][1],
  }),
  "pattern-encrypted": () => ({
    what: "Das PDF ist mit einem Passwort verschlossen.",
    remedy: "Öffnen Sie es mit dem Passwort und sichern oder drucken Sie es als PDF ohne Passwort.",
  }),
  "pattern-empty": () => ({
    what: "Es ist keine sichtbare Linie darin.",
    remedy:
      "Sehen Sie nach, ob die Linien verborgen sind, auf einer ausgeschalteten Ebene liegen oder nur ein Bild sind.",
  }),
  "pattern-photo-unscaled": () => ({
    what: "Nichts sagt, wie groß das Bild ist: Weder unser Fotoblatt noch ein Blatt bekannter Größe wurde darin gefunden, und keine zwei Punkte sind angegeben.",
    remedy:
      "Drucken Sie unser Fotoblatt und legen Sie es neben den Schnitt, alle sieben Ringe sichtbar; oder legen Sie den Schnitt auf ein helles Blatt bekannter Größe vor dunklem Grund und nennen Sie das Blatt; oder geben Sie zwei Punkte und ihren Abstand an.",
  }),
  "pattern-photo-error": ({ errorMm, hasPerspective }, say) => ({
    what: `Umrisse aus diesem Bild können um etwa ${say(errorMm)} abweichen${hasPerspective ? "; die Perspektive wurde herausgerechnet" : ""}.`,
    remedy: hasPerspective
      ? "Messen Sie eine Länge am Schnitt nach."
      : "Das gilt nur, wenn die Kamera senkrecht nach unten sah; ein Blatt bekannter Größe nimmt die Perspektive heraus.",
  }),
  "pattern-pages-apart": ({ count }) => ({
    what: `Die ${count} Seiten liegen nebeneinander: Nichts hier Bekanntes sagt, wie sie zusammengehören.`,
    remedy:
      "Sagen Sie, wie viele Blätter in einer Reihe liegen und wie breit der Rand ist, der abgeschnitten wird.",
  }),
  "pattern-too-much": ({ of, limit }) => ({
    what: `Die Datei ${LIMITS[of](limit)}; das braucht kein Schnitt.`,
    remedy: "Sichern Sie nur die Linien des Schnitts, ohne Füllungen und Bilder.",
  }),
  "pattern-unit-assumed": ({ unit }) => ({
    what: `Die Datei sagt nicht, wie groß sie ist; angenommen wurden ${unitWords(unit)}.`,
    remedy: "Vergleichen Sie die Maße mit dem Papier; die Datei lässt sich auch in einer anderen Einheit lesen.",
  }),
  "pattern-scale-doubtful": ({ sideMm, wouldBeMm, unit, mended }, say) => ({
    what: mended
      ? `Gelesen als ${unitWords(unit)}: Die längste Seite ist jetzt ${say(wouldBeMm)}, nicht ${say(sideMm)}.`
      : `Die längste Seite ergibt ${say(sideMm)}; als ${unitWords(unit)} wären es ${say(wouldBeMm)}.`,
    remedy: mended
      ? "Vergleichen Sie eine Seite mit dem Papier."
      : `Vergleichen Sie mit dem Papier; die Abhilfe "scale" oder die Einheit ${quoted(unit)} liest es so.`,
  }),
  "pattern-size-unlikely": ({ sizeMm, unit }, say) => ({
    what: `Der ganze Schnitt ist nur ${say(sizeMm)} groß.`,
    remedy: `Wenn das nicht stimmt, liest die Einheit ${quoted(unit)} ihn als ${unitWords(unit)}.`,
  }),
  "pattern-path-broken": ({ at }) => ({
    what: `Der Pfad ist nach ${at === 1 ? "1 Zeichen" : `${at} Zeichen`} fehlerhaft; er ist bis dahin gezeichnet.`,
    remedy: "Sehen Sie nach, ob etwas fehlt, und zeichnen oder sichern Sie ihn neu.",
  }),
  "pattern-numbers-unusable": ({ count }) => ({
    what: `${times(count, "Linie hat", "Linien haben")} Zahlen, die keine oder viel zu groß sind, und ${count === 1 ? "ist" : "sind"} unbrauchbar.`,
    remedy: "Sehen Sie in der Zeichnung nach und zeichnen Sie sie neu.",
  }),
  "pattern-flat": ({ count }) => ({
    what: `${times(count, "Linie umschließt", "Linien umschließen")} nichts: Alle Punkte sind eine Linie oder ein Punkt.`,
    remedy: "Sehen Sie nach, ob in einer Richtung auf nichts verkleinert wurde.",
  }),
  "pattern-left-out": ({ thing, count }) => ({
    what: `Weggelassen: ${times(count, ...THINGS[thing])}.`,
    remedy:
      thing === "hidden" || thing === "off-layer"
        ? "Wenn Sie es brauchen, blenden Sie es in der Zeichnung ein."
        : "Wenn Sie es brauchen, zeichnen Sie es als Linien.",
  }),
  "pattern-gap": ({ gapMm, xMm, yMm, mended }, say) => ({
    what: `Der Umriss ist bei (${say(xMm)}; ${say(yMm)}) um ${say(gapMm)} offen${mended ? "; er wurde gerade geschlossen" : ""}.`,
    remedy: mended ? "Sehen Sie es sich dort an." : 'Die Abhilfe "gaps" schließt ihn mit einer Geraden.',
  }),
  "pattern-doubled": ({ other, mended }) => ({
    what: `Die Linie liegt ganz auf ${quoted(other)}${mended ? "; sie wurde entfernt" : ""}.`,
    remedy: mended ? "Jetzt wird nichts zweimal geschnitten." : 'Die Abhilfe "doubles" entfernt die zweite.',
  }),
  "pattern-partly-doubled": ({ other, doubledMm, mended }, say) => ({
    what: `${say(doubledMm)} davon ${mended ? "lagen" : "liegen"} auf einem Teil von ${quoted(other)}${mended ? " und wurden entfernt" : ""}.`,
    remedy: mended ? "Jetzt wird nichts zweimal geschnitten." : 'Die Abhilfe "doubles" entfernt dieses Stück.',
  }),
  "pattern-crosses-itself": ({ xMm, yMm, count, more, mended }, say) => ({
    what: `Der Umriss kreuzt sich ${more ? "mindestens " : ""}${count}-mal selbst, zuerst bei (${say(xMm)}; ${say(yMm)})${mended ? "; seine größte Fläche wurde behalten" : ""}.`,
    remedy: mended ? "Sehen Sie es sich dort an." : 'Die Abhilfe "crossings" behält die größte Fläche.',
  }),
  "pattern-sliver": ({ widthMm, lengthMm, mended }, say) => ({
    what: `Das ist ein Splitter, ${say(lengthMm)} lang und etwa ${say(widthMm)} breit${mended ? "; er wurde entfernt" : ""}.`,
    remedy: mended ? "Sie brauchen nichts zu tun." : 'Die Abhilfe "slivers" entfernt ihn.',
  }),
};
