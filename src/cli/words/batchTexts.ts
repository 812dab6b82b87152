import type { AloneReason } from "../../core/batch/together.ts";
import { pluralOf } from "../../core/units/numberWords.ts";
import { type ByLanguage, inEveryLanguage } from "../../core/words/words.ts";

const pluralEn = pluralOf("en");
const pluralDe = pluralOf("de");

/** How an order ended. */
export type OrderState = "laid" | "left-out" | "contested" | "refused" | "fault" | "given-up" | "waiting";

/** What `batch` says, in one language; a language that lacks a word does not compile. */
export interface BatchTexts {
  /** What a lay of many orders is called. */
  readonly orders: (count: number) => string;
  /** A row of the table, and a column of it. */
  readonly row: (row: number) => string;
  readonly column: (head: string) => string;
  readonly noProjects: (folder: string) => string;
  readonly reading: (done: number, of: number) => string;
  /** `left` is the time to expect, null while there is nothing to go by. */
  readonly progress: (done: number, of: number, failed: number, left: string | null) => string;
  readonly minutes: (minutes: number) => string;
  readonly stopped: string;
  readonly again: string;
  readonly kept: (lays: number) => string;
  readonly counts: (laid: number, orders: number, lays: number) => string;
  readonly totals: (metres: string, toPay: string | null) => string;
  readonly written: (paths: string) => string;
  readonly alone: Readonly<Record<AloneReason, string>>;
  readonly withheld: (stocks: string) => string;
  readonly contested: (stocks: string) => string;
  readonly ourFault: string;
  readonly title: string;
  readonly heads: {
    readonly order: string;
    readonly due: string;
    readonly shade: string;
    readonly bags: string;
    readonly state: string;
    readonly pieces: string;
    readonly metres: string;
    readonly use: string;
    readonly gap: string;
    readonly toPay: string;
    readonly lay: string;
    readonly notes: string;
  };
  readonly states: Readonly<Record<OrderState, string>>;
  readonly about: string;
}

const en: BatchTexts = {
  orders: (count) => `${count} orders`,
  row: (row) => `Row ${row}`,
  column: (head) => `column "${head}"`,
  noProjects: (folder) => `${folder}: there is no project file in it. Project files end in .json.`,
  reading: (done, of) => `Reading orders: ${done} of ${of}`,
  progress: (done, of, failed, left) =>
    `${done} of ${of} lays${failed > 0 ? `, ${failed} failed` : ""}${left === null ? "" : `, about ${left} left`}`,
  minutes: (minutes) => (minutes < 1 ? "a minute" : pluralEn(minutes, "1 minute", `${minutes} minutes`)),
  stopped: "Stopping: the lays under way are finished, no new one is begun.",
  again: "Stopped. The same command goes on from here.",
  kept: (lays) => pluralEn(lays, "1 lay was there already and stays.", `${lays} lays were there already and stay.`),
  counts: (laid, orders, lays) =>
    `${laid} of ${pluralEn(orders, "1 order", `${orders} orders`)} laid, in ${pluralEn(lays, "1 lay", `${lays} lays`)}.`,
  totals: (metres, toPay) => `${metres} m off rolls${toPay === null ? "" : `; cloth to buy: ${toPay}`}.`,
  written: (paths) => `Written: ${paths}`,
  alone: {
    pins: "Laid by itself: some of its pieces are put down by hand.",
    matched: "Laid by itself: some of its pieces are matched on the cloth's pattern.",
    "shade-band": "Laid by itself: the parts of each bag are kept together for one shade.",
  },
  withheld: (stocks) => `Lies on the open roll only: orders before it have ${stocks}.`,
  contested: (stocks) =>
    `Orders before it use up this stock: ${stocks}. Do not cut it from there; add stock to the template.`,
  ourFault: "Internal error; please report this and send us your files.",
  title: "Orders",
  heads: {
    order: "Order",
    due: "Due",
    shade: "Shade",
    bags: "Bags",
    state: "State",
    pieces: "Pieces",
    metres: "Metres off rolls",
    use: "Use of cloth %",
    gap: "Over the proven least %",
    toPay: "Cloth to buy",
    lay: "Laid in",
    notes: "Notes",
  },
  states: {
    laid: "laid",
    "left-out": "pieces left out",
    contested: "laid, cloth short",
    refused: "not laid",
    fault: "failed",
    "given-up": "given up",
    waiting: "waiting",
  },
  about:
    "Metres and cloth to buy of orders laid together are shared out by the area of their pieces. Use of cloth and distance from the proven least are those of the whole lay.",
};

