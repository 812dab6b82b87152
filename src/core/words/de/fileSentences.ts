import type { Expected, FileProblem, JsonFaultReason } from "../../problems/fileProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

const listed = (names: readonly string[]): string => names.slice(0, 12).map(quoted).join(", ");
const meant = (nearest: string | null): string => (nearest === null ? "" : ` Meinen Sie ${quoted(nearest)}?`);

const bounds = (min: number | null, max: number | null): string =>
  min === null
    ? `Geben Sie höchstens ${max} an.`
    : max === null
      ? `Geben Sie mindestens ${min} an.`
      : `Geben Sie ${min} bis ${max} an.`;

const FAULTS: Readonly<Record<JsonFaultReason, string>> = {
  "ended-early": "der Text endet, bevor alles geschlossen ist",
  "more-after-end": "nach dem Ende folgt noch etwas",
  "value-expected": "hier sollte ein Wert stehen",
  "key-expected": "hier sollte ein Schlüssel in doppelten Anführungszeichen stehen",
  "colon-expected": "auf den Schlüssel sollte ein Doppelpunkt folgen",
  "comma-expected": "hier sollte ein Komma oder die schließende Klammer stehen",
  "comma-too-many": "davor steht ein Komma zu viel",
  "bad-number": "diese Zahl ist nicht so geschrieben, wie JSON es will",
  "bad-text": "dieser Text ist nicht geschlossen oder enthält einen Zeilenumbruch oder einen falschen Rückstrich",
  "too-deep": "Klammern sind zu tief geschachtelt",
};

const EXPECTED: Readonly<Record<Expected, string>> = {
  length: 'eine Länge wie "12 cm"',
  "length-or-open": 'eine Länge wie "2,4 m" oder "open"',
  share: 'einen Prozentwert wie "3 %"',
  count: "eine ganze Zahl wie 2",
  money: "einen Betrag wie 12.50",
  number: "eine Zahl",
  text: "Text in doppelten Anführungszeichen",
  "yes-or-no": "true oder false",
  "one-way": 'true, false, "up", "down" oder "free"',
  list: "eine Liste in [ ]",
  group: "eine Gruppe von Schlüsseln in { }",
  place: 'eine Stelle [längs, quer], etwa ["10 cm", "4 cm"]',
  point: "einen Punkt [längs, quer], oder [längs, quer, Bogenhöhe], wenn die Kante danach ein Bogen ist",
  paper: 'ein Papier wie "A4" oder ein Maß wie { "width": "13 in", "height": "19 in" }',
  measure: 'eine Länge wie "12 cm", oder wonach sie sich richtet, etwa { "of": "body", "measure": "along" }',
  edge: 'die Nummer einer Kante wie 2 oder ihren Namen wie "top"',
  size: 'eine Länge wie "25 mm" oder eine Gruppe wie { "cut": "10 cm" }',
};

const GRAINS: Readonly<Record<string, string>> = {
  lengthwise: "längs",
  crosswise: "quer",
  either: "längs oder quer",
};
const grainOf = (grain: string): string => GRAINS[grain] ?? grain;

