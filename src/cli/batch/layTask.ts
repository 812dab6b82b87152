import { jobWithout, joinedJob, type NamedJob, ordersPieces } from "../../core/batch/joinedJob.ts";
import { figuresOf, type LayFigures, type OrderShare, sharesOf } from "../../core/batch/layFigures.ts";
import type { OrderLay } from "../../core/batch/together.ts";
import { namedProblem } from "../../core/drawing/lay/namedProblem.ts";
import { judgeCloth } from "../../core/job/laidCloth.ts";
import { planDocument } from "../../core/job/planDocument/writePlan.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import { readJob } from "../../core/job/projectJob.ts";
import { cheapestPlan, hasStockChoice } from "../../core/job/stocks/cheapestPlan.ts";
import { isCheaperPlan, onAll, openedIn, withOpened } from "../../core/job/stocks/openedStocks.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { copiesLeftOut, lengthUsed } from "../../core/lay/problem/planSums.ts";
import type { CutMode } from "../../core/lay/search/engine.ts";
import { problemLine } from "../../core/problems/describeProblem.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { Language } from "../../core/units/language.ts";
import { openedWords } from "../../export/cutsheet/openedWords.ts";
import type { OutputId } from "../../export/outputs.ts";
import { planFiles } from "../../export/planFiles.ts";
import { nodePool } from "../../worker/nodePool.ts";
import type { Io } from "../command.ts";
import type { OutFile } from "../inOut/writeFiles.ts";
import type { WrittenFile } from "../lay/earlierFiles.ts";
import { fontBytes } from "../lay/fonts.ts";
import { CHOICE_EFFORT } from "../lay/laidProject.ts";
import { layFiles } from "../lay/layOutput.ts";
import { writeLaid } from "../lay/writeLaid.ts";
import { attended } from "../timedSearch.ts";
import { BATCH_TEXTS } from "../words/batchTexts.ts";
import { QUEUE_TEXTS } from "../words/queueTexts.ts";
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
  /** Kinds of files to write beside the plan; all where absent. */
  readonly write?: readonly OutputId[] | undefined;
  /** Of the lay one cloth alone, gone on with from a plan found elsewhere; all of them, from the beginning, where absent. */
  readonly island?: Island | undefined;
}

/** What one of several searches of the same cloth is told. */
export interface Island {
  /** Its place among the cloths of the lay. */
  readonly cloth: number;
  readonly from: LayPlan | null;
}

