import { existsSync, rmSync, statSync } from "node:fs";
import { join } from "node:path";
import { TOGETHER } from "../../core/batch/together.ts";
import { toMinor } from "../../core/buying/money.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { moneyText } from "../../export/cutsheet/moneyText.ts";
import { threadsHere } from "../../worker/nodePool.ts";
import {
  type Command,
  EXIT,
  type ExitCode,
  type Io,
  JSON_OPTION,
  type ParsedArgs,
  programVersion,
  UsageError,
} from "../command.ts";
import { InputProblem } from "../inOut/toldProblem.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { numberOption, requiredOption, wordOption } from "../options/optionValues.ts";
import { CUT_OPTION, cutMode, searchSettings } from "../options/searchSettings.ts";
import { WRITE_OPTION, writtenOutputs } from "../options/writtenOutputs.ts";
import { connectQueue, type QueueStore } from "../queue/connect.ts";
import { runOnQueue } from "../queue/runOnQueue.ts";
import { BATCH_TEXTS } from "../words/batchTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";
import type { LayTask } from "./layTask.ts";
import { type Batch, batchOfFolder, batchOfTable } from "./planBatch.ts";
import { keepRecord, keptRecord, keyOf, removeOutlived } from "./records.ts";
import { runTasks, type TaskResult } from "./runTasks.ts";
import { type OrderResult, orderResults, summaryCsv, summaryHtml } from "./summary.ts";

const EVALUATIONS_PER_EFFORT = 1_000_000;

/** `batch`: from one template and a table of orders to a folder for each. */
export const batchCommand: Command = {
  name: "batch",
  synopsis: "TEMPLATE ORDERS --out DIR [options], or FOLDER --out DIR [options]",
  about:
    'Lays every order of a table (CSV, or a JSON list), each the template with its own values, or every project file of a folder. A column is named order, due, shade, bags, or by a part and its field: "handle.width". Each order gets a folder; summary.html and summary.csv tell metres, use of cloth, cost and what went wrong. One wrong order never stops the others.\nThe same orders and effort give the same bytes on any number of threads. Ctrl-C finishes the lays under way; the same command then goes on, and does nothing twice. Ends with 1 when an order was not laid whole, or when two lays count on the same leftover.',
  options: [
    { name: "out", value: "DIR", help: "folder to write to; made if it is not there" },
    {
      name: "together",
      value: "WHICH",
      help: `orders of the same cloth and shade that are laid together: ${TOGETHER.join(", ")} (default none; due: those due the same day)`,
    },
    { name: "effort", value: "N", help: "search each cloth with N million evaluations (default 0.2)" },
    { name: "seed", value: "N", help: "seed of the search (default 1)" },
    {
      name: "threads",
      value: "N",
      help: "lays worked out at a time (default: the machine's cores, all but one where there are more than two)",
    },
    {
      name: "queue",
      value: "URL",
      help: "have the lays searched by every machine that runs laywright worker on the same Redis store: redis://host:6379, or rediss:// for an encrypted line, user and password in the address; plans are checked and drawn here",
    },
    CUT_OPTION,
    WRITE_OPTION,
    JSON_OPTION,
  ],
  operands: [1, 2],
  run: runBatch,
};

async function runBatch(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const out = requiredOption(args, "out");
  const evaluations = EVALUATIONS_PER_EFFORT * numberOption(args, "effort", { least: 0.001, most: 1e6 }, 0.2);
  const { seed, threads } = searchSettings(args, 0, threadsHere());
  const effort = { evaluations, seed, mode: cutMode(args) };
  const wish = {
    together: wordOption(args, "together", TOGETHER, "none"),
    effort,
    write: writtenOutputs(args),
    language: io.language,
  };
  const [first, table] = args.operands as [string, string | undefined];
  const texts = BATCH_TEXTS[io.language];
  const onRead = (done: number, of: number): void => {
    if (done % 50 === 0) io.progress(texts.reading(done, of));
  };
  const isFolder = statSync(first, { throwIfNoEntry: false })?.isDirectory() ?? false;
  if (isFolder && table !== undefined) throw new UsageError((say) => say.oneTooMany(table));
  if (!isFolder && table === undefined) throw new UsageError((say) => say.needs("batch", "TEMPLATE ORDERS"));
  const batch = isFolder ? batchOfFolder(first, wish, onRead) : batchOfTable(first, table!, wish, onRead);
  if (batch.lays.length === 0)
    throw new InputProblem(() => [...batch.nameless, ...batch.orders.flatMap(({ problems }) => problems)]);
  const url = args.values.get("queue");
  const store = url === undefined ? null : await connectQueue(url, programVersion());
  try {
    const { results, stopped } = await layAll(batch, out, threads, store, io);
    return tell(batch, results, stopped, out, args.switches.has("json"), io);
  } finally {
    store?.close();
  }
}

/** Results by the folder of the lay, in the order of the batch's lays. */
type Results = ReadonlyMap<string, TaskResult>;