/** Project files in German. */
export const fileSentences: SentenceTable<FileProblem> = {
  "file-empty": () => ({
    what: "Die Datei ist leer.",
    remedy: 'Ein Projekt beginnt mit { "laywright": 1, "name": … }; kopieren Sie für den Anfang ein Beispiel.',
  }),
  "workshop-missing": ({ name }) => ({
    what: `Das Projekt nennt die Werkstatt ${quoted(name)}, die nicht da ist.`,
    remedy:
      "Legen Sie die Datei neben das Projekt, oder öffnen Sie sie zuerst auf der Seite; oder nehmen Sie den Namen aus dem Projekt.",
  }),
  "workshop-material-unknown": ({ id, known }) => ({
    what: `Die Werkstatt hat kein Material ${quoted(id)}.`,
    remedy: known.length === 0 ? "Sie hat gar keines." : `Vorhanden: ${known.join(", ")}.`,
  }),
  "file-not-json": ({ line, column, reason }) => ({
    what: `Die Datei ist in Zeile ${line}, Spalte ${column} kein gültiges JSON: ${FAULTS[reason]}.`,
    remedy:
      "Suchen Sie dort und kurz davor nach einem fehlenden oder überzähligen Komma, Anführungszeichen oder einer Klammer.",
  }),
  "file-too-large": ({ characters, limit }) => ({
    what: `Die Datei hat ${characters} Zeichen; ein Projekt hat höchstens ${limit}.`,
    remedy: "Prüfen Sie, ob es eine Projektdatei ist; teilen Sie eine große Serie auf mehrere Projekte auf.",
  }),
  "file-too-deep": ({ limit }) => ({
    what: `Listen oder Gruppen sind mehr als ${limit}-fach geschachtelt.`,
    remedy: "Eine Projektdatei braucht weit weniger; prüfen Sie, ob es eine ist.",
  }),
  "file-newer": ({ version, known }) => ({
    what: `Die Datei hat Version ${version}; dieses Programm liest bis Version ${known}.`,
    remedy: "Sie wurde mit einem neueren Laywright gesichert: mit einem neueren Programm öffnet sie sich.",
  }),
  "file-version-unknown": ({ value, known }) => ({
    what: value === null ? "Die Datei nennt keine Version." : `Die Version der Datei ist ${value}.`,
    remedy: `Eine Projektdatei sagt oben "laywright": ${known}.`,
  }),
  "unknown-key": ({ key, nearest }) => ({
    what: `Der Schlüssel ${quoted(key)} ist hier nicht bekannt.`,
    remedy: nearest === null ? "Entfernen Sie ihn." : `Meinen Sie ${quoted(nearest)}? Sonst entfernen Sie ihn.`,
  }),
  "key-missing": ({ key }) => ({ what: `Der Schlüssel ${quoted(key)} fehlt.`, remedy: "Fügen Sie ihn hinzu." }),
  "key-repeated": ({ key }) => ({
    what: `Der Schlüssel ${quoted(key)} steht hier zweimal.`,
    remedy: "Behalten Sie einen davon.",
  }),
  "wrong-type": ({ expected, value }) => ({
    what: `${value} kann hier nicht stehen.`,
    remedy: `Schreiben Sie ${EXPECTED[expected]}.`,
  }),
  "not-one-of": ({ value, choices, nearest }) => ({
    what: `${value} steht hier nicht zur Wahl.${meant(nearest)}`,
    remedy: `Nehmen Sie eines von ${listed(choices)}.`,
  }),
  "number-out-of-range": ({ value, min, max }) => ({
    what: `Die Zahl ${value} liegt außerhalb dessen, was sein kann.`,
    remedy: bounds(min, max),
  }),
  "more-problems": ({ count }) => ({
    what: count === 1 ? "Es gibt 1 weiteren Fehler." : `Es gibt ${count} weitere Fehler.`,
    remedy: "Beheben Sie zuerst die oberen; vielleicht ist es die falsche Datei.",
  }),
  "text-empty": () => ({ what: "Der Text ist leer.", remedy: "Schreiben Sie einen Namen." }),
  "text-too-long": ({ characters, limit }) => ({
    what: `Der Text hat ${characters} Zeichen.`,
    remedy: `Nehmen Sie höchstens ${limit}.`,
  }),
  "text-unprintable": ({ value }) => ({
    what: `Der Text ${value} enthält Zeichen, die sich nicht drucken lassen.`,
    remedy: "Schreiben Sie ihn neu, ohne Zeilenumbrüche und Steuerzeichen.",
  }),
  "list-length": ({ count, least, most }) => ({
    what: `Die Liste hat ${count} Einträge.`,
    remedy: bounds(least, most),
  }),
  "duplicate-id": ({ id, firstPath }) => ({
    what: `Die Kennung ${quoted(id)} wird schon bei ${firstPath} benutzt.`,
    remedy: "Geben Sie jedem Material, Stoffstück, Riemen und Teil eine eigene Kennung.",
  }),
  "unknown-material": ({ id, nearest, known }) => ({
    what: `Es gibt kein Material ${quoted(id)}.${meant(nearest)}`,
    remedy:
      known.length === 0
        ? "Fügen Sie es bei den Materialien hinzu."
        : `Fügen Sie es bei den Materialien hinzu, oder nehmen Sie eines von ${listed(known)}.`,
  }),
  "color-unreadable": ({ value }) => ({
    what: `${quoted(value)} ist hier keine lesbare Farbe.`,
    remedy:
      'Schreiben Sie # und sechs Zeichen 0 bis 9 oder a bis f, je zwei für Rot, Grün und Blau, etwa "#1e5ac8".',
  }),
  "layer-name-unusable": ({ value }) => ({
    what: `${quoted(value)} kann nicht in jeder Datei eine Ebene benennen.`,
    remedy: "Nehmen Sie 1 bis 31 Buchstaben a bis z, Ziffern, Binde- und Unterstriche oder $, ohne Leerzeichen.",
  }),
  "layer-is-cut": ({ layer, role }) => ({
    what: `Die Linien ${quoted(role)} lägen auf der Ebene ${quoted(layer)} der Schnitte, und alles darauf wird geschnitten.`,
    remedy: "Geben Sie den beiden verschiedene Ebenen.",
  }),
  "laser-has-no-blade": ({ key }) => ({
    what: `Ein Laser hat keine Klinge, also bedeutet ${quoted(key)} nichts.`,
    remedy:
      "Lassen Sie es weg, oder geben Sie als Werkzeug ein Messer an. Was ein Laser wegbrennt, ist seine Schnittfuge.",
  }),
  "knife-takes-no-kerf": ({ kerfMm }, say) => ({
    what: `Eine Schnittfuge von ${say(kerfMm)} passt nicht zu Klingenversatz oder Überschnitt eines Messers.`,
    remedy: "Ein Messer nimmt kein Material weg: Geben Sie die Schnittfuge 0 an, oder als Werkzeug einen Laser.",
  }),
  "grip-eats-bed": ({ gripMm, sideMm }, say) => ({
    what: `Gehaltene Ränder von ${say(gripMm)} an beiden Seiten lassen von einer Schneidefläche von ${say(sideMm)} nichts übrig.`,
    remedy: "Geben Sie den Rand einer Seite an, oder berichtigen Sie die Schneidefläche.",
  }),
  "paper-too-small": ({ sideMm, marginMm, overlapMm }, say) => ({
    what: `Von ${say(sideMm)} breitem Papier mit Rändern von ${say(marginMm)} und einer Überlappung von ${say(overlapMm)} bleibt zu wenig.`,
    remedy: "Nehmen Sie größeres Papier, einen kleineren Rand oder eine kleinere Überlappung.",
  }),
  "bias-refused": () => ({
    what: "Teile werden nicht schräg zum Fadenlauf gelegt.",
    remedy:
      'Schräg geschnittene Riemen und Teile dehnen und verdrehen sich. Nehmen Sie "lengthwise", "crosswise" oder "either".',
  }),
  "outline-crosses-itself": ({ edges, xMm, yMm }, say) => ({
    what: `Der Umriss kreuzt oder berührt sich selbst bei (${say(xMm)}, ${say(yMm)}): die Kanten ${edges[0] + 1} und ${edges[1] + 1} treffen sich, gezählt vom ersten Punkt an.`,
    remedy: "Setzen Sie die Punkte der Reihe nach um die Form, jeden einmal.",
  }),
  "outline-no-area": ({ points }) => ({
    what: `Der Umriss aus ${points} Punkten umschließt nichts.`,
    remedy: "Geben Sie mindestens drei Punkte an, die nicht auf einer Linie liegen.",
  }),
  "outline-repeats-point": ({ point, xMm, yMm }, say) => ({
    what: `Punkt ${point} bei (${say(xMm)}, ${say(yMm)}) ist derselbe wie der davor.`,
    remedy:
      "Lassen Sie ihn weg; ein Umriss schließt sich von selbst, der erste Punkt wird am Ende nicht wiederholt.",
  }),
  "selvedges-eat-width": ({ widthMm, selvedgeMm }, say) => ({
    what: `Zwei Webkanten von ${say(selvedgeMm)} lassen von einer Breite von ${say(widthMm)} nichts übrig.`,
    remedy: 'Geben Sie die volle Breite als "width" und die Breite einer Webkante als "selvedge" an.',
  }),
  "layers-not-in-twos": ({ count }) => ({
    what: `${count} Lagen können nicht zu zweien rechts auf rechts liegen.`,
    remedy: `Geben Sie eine gerade Zahl an, etwa ${count + 1}, oder legen Sie alle mit der rechten Seite nach oben.`,
  }),
  "flaws-under-layers": () => ({
    what: "Eine Rolle mit Fehlern kann nicht in Lagen liegen: die Fehler wären unter anderen Lagen verborgen.",
    remedy:
      "Schneiden Sie die Fehler zuerst heraus und geben Sie die Rolle als die Längen an, die bleiben, oder falten Sie sie längs.",
  }),
  "repeat-without-length": () => ({
    what: "Der Rapport sagt weder, wie weit sich das Muster längs wiederholt, noch wie weit quer.",
    remedy: "along, across oder beides angeben oder den Rapport weglassen.",
  }),
  "half-drop-one-way": () => ({
    what: "Halb versetzte Motive wiederholen sich längs und quer, es ist aber nur ein Rapport angegeben.",
    remedy: "along und across angeben oder halfDrop weglassen.",
  }),
  "tolerance-eats-repeat": ({ toleranceMm, repeatMm }, say) => ({
    what: `Eine Toleranz von ${say(toleranceMm)} ist die Hälfte des Rapports von ${say(repeatMm)} oder mehr: Alles würde passen.`,
    remedy: "Eine kleinere Toleranz angeben, bei den meisten Stoffen 1 mm.",
  }),
  "radius-too-large": ({ radiusMm, mostMm }, say) => ({
    what: `Ein Eckenradius von ${say(radiusMm)} passt nicht.`,
    remedy: `Geben Sie höchstens ${say(mostMm)} an: die Hälfte der kürzeren Seite.`,
  }),
  "bow-too-large": ({ bowMm, mostMm }, say) => ({
    what: `Eine Bogenhöhe von ${say(bowMm)} ist mehr als ein Halbkreis.`,
    remedy: `Geben Sie höchstens ${say(mostMm)} an, den halben Abstand zum nächsten Punkt, oder setzen Sie einen Punkt auf den Bogen.`,
  }),
  "grain-conflict": ({ wish, materialId, rule }) => ({
    what: `Ein Teil mit Fadenlauf ${grainOf(wish)} lässt sich nicht aus ${quoted(materialId)} schneiden, das nur ${grainOf(rule)} verwendet wird.`,
    remedy: `Legen Sie das Teil ${grainOf(rule)} oder in beide Richtungen, oder ändern Sie den Fadenlauf des Materials.`,
  }),
  "too-many-pieces": ({ count, most }) => ({
    what: `Das Projekt braucht ${count} Teile.`,
    remedy: `Legen Sie höchstens ${most} auf einmal: machen Sie in einem Projekt weniger Taschen.`,
  }),
};
