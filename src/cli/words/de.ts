import { pluralOf } from "../../core/units/numberWords.ts";
import type { CliTexts } from "./cliTexts.ts";

const plural = pluralOf("de");

const teile = (count: number): string => plural(count, "1 Teil", `${count} Teile`);
const teilen = (count: number): string => plural(count, "1 Teil", `${count} Teilen`);
const materialien = (count: number): string => plural(count, "1 Material", `${count} Materialien`);

/** What the commands say in German. */
export const de: CliTexts = {
  files: {
    faults: {
      missing: "es gibt keine solche Datei",
      "no-rights": "Ihre Rechte reichen zum Lesen oder Schreiben nicht aus",
      "is-folder": "das ist ein Ordner",
      "path-through-file": "ein Teil des Pfads ist eine Datei",
      "disk-full": "der Datenträger ist voll",
      "disk-read-only": "der Datenträger ist schreibgeschützt",
      "not-utf8": "das ist kein UTF-8-Text",
    },
    tooLarge: (megabytes) => `sie ist größer als ${megabytes} MB`,
    unreadable: (path, reason) => `${path} lässt sich nicht lesen: ${reason}.`,
    notWritten: (path, reason) => `Nichts wurde geschrieben; ${path}: ${reason}.`,
    written: (path) => `geschrieben: ${path}`,
    noMaterial: (path, id, nearest, all) =>
      `${path} hat kein Material "${id}". ${nearest === null ? `Es hat ${all}.` : `Meinen Sie "${nearest}"?`}`,
    notAPlan: (path, place, wanted) => {
      const what = {
        object: "keine Gruppe",
        list: "keine Liste",
        number: "keine Zahl",
        text: "kein Text",
        flag: "nicht true oder false",
        version: "nicht 1",
        point: "kein Punkt [x, y]",
        outline: "kein Umriss aus mindestens drei Punkten",
        "stock-kind": 'nicht "roll" oder "remnant"',
        reason: "kein Grund, ein Teil wegzulassen",
      }[wanted];
      return `${place === "" ? path : `${path}: ${place}`} ist ${what}; diese Plandatei hat nicht Laywright geschrieben.`;
    },
  },
  check: {
    plan: (pieces, materials, leftOut) =>
      `Der Plan stimmt: ${teile(pieces)} auf ${materialien(materials)}${leftOut > 0 ? `, ${leftOut} weggelassen` : ""}.`,
    project: (name, pieces, materials) =>
      `${name}: Die Datei ist in Ordnung. ${teile(pieces)} aus ${materialien(materials)}.`,
    uneven: (first, second, over) =>
      `${first} ist ${over} länger als ${second}: halten Sie es beim Nähen ein, oder ändern Sie eines von beiden.`,
  },
  lay: {
    bags: (project, count) => `${project}, ${plural(count, "1 Tasche", `${count} Taschen`)}`,
    laying: (material, pieces, seconds) =>
      `${material}: ${teile(pieces)} ${plural(pieces, "wird", "werden")} gelegt, ${seconds} s`,
    laid: (material, metres, gap, placed, pieces, seconds) =>
      `${material}: ${metres} m${gap === null ? "" : `, höchstens ${gap} % zu lang`}, ${placed} von ${teilen(pieces)}, ${seconds} s`,
    searched: (seconds, threads, quiet) =>
      `${seconds} s gesucht, in ${plural(threads, "1 Thread", `${threads} Threads`)}${quiet > 0 ? `; bei ${plural(quiet, "1 Stoff", `${quiet} Stoffen`)} früher beendet, weil nichts Kürzeres mehr kam` : ""}.`,
    threePlans: (material) => `${material}: drei Pläne`,
    writing: (what, done, pages) => `Wird geschrieben: ${what}${done > 0 ? `, Seite ${done} von ${pages}` : ""}`,
    ourFault:
      "Interner Fehler: Ein Plan hat die Prüfung nicht bestanden. Schneiden Sie nicht danach; bitte melden Sie es uns und senden Sie Ihre Projektdatei mit.",
    keptIn: (path) => `Der Plan steht in ${path}`,
    noFont: (glyphs) => `Keine vorhandene Schrift hat ${glyphs}; die Seiten zeigen die Nummern in Klammern.`,
    takenAway: (names) => `Entfernt, gehört nicht zu diesem Plan: ${names}`,
    stays: (names) =>
      `Von einem früheren Plan und seither geändert, darum noch da; schneiden Sie nicht danach: ${names}`,
    heldLengthwise: (names) => `Nur längs gelegt, weil ihr Stoff längs und quer verschieden einläuft: ${names}.`,
    cost: "Kosten",
    strips: "Streifen aus einem Meter der Rolle",
    noStrip: (length) => `keiner; ein Streifen ist ${length} lang`,
    stripsProven: (count) => `${count} (nachweislich das Maximum)`,
    stripsBound: (count, bound) => `${count} (höchstens ${bound})`,
    written: "Geschrieben",
    toPay: (money) => `Stoff zu kaufen: ${money}.`,
    clothOfBag: (money) => `Stoff je Tasche (eigener Bestand zum selben Preis): ${money}.`,
    suppliesToPay: (money) => `Zutaten zu kaufen, in ganzen Packungen: ${money}.`,
    wasted: (money) => `Stoff, der bezahlt wird und in keinem Teil steckt: ${money}.`,
    costOfBag: (cost) => `Eine Tasche kostet ${cost}.`,
    priceWithTax: (price) => `Mit Steuer wird eine Tasche für ${price} verkauft.`,
    batch: (bags, cost, price, left) =>
      `Alle ${bags} Taschen kosten ${cost} und werden für ${price} verkauft; es bleiben ${left}.`,
    price: (cost, price, markup, margin) =>
      `Eine Tasche kostet ${cost} mit Arbeit und wird für ${price} verkauft: Aufschlag ${markup}, Marge ${margin}.`,
    best: {
      shortest: "am kürzesten",
      most: "legt am meisten",
      leftovers: "alles aus dem Bestand",
      easiest: "am leichtesten zu schneiden",
      offcut: "größter brauchbarer Rest für seine Länge",
    },
    leftOut: (pieces) => plural(pieces, "1 Teil passt nicht", `${pieces} Teile passen nicht`),
    longer: (length) => `${length} mehr`,
    rulerCuts: (cuts, settings) => `Linealschnitte: ${cuts}, Einstellungen des Lineals: ${settings}`,
    noRuler: "mit dem Lineal nicht von Kante zu Kante zu schneiden",
    largestOffcut: (size) => `größter Rest ${size}`,
    noOffcut: "kein brauchbarer Rest",
  },
  yields: {
    noStrapAcross:
      "In diesem Fadenlauf passt kein Riemen auf diese Breite; breiterer Stoff oder der andere Fadenlauf würde helfen.",
    notASize: (text) => `--strip: "${text}" ist keine Breite und Länge; schreiben Sie es wie "4 in x 28 in".`,
    tooMany: (option, straps, most) =>
      `${option}: Platz für ${straps} Riemen ist zu viel für einen Plan (höchstens ${most}); fragen Sie nach einer kürzeren Länge.`,
    straps: (count) => `${count} Riemen`,
    onCloth: (length, width) => `${length} Stoff, ${width} nutzbare Breite`,
    noneFits: (strap, cloth) => `Kein Riemen von ${strap} passt auf ${cloth}.`,
    gives: (straps, strap, cloth) => `${straps} von ${strap} aus ${cloth}.`,
    provenMost: "Bewiesen: Kein Plan gibt mehr.",
    couldBe: (bound, count) =>
      `Höchstens ${bound} hätten Platz; ein Plan mit mehr als ${count} wurde nicht gefunden.`,
    oneWay: (lengthwise, crosswise) => `Alle längs: ${lengthwise}. Alle quer: ${crosswise}.`,
    fromTheEnd: "Vom geschnittenen Ende her:",
    untouched: (length) => `${length} der Länge bleiben unberührt.`,
    need: (straps, strap, cloth) => `${straps} von ${strap} brauchen ${cloth}.`,
    provenShortest: "Bewiesen: Keine kürzere Länge reicht.",
    couldBeShorter: (bound, length) =>
      `Kürzer als ${bound} geht es nicht; ein Plan unter ${length} wurde nicht gefunden.`,
    alsoGives: (straps) => `Dieselbe Länge gibt ${straps}.`,
    block: (count, isLengthwise, along, across, x, y) => {
      const rows = plural(along, `${across} nebeneinander`, `${along} hintereinander, ${across} nebeneinander`);
      return `${count} ${isLengthwise ? "längs" : "quer"}: ${rows}, von ${x} längs und ${y} quer an`;
    },
    wouldHelp: "Was helfen würde:",
    lengthGives: (length, straps) => `${length} Länge geben ${straps}.`,
    crosswiseNeeds: (width) => `Quer braucht er ${width} nutzbare Breite.`,
    otherGrain: "Mit --grain both wird auch der andere gerade Fadenlauf versucht.",
    orJoin: "Oder setzen Sie den Riemen aus zwei kürzeren Stücken an; jedes bekommt eine Nahtzugabe.",
    leftToCut: (length, width) => `Nach Begradigen und Waschen bleiben ${length} x ${width} zum Zuschneiden.`,
    squaredAway:
      "Das Begradigen der Enden verbraucht die ganze Länge; geben Sie mehr Länge oder weniger --squaring an.",
    moreGives: (length, more) => `${length} mehr geben ${more} mehr`,
    curve: (from, to) => `Von ${from} bis ${to}:`,
    noMore: "Keine Länge bis dahin gibt mehr.",
    againstGrain: "Der Stoff darf nicht in dieser Richtung verwendet werden: nehmen Sie den anderen Fadenlauf.",
    noStock: (id, nearest, known) =>
      known === ""
        ? "Das Projekt hat keinen Rest, keine Lederhaut und keine begrenzte Rolle."
        : `${id === null ? "Sagen Sie, welcher Bestand." : `Es gibt keinen Bestand "${id}"${nearest === null ? "" : `; meinen Sie ${nearest}`}.`} Vorhanden: ${known}.`,
    onStock: (id) => `dem Bestand "${id}"`,
    noSet: (cloth) => `Nicht ein ganzer Satz passt: ${cloth}.`,
    sets: (sets, straps, cloth) => `${sets} (${straps}) aus ${cloth}.`,
    setCount: (count) => plural(count, "1 Satz", `${count} Sätze`),
    ofEach: (count, strap) => `${count} von ${strap}`,
    couldBeSets: (bound, count) =>
      `Nach der Fläche hätten ${bound} Platz; ein Plan mit mehr als ${count} wurde nicht gefunden.`,
    nothingToDraw: "Es gibt keinen Plan zu zeichnen.",
    lengthAxis: "Länge des Stoffs",
    countAxis: "Riemen",
    setAxis: "Sätze",
  },
  strap: {
    name: "Riemen",
    cloth: "Stoff",
    finishedWidth: "Fertige Breite",
    cutWidth: "Schnittbreite",
    tradeRule: "Faustregel",
    difference: "Unterschied",
    layersRow: "Lagen",
    thick: (layers, thickness) => `${layers}, ${thickness} dick`,
    foldLines: "Faltlinien bei",
    heldBack: "Offene Kante zurück",
    cutLength: "Schnittlänge",
    roll: "Von der Rolle",
    shortPart: "Kurzer Teil, Schnitt",
    longest: "Getragen am längsten",
    shortest: "Getragen am kürzesten",
    layers: (count) => plural(count, "1 Lage", `${count} Lagen`),
    of: (length, what) => `${length} ${what}`,
    other: (name, id, cut, layers, thickness, roll) =>
      `${name} (--construction ${id}): Schnittbreite ${cut}, ${layers}, ${thickness} dick${roll === "" ? "" : `, ${roll}`}`,
    materials: {
      cotton: "Baumwolle",
      canvas: "Canvas",
      denim: "Denim",
      woven: "Gewebe",
      vinyl: "Kunstleder",
      "faux-leather": "Kunstleder",
      leather: "Leder",
      cork: "Kork",
      felt: "Filz",
    },
    ofRoll: (length) => `${length} von der Rolle`,
    cut: "Zuschneiden:",
    madeOf: "Die Länge setzt sich zusammen aus:",
    needle: "Unter der Nadel:",
    ready: "Bereitlegen:",
    notes: "Hinweise:",
    others: "Diese Macharten hielten die Grenzen ein, mit dem wenigsten Stoff zuerst:",
    steps: "Arbeitsschritte:",
    takeCare: "Vorsicht:",
  },
  compare: {
    columns: [
      "Machart",
      "Schnittbreite",
      "Lagen",
      "dick",
      "längs",
      "quer",
      "Kosten",
      "Maschine",
      "Schieber",
      "offene Kanten",
    ],
    fits: "passt",
    tooThick: "zu dick",
  },
  foldTest: {
    title: (construction, thickness) => `Faltprobe, ${construction}, ${thickness} je Lage`,
    strip: (width) =>
      `Einen Streifen zuschneiden, ${width} breit und etwa eine Hand lang, im selben Fadenlauf wie der Riemen.`,
    how: {
      "three-raw": [
        "Der Länge nach eine Linie auf zwei Dritteln der Breite zeichnen.",
        "Eine Längskante umschlagen und genau an diese Linie legen; die Falte bügeln, klopfen oder rollen wie beim Riemen.",
        "Das letzte Drittel um die offene Kante schlagen und andrücken.",
      ],
      fourfold: [
        "Der Länge nach in der Mitte falzen, öffnen und beide Längskanten einschlagen, so weit es geht, ohne dass sie beim Schließen in den Falz laufen.",
        "Wieder zur Hälfte falten und bügeln oder klopfen wie beim Riemen.",
      ],
    },
    measure: (what) => `Außen über den gefalteten Streifen messen, und ${what}.`,
    read: {
      "three-raw": "wie weit die sichtbare offene Kante vor der gegenüberliegenden Falte endet",
      fourfold:
        "wie weit jede offene Kante vom Mittelfalz liegt, wenn der Streifen einmal geöffnet ist (Mittel aus beiden)",
    },
    assumed: (width, setback) => `Ohne Probe nehmen wir ${width} und ${setback} an.`,
    runAgain: "Dann denselben Befehl mit --measured-width und --measured-setback geben.",
    thickness: "Auch die Dicke messen: einen Stapel aus acht Lagen falten, pressen und teilen.",
    neutral: "K (neutral)",
    clearance: "Abstand",
    leaves: (reading, cutWidth) => `Auf ${reading} genau gemessen, steht die Schnittbreite auf ± ${cutWidth} fest.`,
    saysNothing: "Diese Probe sagt nichts: ihr Fehler ist so groß wie alles, was sein kann. Nicht aufheben.",
    together: (count, neutral, clearance) =>
      `Alle ${count} Proben dieses Materials zusammen: K ${neutral}, Abstand ${clearance}.`,
    keep: "Zum Behalten --into PROJEKT --of MATERIAL dazugeben, oder in der Projektdatei beim Material eintragen:",
    stored: (path, material) => `Mit der Dicke in ${path} eingetragen, Material ${material}.`,
  },
};
