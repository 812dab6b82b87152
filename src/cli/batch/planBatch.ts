import { readdirSync } from "node:fs";
import { basename, join } from "node:path";
import { type Order, ordersOf } from "../../core/batch/orders.ts";
import {
  BatchCloths,
  type OrderLay,
  orderLays,
  type PlannedOrder,
  plannedOrder,
  stockSharer,
  type Together,
} from "../../core/batch/together.ts";
import { readJob } from "../../core/job/projectJob.ts";
import { describeProblem, problemLine } from "../../core/problems/describeProblem.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { Language } from "../../core/units/language.ts";
import { SENTENCES } from "../../core/words/words.ts";
import { distinctStems } from "../../export/fileStem.ts";
import { readInput, withItsWorkshop } from "../inOut/readInput.ts";
import { InputProblem, inputProblem, plainProblem, type ToldProblem } from "../inOut/toldProblem.ts";
import { fileReason } from "../inOut/writeFiles.ts";
import { BATCH_TEXTS } from "../words/batchTexts.ts";
import type { BatchEffort, LayTask } from "./layTask.ts";
import { readOrders } from "./readOrders.ts";

/** An order of a batch and what stands in its way; its place is said in the language of the run. */
export interface BatchOrder extends Pick<Order, "row" | "name" | "due" | "shade"> {
  readonly folder: string;
  /** Null until it has been read, and where it could not be. */
  readonly bags: number | null;
  readonly isRead: boolean;
  readonly problems: readonly ToldProblem[];
}

/** A batch that is read order by order and divided into lays. */
export interface Batch {
  /** In the order of the table, those not read yet as well. */
  readonly orders: readonly BatchOrder[];
  /** Those known so far: of orders laid by themselves each as it is read, of others all with the last. */
  readonly lays: readonly OrderLay[];
  /** Orders not read yet. */
  readonly unread: number;
  /** Reads one order more; false where none was left. */
  readOn(): boolean;
  /** Rows that name no order. */
  readonly nameless: readonly ToldProblem[];
  /** Where a lay is written, below the batch's folder: its name among the lays. */
  folderOf(lay: OrderLay): string;
  /** Everything a lay's bytes depend on; made when asked for. */
  taskOf(lay: OrderLay): LayTask;
}

interface Source extends Pick<Order, "row" | "name" | "due" | "shade" | "text"> {
  readonly faults: readonly ToldProblem[];
  tell(problem: Problem): ToldProblem;
}

interface BatchWish {
  readonly together: Together;
  readonly effort: BatchEffort;
  readonly write: LayTask["write"];
  readonly language: Language;
}

/** A batch out of a template and a table. Throws `InputProblem` when the template or the heads of the table are wrong. */
export function batchOfTable(template: string, table: string, wish: BatchWish): Batch {
  const { language } = wish;
  const text = withItsWorkshop(readInput(template), template);
  const read = readJob(text, language);
  if (!read.ok) throw inputProblem(read.problems);
  const rows = readOrders(readInput(table));
  if ("code" in rows) throw atPlace([{ row: null, column: null, problem: rows }], table);
  const list = ordersOf(JSON.parse(text.replace(/^\ufeff/u, "")), rows);
  if (!list.headsSound || list.orders.length === 0)
    throw atPlace([...list.problems, ...list.orders.flatMap(({ faults }) => faults)], table);
  const tell = (row: number, column: string | null, problem: Problem): ToldProblem =>
    toldAt({ row, column, problem }, language);
  const sources = list.orders.map(
    (order): Source => ({
      ...order,
      faults: order.faults.map((fault) => toldAt(fault, language)),
      tell: (problem) => tell(order.row, order.columnOf(problem), problem),
    }),
  );
  return batchOf(
    sources,
    list.problems.map((problem) => toldAt(problem, language)),
    wish,
  );
}