/** A lay that is done: a small record, from which the summary is written. */
export interface LaidTask extends LayFigures {
  /** By the ids of the lay, and with the names that the maker gave. */
  readonly leftOut: readonly { readonly pieceId: string; readonly problem: Problem }[];
  readonly folder: string;
  readonly currency: string;
  readonly shares: readonly OrderShare[];
  /** What is cut into and why where there was a choice, and what was not written and why, in sentences. */
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
export async function doLayTask(task: LayTask, out: string, told?: (news: SearchTold) => void): Promise<LaidTask> {
  const read = jobOfTask(task);
  return writeLayTask(task, await searchLayTask(task, told, read), out, read);
}

/** A better plan of one of the cloths of a lay. */
export interface SearchTold {
  /** Which cloth, from 1, of how many. */
  readonly cloth: number;
  readonly cloths: number;
  readonly materialId: string;
  /** Taken of its stock, mm; copies left out; placements tried. */
  readonly lengthMm: number;
  readonly leftOut: number;
  readonly evaluations: number;
}

/**
 * The search of a lay alone: a plan for each cloth, in the order of the project's lays, or for the one that is asked
 * for. Nothing is written.
 */
export async function searchLayTask(
  task: LayTask,
  told?: (news: SearchTold) => void,
  read: TaskJob = jobOfTask(task),
): Promise<LayPlan[]> {
  const { island } = task;
  const { project, lays: all } = read.job;
  const lays = island === undefined ? all : all.slice(island.cloth, island.cloth + 1);
  const { evaluations, seed, mode } = task.effort;
  const from = island?.from ?? undefined;
  const pool = nodePool(1);
  try {
    const plans: LayPlan[] = [];
    for (const [i, { material, problem }] of lays.entries()) {
      // Which stocks to cut into is chosen by money first; whoever asks for one cloth alone has chosen already.
      const chosen =
        island === undefined && hasStockChoice(material)
          ? (await attended(cheapestPlan(material, problem, project, { mode, seed, evaluations: CHOICE_EFFORT })))
              .best.plan
          : null;
      const searched = chosen === null ? problem : withOpened(material, problem, openedIn(material, chosen));
      const searching = pool.search(
        { problem: searched, mode, seed, evaluations, from },
        ({ plan, evaluations }) => {
          const figures = { lengthMm: lengthUsed(plan), leftOut: copiesLeftOut(plan), evaluations };
          told?.({ cloth: i + 1, cloths: lays.length, materialId: problem.materialId, ...figures });
        },
      );
      const { plan } = await searching.result;
      if (chosen === null) plans.push(plan);
      else {
        const whole = onAll(problem, plan);
        plans.push(isCheaperPlan(material, problem, project, whole, chosen) ? whole : chosen);
      }
    }
    return plans;
  } finally {
    pool.close();
  }
}

/**
 * Why plans that somebody else says are those of a task may not be drawn, in sentences; none when they may. Each is
 * checked against the lays worked out here from the task itself, and has to lay what a first look here lays.
 */
export async function refusalOfPlans(
  task: LayTask,
  plans: readonly LayPlan[],
  read: TaskJob = jobOfTask(task),
): Promise<string[]> {
  const { lays } = read.job;
  if (plans.length !== lays.length) return [`${plans.length} plans for ${lays.length} cloths`];
  const faults = lays.flatMap(({ problem }, i) => {
    const plan = plans[i]!;
    return plan.materialId === problem.materialId
      ? checkPlan(problem, plan).map((fault) => problemLine(fault))
      : [`a plan for "${plan.materialId}", not "${problem.materialId}"`];
  });
  if (faults.length > 0 || plans.every(({ unplaced }) => unplaced.length === 0)) return faults;
  const first = await searchLayTask({ ...task, effort: { ...task.effort, evaluations: 1 } }, undefined, read);
  const isLess = plans.some((plan, i) => copiesLeftOut(plan) > copiesLeftOut(first[i]!));
  return isLess ? [QUEUE_TEXTS[task.language].leavesOut] : [];
}

/** Plans that may not be drawn, and why. */
export interface Refused {
  readonly refused: readonly string[];
}

/** Checks plans that somebody else says are those of a task, and writes its files below `out` if they may be drawn. */
export async function drawLayTask(
  task: LayTask,
  plans: readonly LayPlan[],
  out: string,
): Promise<LaidTask | Refused> {
  const read = jobOfTask(task);
  const refused = await refusalOfPlans(task, plans, read);
  return refused.length > 0 ? { refused } : writeLayTask(task, plans, out, read);
}

/** Has the plans of a lay checked and writes its files below `out`; of a plan with faults only the plan itself. */
async function writeLayTask(
  task: LayTask,
  plans: readonly LayPlan[],
  out: string,
  { orders, job }: TaskJob,
): Promise<LaidTask> {
  const { language, effort } = task;
  const laid = job.lays.map((lay, i) => judgeCloth({ ...lay, plan: plans[i]! }, effort.mode, job.project));
  const document = planDocument(job, laid, effort.seed);
  const faults = laid.flatMap((cloth) => cloth.faults.map((fault) => problemLine(fault)));
  const made = faults.length > 0 ? null : await layFiles(job, laid, silent(language), task.write);
  const written = new Map<string, readonly WrittenFile[]>();
  if (orders.length > 1 && made !== null)
    for (const [i, order] of orders.entries()) {
      const { folder } = task.orders[i]!;
      const document = { laywrightOrder: 1, order: order.name, lay: task.folder };
      const files = await orderFiles(
        order,
        task,
        ORDER_FILES.filter((id) => task.write?.includes(id) ?? true),
      );
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
      ...laid
        .filter(({ material }) => hasStockChoice(material))
        .map(({ material, plan }) => {
          const said = openedWords(job.project, material, plan, ({ id }) => id, language);
          return `${material.name}: ${said.join(" ")}`;
        }),
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

/** The orders of a task worked out, and the job of all of them together. */
interface TaskJob {
  readonly orders: readonly NamedJob[];
  readonly job: ProjectJob;
}

function jobOfTask(task: LayTask): TaskJob {
  const orders = task.orders.map(({ name, text }) => ({ name, job: soundJob(text, task) }));
  const job = orders.length === 1 ? orders[0]!.job : joinedJob(orders, BATCH_TEXTS[task.language].orders);
  return { orders, job };
}

function soundJob(text: string, { withheld, language }: LayTask): ProjectJob {
  const read = readJob(text, language);
  if (!read.ok) throw new Error(read.problems.map((problem) => problemLine(problem)).join("\n"));
  return jobWithout(read.value, withheld, language);
}

/** What an order gets that lies with others: its own pieces, how its straps are made, its labels, and where it lies. */
async function orderFiles(
  { job }: NamedJob,
  { folder, language }: LayTask,
  wanted: readonly OutputId[],
): Promise<readonly OutFile[]> {
  const { pieces, straps } = job;
  const project = { ...job.project, name: `${job.project.name} (${folder})` };
  const input = { project, pieces, straps, language, lays: [], mats: new Map(), fonts: fontBytes() };
  const { files } = await planFiles(input, wanted);
  return files;
}

const ORDER_FILES: readonly OutputId[] = ["cut-sheet", "cut-sheet-text", "cut-list", "labels"];
