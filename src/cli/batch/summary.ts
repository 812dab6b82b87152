import { ORDER_SIGN } from "../../core/batch/joinedJob.ts";
import { contestedStock } from "../../core/batch/together.ts";
import { majorOf, minorDigits } from "../../core/buying/money.ts";
import { plainLine } from "../../core/drawing/list/textWidth.ts";
import { describeProblem } from "../../core/problems/describeProblem.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { SENTENCES } from "../../core/words/words.ts";
import { BATCH_TEXTS, type OrderState } from "../words/batchTexts.ts";
import { QUEUE_TEXTS } from "../words/queueTexts.ts";
import type { LaidTask } from "./layTask.ts";
import type { Batch, BatchOrder } from "./planBatch.ts";
import type { TaskResult } from "./runTasks.ts";

/** An order and what came of it; what is not known is null. Lengths mm. */
export interface OrderResult {
  readonly order: string;
  readonly row: number;
  readonly due: string | null;
  readonly shade: string | null;
  readonly bags: number | null;
  readonly state: OrderState;
  readonly pieces: number | null;
  /** Its share of what the lay takes off rolls. */
  readonly lengthMm: number | null;
  /** Of the whole lay: pieces laid ÷ cloth; (length − bound) ÷ bound. */
  readonly use: number | null;
  readonly gap: number | null;
  /** Its share of the cloth to buy. */
  readonly toPay: number | null;
  readonly currency: string | null;
  /** Folders below the batch's own: of the order, and of the lay its pieces are in. */
  readonly folder: string | null;
  readonly lay: string | null;
  readonly notes: readonly string[];
}

/** Every order of a batch in its order, with what its lay came to. */
export function orderResults(
  { orders, lays }: Batch,
  folders: readonly string[],
  results: ReadonlyMap<string, TaskResult>,
  language: Language,
): OrderResult[] {
  const done = folders.map((folder) => laidIn(results.get(folder)));
  const contested = contestedStock(lays.map(({ measured }, i) => ({ measured, taken: done[i]?.taken ?? [] })));
  const at = new Map<string, number>();
  for (const [i, lay] of lays.entries()) for (const { name } of lay.orders) at.set(name, i);
  return orders.map((order): OrderResult => {
    const index = at.get(order.name);
    if (!order.isRead) return unlaid(order, "waiting", []);
    if (index === undefined)
      return unlaid(
        order,
        "refused",
        order.problems.map(({ message }) => message),
      );
    const lay = lays[index]!;
    const texts = BATCH_TEXTS[language];
    const { alone } = lay.orders.find(({ name }) => name === order.name)!;
    const withheld = Object.values(lay.withheld).flat().join(", ");
    const short = contested[index]!.join(", ");
    const notes = [
      ...(alone === null ? [] : [texts.alone[alone]]),
      ...(withheld === "" ? [] : [texts.withheld(withheld)]),
      ...(short === "" ? [] : [texts.contested(short)]),
    ];
    const result = results.get(folders[index]!);
    if (result === undefined) return unlaid(order, "waiting", notes);
    if ("bug" in result) return unlaid(order, "fault", [texts.ourFault, result.bug.split("\n")[0]!]);
    if ("givenUp" in result)
      return unlaid(order, "given-up", [
        QUEUE_TEXTS[language].givenUp(result.givenUp.length),
        ...result.givenUp.map((reason, i) => `${i + 1}. ${reason}`),
      ]);
    const ended = laidResult(order, result.laid, notes, language);
    return short === "" || ended.state !== "laid" ? ended : { ...ended, state: "contested" };
  });
}

function laidIn(result: TaskResult | undefined): LaidTask | null {
  return result !== undefined && "laid" in result ? result.laid : null;
}

function unlaid(
  { name, row, due, shade, bags }: BatchOrder,
  state: OrderState,
  notes: readonly string[],
): OrderResult {
  const figures = { pieces: null, lengthMm: null, use: null, gap: null, toPay: null, currency: null };
  return { order: name, row, due, shade, bags, state, ...figures, folder: null, lay: null, notes };
}

function laidResult(order: BatchOrder, laid: LaidTask, notes: readonly string[], language: Language): OrderResult {
  if (laid.faults.length > 0) return unlaid(order, "fault", [BATCH_TEXTS[language].ourFault, ...laid.faults]);
  const share = laid.shares.find(({ name }) => name === order.name)!;
  const isAlone = laid.shares.length === 1;
  const leftOut = laid.leftOut.filter(({ pieceId }) => isAlone || pieceId.startsWith(order.name + ORDER_SIGN));
  const { name, row, due, shade, folder } = order;
  return {
    order: name,
    row,
    due,
    shade,
    bags: share.bags,
    state: leftOut.length > 0 ? "left-out" : "laid",
    pieces: share.pieces,
    lengthMm: share.length,
    use: laid.use,
    gap: laid.gap,
    toPay: share.toPay === null ? null : majorOf(share.toPay, laid.currency),
    currency: laid.currency,
    folder,
    lay: laid.folder,
    notes: [...leftOut.map(({ problem }) => sentence(problem, language)), ...notes, ...laid.notes],
  };
}