/** Lays what is not there yet. Every result is kept the moment it comes. */
async function layAll(
  batch: Batch,
  out: string,
  threads: number,
  store: QueueStore | null,
  io: Io,
): Promise<{ readonly results: Results; readonly stopped: boolean }> {
  const version = programVersion();
  const keys = batch.lays.map((lay) => keyOf(batch.taskOf(lay), version));
  const changed = removeOutlived(out, new Set(keys));
  if (changed.length > 0) io.err(`${CLI_TEXTS[io.language].lay.stays(changed.join(", "))}\n`);
  const results = new Map<string, TaskResult>();
  const keyOfFolder = new Map<string, string>();
  const waiting: number[] = [];
  for (const [i, lay] of batch.lays.entries()) {
    const kept = keptRecord(out, keys[i]!);
    if (kept === null) waiting.push(i);
    else results.set(kept.folder, { laid: kept });
    if (kept === null) keyOfFolder.set(batch.folderOf(lay), keys[i]!);
  }
  const texts = BATCH_TEXTS[io.language];
  if (results.size > 0) io.err(`${texts.kept(results.size)}\n`);
  // Now rather than after hours: whether the folder can be written to.
  writeSummary(batch, results, out, io.language);
  function* tasks(): Generator<LayTask> {
    for (const i of waiting) yield batch.taskOf(batch.lays[i]!);
  }
  const start = performance.now();
  let done = 0;
  let failed = 0;
  const show = (): void => {
    const left = done === 0 ? null : ((performance.now() - start) / done) * (waiting.length - done);
    const minutes = left === null ? null : texts.minutes(Math.round(left / 60_000));
    io.progress(texts.progress(done, waiting.length, failed, minutes));
  };
  const onEnd = (task: LayTask, result: TaskResult): void => {
    results.set(task.folder, result);
    done++;
    if (!("laid" in result) || result.laid.faults.length > 0) failed++;
    else keepRecord(out, keyOfFolder.get(task.folder)!, result.laid);
    show();
  };
  const running =
    store === null
      ? runTasks(tasks(), out, threads, onEnd)
      : runOnQueue(tasks(), store, { out, threads, keyOfFolder, dueOf: dueOfFolders(batch) }, onEnd, io);
  let stopped = false;
  const stop = (): void => {
    stopped = true;
    running.stop();
    io.err(`${texts.stopped}\n`);
  };
  process.once("SIGINT", stop);
  show();
  try {
    await running.ended;
  } finally {
    process.off("SIGINT", stop);
    io.progress("");
  }
  return { results, stopped };
}

/** What came of the orders so far, as files and in lines. */
interface Summary {
  readonly orders: readonly OrderResult[];
  readonly lines: readonly string[];
  readonly paths: readonly string[];
}

function writeSummary(batch: Batch, results: Results, out: string, language: Language): Summary {
  const folders = batch.lays.map(batch.folderOf);
  const orders = orderResults(batch, folders, results, language);
  const lines = totalLines(orders, results.size, language);
  const nameless = batch.nameless.map(({ message }) => message);
  const given = givenUp(batch, results);
  const letters = join(out, DEAD_LETTERS);
  if (given.length === 0 && existsSync(letters)) rmSync(letters);
  const paths = writeFiles(out, [
    { name: "summary.html", data: summaryHtml(orders, [...lines, ...nameless], language) },
    { name: "summary.csv", data: summaryCsv(orders, language) },
    ...(given.length === 0 ? [] : [{ name: DEAD_LETTERS, data: `${JSON.stringify(given, null, 2)}\n` }]),
  ]);
  return { orders, lines, paths };
}

/** Lays that no machine brought to an end, with the reason of every try: a file that is there only where there are any. */
const DEAD_LETTERS = "dead-letters.json";

function givenUp(batch: Batch, results: Results): object[] {
  return batch.lays.flatMap((lay) => {
    const folder = batch.folderOf(lay);
    const result = results.get(folder);
    if (result === undefined || !("givenUp" in result)) return [];
    return [{ lay: folder, orders: lay.orders.map(({ name }) => name), tries: result.givenUp }];
  });
}

function dueOfFolders(batch: Batch): ReadonlyMap<string, string | null> {
  return new Map(
    batch.lays.map((lay) => [batch.folderOf(lay), lay.orders.map(({ due }) => due ?? "9").sort()[0]!]),
  );
}

function tell(batch: Batch, results: Results, stopped: boolean, out: string, json: boolean, io: Io): ExitCode {
  const texts = BATCH_TEXTS[io.language];
  const { orders, lines, paths } = writeSummary(batch, results, out, io.language);
  for (const { message } of batch.nameless) io.err(`${message}\n`);
  for (const { order, state, notes } of orders)
    for (const note of notes) io.err(state === "refused" ? `${note}\n` : `${order}: ${note}\n`);
  for (const result of results.values()) if ("bug" in result) io.err(`${result.bug}\n`);
  if (stopped) io.err(`${texts.again}\n`);
  if (json) io.out(`${JSON.stringify({ laywrightBatch: 1, orders, problems: batch.nameless })}\n`);
  else io.out(`${[...lines, texts.written(paths.join(", "))].join("\n")}\n`);
  if (orders.some(({ state }) => state === "fault")) return EXIT.bug;
  const isWhole = orders.every(({ state }) => state === "laid") && batch.nameless.length === 0;
  return isWhole ? EXIT.done : EXIT.input;
}

function totalLines(orders: readonly OrderResult[], lays: number, language: Language): string[] {
  const texts = BATCH_TEXTS[language];
  const done = orders.filter(({ lay }) => lay !== null);
  const metres = done.reduce((sum, { lengthMm }) => sum + lengthMm!, 0) / 1000;
  const currencies = new Set(done.map(({ currency }) => currency));
  const isPriced = currencies.size === 1 && done.every(({ toPay }) => toPay !== null);
  const currency = [...currencies][0] ?? "";
  const toPay = done.reduce((sum, each) => sum + toMinor(each.toPay ?? 0, currency), 0);
  return [
    texts.counts(orders.filter(({ state }) => state === "laid").length, orders.length, lays),
    texts.totals(
      withDecimalSign(metres.toFixed(2), language),
      isPriced ? moneyText(toPay, currency, language) : null,
    ),
  ];
}