/** A batch out of every project file in a folder, in the order of their names. */
export function batchOfFolder(folder: string, wish: BatchWish): Batch {
  const names = namesIn(folder)
    .filter((name) => name.endsWith(".json"))
    .sort();
  if (names.length === 0)
    throw plainProblem("no-projects", folder, () => BATCH_TEXTS[wish.language].noProjects(folder));
  const sources = names.map((name, i): Source => {
    const path = join(folder, name);
    return {
      row: i + 1,
      name: basename(name, ".json"),
      due: null,
      shade: null,
      faults: [],
      text: () => withItsWorkshop(readInput(path), path),
      tell: (problem) => ({
        ...problem,
        path: `${path}${problem.path === "" ? "" : `: ${problem.path}`}`,
        message: `${path}: ${problemLine(problem, SENTENCES[wish.language])}`,
      }),
    };
  });
  return batchOf(sources, [], wish);
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch (error) {
    throw plainProblem("file-unreadable", folder, (texts) =>
      texts.files.unreadable(folder, fileReason(error, texts)),
    );
  }
}

function batchOf(
  sources: readonly Source[],
  nameless: readonly ToldProblem[],
  { together, effort, write, language }: BatchWish,
): Batch {
  const stems = distinctStems(
    sources.map(({ name }) => name),
    "order",
  );
  const cloths = new BatchCloths();
  const planned: PlannedOrder[] = [];
  const orders = sources.map(({ row, name, due, shade }, i): BatchOrder => {
    const folder = `orders/${stems[i]}`;
    return { row, name, due, shade, folder, bags: null, isRead: false, problems: [] };
  });
  const lays: OrderLay[] = [];
  const shareStock = stockSharer();
  let read = 0;
  const readOne = (): void => {
    const source = sources[read]!;
    const { value, problems: found } = jobOfSource(source, language);
    const problems = [...source.faults, ...found];
    const isSound = value !== null && problems.length === 0;
    orders[read] = { ...orders[read]!, isRead: true, bags: isSound ? value.project.bags : null, problems };
    read++;
    if (!isSound) return;
    const order = plannedOrder(source, value, cloths);
    if (together === "none") lays.push(shareStock([order]));
    else planned.push(order);
  };
  const sourceOf = new Map(sources.map((source) => [source.name, source]));
  const folderOf = new Map(orders.map(({ name, folder }) => [name, folder]));
  const layFolderOf = (lay: OrderLay): string => layFolder(lay.orders.map(({ name }) => folderOf.get(name)!));
  return {
    orders,
    nameless,
    lays,
    get unread() {
      return sources.length - read;
    },
    readOn: () => {
      if (read === sources.length) return false;
      readOne();
      if (read === sources.length) lays.push(...orderLays(planned, together));
      return true;
    },
    folderOf: layFolderOf,
    taskOf: (lay) => ({
      folder: layFolderOf(lay),
      orders: lay.orders.map(({ name }) => ({
        name,
        folder: folderOf.get(name)!,
        text: sourceOf.get(name)!.text(),
      })),
      withheld: lay.withheld,
      effort,
      language,
      write,
    }),
  };
}

function jobOfSource(source: Source, language: Language) {
  try {
    const read = readJob(source.text(), language);
    return read.ok
      ? { value: read.value, problems: [] }
      : { value: null, problems: read.problems.map((problem) => source.tell(problem)) };
  } catch (error) {
    // A file of a folder that cannot be read is one bad order.
    if (error instanceof InputProblem) return { value: null, problems: error.told(language) };
    throw error;
  }
}

/** An order's own folder where it lies alone, else one named for the first and the number of the others. */
function layFolder(folders: readonly string[]): string {
  const [first] = folders;
  return folders.length === 1 ? first! : `lays/${first!.replace("orders/", "")}+${folders.length - 1}`;
}

interface Found {
  readonly row: number | null;
  readonly column: string | null;
  readonly problem: Problem;
}

/** A problem with its row and column in words; the place in the template only where no column says it. */
function toldAt({ row, column, problem }: Found, language: Language): ToldProblem {
  const texts = BATCH_TEXTS[language];
  const place = [
    ...(row === null ? [] : [texts.row(row)]),
    ...(column === null ? [] : [texts.column(column)]),
  ].join(", ");
  const { what, remedy } = describeProblem(problem, SENTENCES[language]);
  const said = column === null ? problemLine(problem, SENTENCES[language]) : `${what} ${remedy}`;
  return {
    ...problem,
    path: place === "" ? problem.path : place,
    message: place === "" ? said : `${place}: ${said}`,
  };
}

function atPlace(problems: readonly Found[], file: string): InputProblem {
  return new InputProblem((language) =>
    problems.map((found) => {
      const told = toldAt(found, language);
      return { ...told, message: `${file}: ${told.message}` };
    }),
  );
}