/** What was left out, without the place in the lay: the row says whose it is. */
function sentence(problem: Problem, language: Language): string {
  const { what, remedy } = describeProblem(problem, SENTENCES[language]);
  return `${what} ${remedy}`;
}

type Cell = readonly [value: string, isNumber: boolean];

function cellsOf(each: OrderResult, language: Language): Cell[] {
  const percent = (share: number | null): string => (share === null ? "" : (100 * share).toFixed(1));
  return [
    [each.order, false],
    [each.due ?? "", false],
    [each.shade ?? "", false],
    [each.bags === null ? "" : String(each.bags), true],
    [BATCH_TEXTS[language].states[each.state], false],
    [each.pieces === null ? "" : String(each.pieces), true],
    [each.lengthMm === null ? "" : (each.lengthMm / 1000).toFixed(3), true],
    [percent(each.use), true],
    [percent(each.gap), true],
    [each.toPay === null ? "" : each.toPay.toFixed(minorDigits(each.currency ?? "")), true],
    [each.lay ?? "", false],
    [each.notes.join(" "), false],
  ];
}

/**
 * The results as comma-separated values, one row an order, decimals with a point. Source: RFC 4180. A cell that a
 * spreadsheet would take for a formula gets an apostrophe in front.
 */
export function summaryCsv(results: readonly OrderResult[], language: Language): string {
  const heads = Object.values(BATCH_TEXTS[language].heads);
  const rows = results.map((each) =>
    cellsOf(each, language).map(([value, isNumber]) => {
      const line = plainLine(value);
      return isNumber || !/^[=+\-@|%]/u.test(line) ? line : `'${line}`;
    }),
  );
  const quoted = (cell: string): string => (/[",\r\n]/u.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell);
  return [heads, ...rows].map((row) => `${row.map(quoted).join(",")}\r\n`).join("");
}

const STYLE = `body{font:1rem/1.45 system-ui,sans-serif;margin:1rem auto;max-width:80rem;padding:0 1rem;color:#1c2430;background:#fff}
h1{font-size:1.5rem}table{border-collapse:collapse;width:100%}th,td{text-align:left;vertical-align:top;padding:.35rem .6rem;border-bottom:1px solid #ccd3dc}
td.n{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}tr.bad td{background:#fff0e8}td.w{min-width:14rem}td:first-child,td:nth-child(2){white-space:nowrap}
@media screen and (max-width:48rem){thead{display:none}tr,td,td.n{display:block;text-align:left}tr{padding:.6rem 0;border-bottom:2px solid #8a97a8}td{border:0;padding:.1rem .3rem}td:empty{display:none}td::before{content:attr(data-head) ": ";color:#52606f}}
@media print{body{margin:0;font-size:9pt;max-width:none}thead{display:table-header-group}tr{break-inside:avoid}}`;

/** The results as a page that needs nothing else: read on a phone, or printed. */
export function summaryHtml(results: readonly OrderResult[], lines: readonly string[], language: Language): string {
  const texts = BATCH_TEXTS[language];
  const heads = Object.values(texts.heads);
  const rows = results.map((each) => {
    const cells = cellsOf(each, language).map(([value, isNumber], i) => {
      const shown = escaped(isNumber ? withDecimalSign(value, language) : plainLine(value));
      const folder = i === 0 ? each.folder : i === LAY_COLUMN ? each.lay : null;
      const link = folder === null ? shown : `<a href="${encodeURI(folder)}/">${shown}</a>`;
      const kind = isNumber ? ' class="n"' : i === heads.length - 1 ? ' class="w"' : "";
      return `<td${kind} data-head="${escaped(heads[i]!)}">${link}</td>`;
    });
    return `<tr${each.state === "laid" ? "" : ' class="bad"'}>${cells.join("")}</tr>`;
  });
  return `<!doctype html>
<html lang="${language}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(texts.title)}</title>
<style>${STYLE}</style>
<h1>${escaped(texts.title)}</h1>
${lines.map((line) => `<p>${escaped(line)}</p>`).join("\n")}
<table>
<thead><tr>${heads.map((head) => `<th scope="col">${escaped(head)}</th>`).join("")}</tr></thead>
<tbody>
${rows.join("\n")}
</tbody>
</table>
<p>${escaped(texts.about)}</p>
</html>
`;
}

const LAY_COLUMN = 10;

function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
}
