import { existsSync, rmSync } from "node:fs";
import { join } from "node:path";
import { setImmediate } from "node:timers/promises";
import { toMinor } from "../../core/buying/money.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { moneyText } from "../../export/cutsheet/moneyText.ts";
import { type Io, programVersion } from "../command.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import type { QueueStore } from "../queue/connect.ts";
import { runOnQueue } from "../queue/runOnQueue.ts";
import { BATCH_TEXTS } from "../words/batchTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";
import type { LayTask } from "./layTask.ts";
import type { Batch } from "./planBatch.ts";
import type { PlanFolder } from "./planFolder.ts";
import { hasRecords, keepRecord, keptRecord, keyOf, removeOutlived } from "./records.ts";
import { runTasks, type TaskResult } from "./runTasks.ts";
import { type OrderResult, orderResults, summaryCsv, summaryHtml } from "./summary.ts";

/** Results by the folder of the lay. */
export type Results = ReadonlyMap<string, TaskResult>;

/** Where and with what a batch is laid. */
export interface LayingWish {
  readonly out: string;
  readonly threads: number;
  /** The queue whose workers search, or null where this machine does all. */
  readonly store: QueueStore | null;
  /** Where plans are kept beyond this batch, or null. */
  readonly plans: PlanFolder | null;
  /** Of threads, for measurements that leave the laying out. */
  readonly entry?: URL;
}

/** Reads on until there is enough, or all has been read; tells how far it is. */
export function readUntil(batch: Batch, isEnough: () => boolean, io: Io): void {
  const { orders } = batch;
  while (!isEnough() && batch.readOn()) {
    const read = orders.length - batch.unread;
    if (read % 50 === 0) io.progress(BATCH_TEXTS[io.language].reading(read, orders.length));
  }
}

/**
 * Lays what is not there yet; the first lays begin while later orders are still being read, unless an earlier batch
 * left something that may have to go before anything new is laid. Every result is kept the moment it comes.
 */
export async function layBatch(
  batch: Batch,
  { out, threads, store, plans, entry }: LayingWish,
  io: Io,
): Promise<{ readonly results: Results; readonly stopped: boolean }> {
  const texts = BATCH_TEXTS[io.language];
  const version = programVersion();
  if (hasRecords(out)) readUntil(batch, () => false, io);
  const known = batch.lays.length;
  const keys = batch.lays.map((lay) => keyOf(batch.taskOf(lay), version));
  const changed = removeOutlived(out, new Set(keys));
  if (changed.length > 0) io.err(`${CLI_TEXTS[io.language].lay.stays(changed.join(", "))}\n`);
  const results = new Map<string, TaskResult>();
  const kept = keys.map((key) => keptRecord(out, key));
  for (const laid of kept) if (laid !== null) results.set(laid.folder, { laid });
  const before = results.size;
  if (before > 0) io.err(`${texts.kept(before)}\n`);
  // Now rather than after hours: whether the folder can be written to.
  writeSummary(batch, results, out, io.language);
  const sent = new Map<string, { readonly key: string; readonly rank: number }>();
  const dues = [...new Set(batch.orders.map(({ due }) => due ?? NO_DUE))].sort();
  function* tasks(): Generator<LayTask> {
    for (let i = 0; ; i++) {
      while (batch.lays.length <= i) if (!batch.readOn()) return;
      if (i < known && kept[i] !== null) continue;
      const lay = batch.lays[i]!;
      const task = batch.taskOf(lay);
      const due = lay.orders.map(({ due }) => due ?? NO_DUE).sort()[0]!;
      sent.set(task.folder, { key: keys[i] ?? keyOf(task, version), rank: dues.indexOf(due) + 1 });
      yield task;
    }
  }
  const start = performance.now();
  let done = 0;
  let failed = 0;
  const show = (): void => {
    const of = batch.lays.length + batch.unread - before;
    const left = done === 0 ? null : ((performance.now() - start) / done) * (of - done);
    const minutes = left === null ? null : texts.minutes(Math.round(left / 60_000));
    io.progress(texts.progress(done, of, failed, minutes));
  };
  const onEnd = (task: LayTask, result: TaskResult): void => {
    results.set(task.folder, result);
    done++;
    if (!("laid" in result) || result.laid.faults.length > 0) failed++;
    else keepRecord(out, sent.get(task.folder)!.key, result.laid);
    sent.delete(task.folder);
    show();
  };
  const running =
    store === null
      ? runTasks(tasks(), { out, threads, plans: plans?.folder ?? null, entry }, onEnd)
      : runOnQueue(tasks(), store, { out, threads, plans, sent: (folder) => sent.get(folder)! }, onEnd, io);
  let isOver = false;
  let stopped = false;
  const stop = (): void => {
    stopped = true;
    running.stop();
    io.err(`${texts.stopped}\n`);
  };
  const readAhead = async (): Promise<void> => {
    if (batch.unread === 0) return;
    while (!isOver && !stopped && batch.readOn()) await setImmediate();
    // What is wrong with an order stands in the summary long before the last is laid.
    if (!isOver && !stopped) writeSummary(batch, results, out, io.language);
  };
  process.once("SIGINT", stop);
  show();
  try {
    const ended = running.ended.finally(() => {
      isOver = true;
    });
    await Promise.all([readAhead().finally(() => isOver || batch.unread === 0 || running.stop()), ended]);
  } finally {
    process.off("SIGINT", stop);
    io.progress("");
  }
  return { results, stopped };
}

/** After every day there is. */
const NO_DUE = "9";

/** What came of the orders so far, as files and in lines. */
interface Summary {
  readonly orders: readonly OrderResult[];
  readonly lines: readonly string[];
  readonly paths: readonly string[];
}

/** Writes what came of the orders so far. */
export function writeSummary(batch: Batch, results: Results, out: string, language: Language): Summary {
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
