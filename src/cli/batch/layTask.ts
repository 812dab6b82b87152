import { jobWithout, joinedJob, type NamedJob, ordersPieces } from "../../core/batch/joinedJob.ts";
import { figuresOf, type LayFigures, type OrderShare, sharesOf } from "../../core/batch/layFigures.ts";
import type { OrderLay } from "../../core/batch/together.ts";
import { namedProblem } from "../../core/drawing/lay/namedProblem.ts";
import { type JudgedCloth, judgeCloth } from "../../core/job/laidCloth.ts";
import { planDocument } from "../../core/job/planDocument/writePlan.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import { readJob } from "../../core/job/projectJob.ts";
import type { CutMode } from "../../core/lay/engines/chooseEngines.ts";
import { problemLine } from "../../core/problems/describeProblem.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { Language } from "../../core/units/language.ts";
import { planFiles } from "../../export/planFiles.ts";
import { nodePool } from "../../worker/nodePool.ts";
import type { Io } from "../command.ts";
import type { OutFile } from "../inOut/writeFiles.ts";
import type { WrittenFile } from "../lay/earlierFiles.ts";
import { fontBytes } from "../lay/fonts.ts";
import { layFiles } from "../lay/layOutput.ts";
import { writeLaid } from "../lay/writeLaid.ts";
import { BATCH_TEXTS } from "../words/batchTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** How a batch searches: the same for each of its lays. */
export interface BatchEffort {
  /** For each cloth. */
  readonly evaluations: number;
  readonly seed: number;
  readonly mode: CutMode;
}

/** One lay to work out and write; everything that its bytes depend on but the program itself. */
export interface LayTask {
  /** Where its drawings go, below the batch's folder, with `/` between names. */
  readonly folder: string;
  /** The orders laid together; each has a folder of its own, the same as the lay's where it is the only one. */
  readonly orders: readonly { readonly name: string; readonly folder: string; readonly text: string }[];
  readonly withheld: OrderLay["withheld"];
  readonly effort: BatchEffort;
  readonly language: Language;
}

/** A lay that is done: a small record, from which the summary is written. */
export interface LaidTask extends LayFigures {
  /** By the ids of the lay, and with the names that the maker gave. */
  readonly leftOut: readonly { readonly pieceId: string; readonly problem: Problem }[];
  readonly folder: string;
  readonly currency: string;
  readonly shares: readonly OrderShare[];
  /** What was not written and why, in sentences. */
  readonly notes: readonly string[];
  /** What the checker found, in sentences: then only the plan is there. */
  readonly faults: readonly string[];
  /** Every file written, by its name below the batch's folder. */
  readonly files: readonly WrittenFile[];
}

/**
 * Works out one lay, has it checked and writes its files below `out`. One thread, no clock: the same task gives the same
 * bytes. Throws on a bug of ours only: the texts of its orders have been read before.
 */
export async function doLayTask(task: LayTask, out: string): Promise<LaidTask> {
  const { language, effort } = task;
  const orders = task.orders.map(({ name, text }) => ({ name, job: soundJob(text, task) }));
  const texts = BATCH_TEXTS[language];
  const job = orders.length === 1 ? orders[0]!.job : joinedJob(orders, texts.orders);
  const laid = await layAll(job, effort);
  const document = planDocument(job, laid, effort.seed);
  const faults = laid.flatMap((cloth) => cloth.faults.map((fault) => problemLine(fault)));
  const made = faults.length > 0 ? null : await layFiles(job, laid, silent(language));
  const written = new Map<string, readonly WrittenFile[]>();
  if (orders.length > 1 && made !== null)
    for (const [i, order] of orders.entries()) {
      const { folder } = task.orders[i]!;
      const document = { laywrightOrder: 1, order: order.name, lay: task.folder };
      const files = await orderFiles(order, task.folder, language);
      written.set(folder, writeLaid(`${out}/${folder}`, document, files, "order.json").files);
    }
  written.set(task.folder, writeLaid(`${out}/${task.folder}`, document, made?.files ?? []).files);
  const pieces = orders.length === 1 ? [job.pieces] : ordersPieces(orders);
  const glyphs = made?.missingGlyphs ?? [];
  return {
    ...figuresOf(laid),
    leftOut: laid.flatMap((cloth) =>
      cloth.leftOut.map((left) => ({
        pieceId: left.pieceId,
        problem: namedProblem(left, job.project, job.pieces, language),
      })),
    ),
    folder: task.folder,
    currency: job.project.currency,
    shares: sharesOf(
      laid,
      orders.map(({ name, job: { project } }, i) => ({ name, bags: project.bags, pieces: pieces[i]! })),
    ),
    notes: [
      ...(made?.notes ?? []),
      ...(glyphs.length > 0 ? [CLI_TEXTS[language].lay.noFont(glyphs.join(", "))] : []),
    ],
    faults,
    files: [...written].flatMap(([folder, files]) =>
      files.map(({ name, sha256 }) => ({ name: `${folder}/${name}`, sha256 })),
    ),
  };
}

/** A lay of many is told in the summary; its files say nothing on the way. */
function silent(language: Language): Io {
  const nothing = (): void => {};
  return { language, out: nothing, err: nothing, progress: nothing };
}

function soundJob(text: string, { withheld, language }: LayTask): ProjectJob {
  const read = readJob(text, language);
  if (!read.ok) throw new Error(read.problems.map((problem) => problemLine(problem)).join("\n"));
  return jobWithout(read.value, withheld, language);
}

async function layAll(
  { lays, project }: ProjectJob,
  { evaluations, seed, mode }: BatchEffort,
): Promise<JudgedCloth[]> {
  const pool = nodePool(1);
  try {
    const laid: JudgedCloth[] = [];
    for (const lay of lays) {
      const { plan } = await pool.search({ problem: lay.problem, mode, seed, evaluations }).result;
      laid.push(judgeCloth({ ...lay, plan }, mode, project));
    }
    return laid;
  } finally {
    pool.close();
  }
}

/** What an order gets that lies with others: its own pieces, how its straps are made, its labels, and where it lies. */
async function orderFiles({ job }: NamedJob, lay: string, language: Language): Promise<readonly OutFile[]> {
  const { pieces, straps } = job;
  const project = { ...job.project, name: `${job.project.name} (${lay})` };
  const input = { project, pieces, straps, language, lays: [], mats: new Map(), fonts: fontBytes() };
  const { files } = await planFiles(input, ["cut-sheet", "cut-sheet-text", "cut-list", "labels"]);
  return files;
}
