import { statSync } from "node:fs";
import { TOGETHER } from "../../core/batch/together.ts";
import { threadsHere } from "../../worker/nodePool.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, programVersion, UsageError } from "../command.ts";
import { InputProblem } from "../inOut/toldProblem.ts";
import { numberOption, requiredOption, wordOption } from "../options/optionValues.ts";
import { cutMode, searchSettings } from "../options/searchSettings.ts";
import { writtenOutputs } from "../options/writtenOutputs.ts";
import { connectQueue } from "../queue/connect.ts";
import { BATCH_TEXTS } from "../words/batchTexts.ts";
import { layBatch, type Results, readUntil, writeSummary } from "./layBatch.ts";
import { type Batch, batchOfFolder, batchOfTable } from "./planBatch.ts";
import { PlanFolder } from "./planFolder.ts";

const EVALUATIONS_PER_EFFORT = 1_000_000;

/** Reads, lays, tells and writes. */
export async function runBatch(args: ParsedArgs, io: Io): Promise<ExitCode> {
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
  const isFolder = statSync(first, { throwIfNoEntry: false })?.isDirectory() ?? false;
  if (isFolder && table !== undefined) throw new UsageError((say) => say.oneTooMany(table));
  if (!isFolder && table === undefined) throw new UsageError((say) => say.needs("batch", "TEMPLATE ORDERS"));
  const batch = isFolder ? batchOfFolder(first, wish) : batchOfTable(first, table!, wish);
  readUntil(batch, () => batch.lays.length > 0, io);
  if (batch.lays.length === 0)
    throw new InputProblem(() => [...batch.nameless, ...batch.orders.flatMap(({ problems }) => problems)]);
  const folder = args.values.get("plans");
  const plans = folder === undefined ? null : new PlanFolder(folder, programVersion());
  plans?.prepare();
  const url = args.values.get("queue");
  const store = url === undefined ? null : await connectQueue(url, programVersion());
  try {
    const { results, stopped } = await layBatch(batch, { out, threads, store, plans }, io);
    return tell(batch, results, stopped, out, args.switches.has("json"), io);
  } finally {
    store?.close();
  }
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