const de: BatchTexts = {
  orders: (count) => `${count} Aufträge`,
  row: (row) => `Zeile ${row}`,
  column: (head) => `Spalte "${head}"`,
  noProjects: (folder) => `${folder}: Darin liegt keine Projektdatei. Projektdateien enden auf .json.`,
  reading: (done, of) => `Aufträge werden gelesen: ${done} von ${of}`,
  progress: (done, of, failed, left) =>
    `${done} von ${of} Zuschnittplänen${failed > 0 ? `, ${failed} gescheitert` : ""}${left === null ? "" : `, noch etwa ${left}`}`,
  minutes: (minutes) => (minutes < 1 ? "eine Minute" : pluralDe(minutes, "1 Minute", `${minutes} Minuten`)),
  stopped: "Es wird angehalten: Begonnenes wird fertig, Neues nicht mehr begonnen.",
  again: "Angehalten. Derselbe Befehl macht hier weiter.",
  kept: (lays) =>
    pluralDe(
      lays,
      "1 Zuschnittplan war schon da und bleibt.",
      `${lays} Zuschnittpläne waren schon da und bleiben.`,
    ),
  counts: (laid, orders, lays) =>
    `${laid} von ${pluralDe(orders, "1 Auftrag", `${orders} Aufträgen`)} gelegt, in ${pluralDe(lays, "1 Zuschnittplan", `${lays} Zuschnittplänen`)}.`,
  totals: (metres, toPay) => `${metres} m von Rollen${toPay === null ? "" : `; Stoff zu kaufen: ${toPay}`}.`,
  written: (paths) => `Geschrieben: ${paths}`,
  alone: {
    pins: "Für sich gelegt: Einige seiner Teile sind von Hand hingelegt.",
    matched: "Für sich gelegt: Einige seiner Teile folgen dem Muster des Stoffes.",
    "shade-band": "Für sich gelegt: Die Teile jeder Tasche bleiben für einen Farbton beisammen.",
  },
  withheld: (stocks) => `Liegt nur auf der offenen Rolle: Frühere Aufträge haben ${stocks}.`,
  contested: (stocks) =>
    `Frühere Aufträge verbrauchen diesen Bestand: ${stocks}. Schneiden Sie nicht daraus; geben Sie der Vorlage mehr Bestand.`,
  ourFault: "Interner Fehler; bitte melden Sie es uns und senden Sie Ihre Dateien mit.",
  title: "Aufträge",
  heads: {
    order: "Auftrag",
    due: "Fällig",
    shade: "Farbe",
    bags: "Taschen",
    state: "Stand",
    pieces: "Teile",
    metres: "Meter von Rollen",
    use: "Stoffnutzung %",
    gap: "Über dem bewiesenen Mindestmaß %",
    toPay: "Stoff zu kaufen",
    lay: "Gelegt in",
    notes: "Bemerkungen",
  },
  states: {
    laid: "gelegt",
    "left-out": "Teile fehlen",
    contested: "gelegt, Stoff fehlt",
    refused: "nicht gelegt",
    fault: "gescheitert",
    "given-up": "aufgegeben",
    waiting: "wartet",
  },
  about:
    "Meter und Stoff zu kaufen sind bei gemeinsam gelegten Aufträgen nach der Fläche ihrer Teile verteilt. Stoffnutzung und Abstand vom bewiesenen Mindestmaß gelten für den ganzen Plan.",
};

/** What `batch` says, by language. */
export const BATCH_TEXTS: ByLanguage<BatchTexts> = inEveryLanguage({ en, de });
