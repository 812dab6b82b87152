import { namedProblem } from "../../core/drawing/lay/namedProblem.ts";
import { ringBox } from "../../core/geometry/box.ts";
import type { JudgedCloth } from "../../core/job/laidCloth.ts";
import { type PlanCut, planCut } from "../../core/job/planCut.ts";
import { materialPlan, planDocument } from "../../core/job/planDocument/writePlan.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import { ruleCosts } from "../../core/job/ruleCosts.ts";
import type { LayChoice } from "../../core/lay/alternatives/searchChoices.ts";
import { type StripsPerMetre, strapsPerMetre } from "../../core/lay/boxes/straps/strapsPerMetre.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import type { LayProblem } from "../../core/lay/problem/layProblem.ts";
import { inOneGo } from "../../core/lay/search/breath.ts";
import { CHOICES } from "../../core/lay/search/comparePlans.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import { problemLine } from "../../core/problems/describeProblem.ts";
import { LEAST_STRIP, type Project } from "../../core/project/project.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { sayLengths } from "../../core/units/sayLength.ts";
import { RULER_TEXTS, SENTENCES } from "../../core/words/words.ts";
import { layWords, ruleCostWords } from "../../export/cutsheet/layWords.ts";
import { nodePool, threadsHere } from "../../worker/nodePool.ts";
import type { SearchPool } from "../../worker/searchPool.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, UsageError } from "../command.ts";
import { readProjectFile } from "../inOut/editProjectFile.ts";
import { readInput, withItsWorkshop } from "../inOut/readInput.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { numberOption, wordOption } from "../options/optionValues.ts";
import { withOutputOptions } from "../options/outputOptions.ts";
import { cutMode, searchSettings } from "../options/searchSettings.ts";
import { writtenOutputs } from "../options/writtenOutputs.ts";
import { CLI_TEXTS } from "../words/words.ts";
import { choiceWords } from "./choiceWords.ts";
import { costWords } from "./costWords.ts";
import { tellUsed, withCupboard } from "./fromCupboard.ts";
import { helpedPool } from "./helpedPool.ts";
import { type LaidProject, layProject } from "./laidProject.ts";
import { type ChoiceEffort, layChoices } from "./layChoices.ts";
import { layFiles } from "./layOutput.ts";
import { planFile, type WrittenPlan, writeLaid } from "./writeLaid.ts";

const EVALUATIONS_PER_EFFORT = 1_000_000;

/** Reads, lays, tells and writes. */
export async function runLay(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const effort = numberOption(args, "effort", { least: 0.001, most: 1e6 }, null);
  if (effort !== null && args.values.has("seconds")) throw new UsageError((say) => say.either("seconds", "effort"));
  const ofChoices = args.values.has("choose") || args.switches.has("choices");
  // A plan by effort must not depend on the machine; choices look for large offcuts on one thread only.
  const usual = effort === null && !ofChoices ? threadsHere() : 1;
  const { seed, seconds, threads } = searchSettings(args, effort === null ? 10 : 86_400, usual);
  const evaluations = effort === null ? Infinity : effort * EVALUATIONS_PER_EFFORT;
  const mode = cutMode(args);
  const file = args.operands[0]!;
  const text = withOutputOptions(withItsWorkshop(readInput(file), file), args);
  const ownJob = readProjectFile(text, io.language);
  const offered = withCupboard(ownJob, args, io);
  const read = offered.job;
  const choose = args.values.has("choose") ? wordOption(args, "choose", CHOICES, "shortest") : null;
  if (choose !== null && args.values.has("cut")) throw new UsageError((say) => say.chooseAndCut);
  if (choose !== null && args.switches.has("choices")) throw new UsageError((say) => say.choicesOrChoose);
  const helped = await helpedPool(args, text, read, io);
  const pool = helped?.pool ?? nodePool(threads);
  if (args.switches.has("choices")) {
    try {
      return await tellChoices(args, io, read, pool, { seconds, evaluations, seed, threads });
    } finally {
      pool.close();
    }
  }
  let done: LaidProject;
  try {
    done = await layProject(read, pool, { seconds, evaluations, seed, mode, choose, threads }, io);
  } finally {
    pool.close();
    helped?.end();
  }
  if (effort === null) {
    const searched = withDecimalSign(done.seconds.toFixed(1), io.language);
    io.err(`${CLI_TEXTS[io.language].lay.searched(searched, helped?.pool.threads ?? threads, done.quiet)}\n`);
  }
  const code = await tellAndWrite(args, io, read, done.laid, seed);
  if (code !== EXIT.bug) tellUsed(offered, done.laid, args, io);
  return code;
}

/** What each rule about the pattern costs, cloth by cloth; nothing where none is matched. */
function ruleLines(
  { project }: ProjectJob,
  laid: readonly JudgedCloth[],
  language: Language,
): Map<string, string[]> {
  return new Map(
    laid.map(({ material: { id } }) => [id, ruleCostWords(inOneGo(ruleCosts(project, id)), project, language)]),
  );
}

/** Three plans for every cloth side by side; seconds and effort are shared among the cloths. */
async function tellChoices(
  args: ParsedArgs,
  io: Io,
  { project, lays }: ProjectJob,
  pool: SearchPool,
  effort: ChoiceEffort,
): Promise<ExitCode> {
  for (const other of ["out", "cut"])
    if (args.values.has(other)) throw new UsageError((say) => say.choicesWith(other));
  const json = args.switches.has("json");
  const texts = CLI_TEXTS[io.language].lay;
  const materials: object[] = [];
  for (const { material, problem } of lays) {
    const { id, name } = material;
    io.progress(texts.threePlans(name));
    const choices = await layChoices(problem, pool, { ...effort, seconds: effort.seconds / lays.length });
    for (const { plan } of choices) {
      const faults = checkPlan(problem, plan);
      if (faults.length > 0) throw new Error(faults.map((fault) => problemLine(fault)).join("\n"));
    }
    const words = choices.map((choice) => `  ${choiceWords(problem, choice, project.output.lengths, io.language)}`);
    if (json)
      materials.push({ materialId: id, name, choices: choices.map((choice) => choiceData(name, problem, choice)) });
    else io.out(`${[name, ...words].join("\n")}\n`);
  }
  io.progress("");
  if (json) io.out(`${JSON.stringify({ project: project.name, seed: effort.seed, materials })}\n`);
  return EXIT.done;
}

/** A choice as data; lengths in mm. */
function choiceData(name: string, problem: LayProblem, { best, plan, figures, extraLength }: LayChoice): object {
  const { length, ruler, offcut } = figures;
  const box = offcut && { stockId: offcut.stockId, alongMm: offcut.box.dx, acrossMm: offcut.box.dy };
  const lay = materialPlan(
    name,
    problem,
    plan,
    [],
    planCut(problem, plan, best.includes("easiest") ? "ruler" : "free"),
  );
  return { best, lengthMm: length, extraLengthMm: extraLength, ruler, offcut: box, plan: lay };
}

/** Tells what was laid and writes it, unless the checker found a fault: then the plan alone is kept. */
export async function tellAndWrite(
  args: ParsedArgs,
  io: Io,
  read: ProjectJob,
  laid: readonly JudgedCloth[],
  seed: number,
): Promise<ExitCode> {
  const texts = CLI_TEXTS[io.language].lay;
  const document = planDocument(read, laid, seed);
  const out = args.values.get("out");
  const faults = laid.flatMap((cloth) => cloth.faults);
  const say = sayLengths(read.project.output.lengths, io.language);
  if (faults.length > 0) {
    io.err(`${texts.ourFault}\n`);
    for (const fault of faults) io.err(`${problemLine(fault, SENTENCES[io.language], say)}\n`);
    if (out !== undefined) io.err(`${texts.keptIn(writeFiles(out, [planFile(document)]).join(""))}\n`);
    return EXIT.bug;
  }
  const made = out === undefined ? null : await layFiles(read, laid, io, writtenOutputs(args));
  const written = out === undefined || made === null ? null : writeLaid(out, document, made.files);
  if (written !== null) tellEarlier(written, io);
  for (const note of made?.notes ?? []) io.err(`${note}\n`);
  if (made !== null && made.missingGlyphs.length > 0) {
    io.err(`${texts.noFont(made.missingGlyphs.join(", "))}\n`);
  }
  if (args.switches.has("json")) io.out(`${JSON.stringify(document)}\n`);
  else io.out(summary(read, laid, written?.paths ?? [], io.language));
  const leftOut = laid.flatMap((cloth) => cloth.leftOut);
  for (const left of leftOut) {
    const named = namedProblem(left, read.project, read.pieces, io.language);
    io.err(`${problemLine(named, SENTENCES[io.language], say)}\n`);
  }
  return leftOut.length > 0 ? EXIT.input : EXIT.done;
}

/** What became of the files of an earlier plan in the folder. */
function tellEarlier({ removed, kept }: WrittenPlan, io: Io): void {
  const texts = CLI_TEXTS[io.language].lay;
  if (removed.length > 0) io.err(`${texts.takenAway(removed.join(", "))}\n`);
  if (kept.length > 0) io.err(`${texts.stays(kept.join(", "))}\n`);
}

function summary(
  read: ProjectJob,
  laid: readonly JudgedCloth[],
  paths: readonly string[],
  language: Language,
): string {
  const { project, pieces, heldLengthwise, lays } = read;
  const texts = CLI_TEXTS[language].lay;
  const lines = [texts.bags(project.name, project.bags)];
  const rules = ruleLines(read, laid, language);
  for (const cloth of laid) {
    const note = cutNote(cloth.cut, language);
    const narrow = narrowNote(cloth.cut, project, language);
    lines.push(
      "",
      cloth.material.name,
      ...layWords(cloth, project, language).map((line) => `  ${line}`),
      ...rules.get(cloth.material.id)!.map((line) => `  ${line}`),
      ...[note, narrow].flatMap((line) => (line === null ? [] : [`  ${line}`])),
    );
  }
  if (heldLengthwise.length > 0) lines.push("", texts.heldLengthwise(heldLengthwise.join(", ")));
  const costs = costWords(laid, project, language);
  if (costs.length > 0) lines.push("", texts.cost, ...costs.map((line) => `  ${line}`));
  const strips = strapsPerMetre(
    pieces,
    lays.map(({ problem }) => problem),
  );
  if (strips.length > 0) lines.push("", texts.strips);
  for (const { piece, yield: found } of strips)
    lines.push(`  ${piece.name}: ${stripWords(piece, found, project, language)}`);
  if (paths.length > 0) lines.push("", texts.written, ...paths.map((path) => `  ${path}`));
  return `${lines.join("\n")}\n`;
}

/** What a plan did not keep of the way of cutting that was asked for; null when it kept it. */
function cutNote({ reason, stages }: PlanCut, language: Language): string | null {
  const texts = RULER_TEXTS[language];
  switch (reason) {
    case null:
      return null;
    case "matched":
      return texts.freeMatched;
    case "pinned":
      return texts.freePinned;
    case "aslant":
      return texts.freeAslant;
    case "cramped":
      return texts.freeCramped;
    case "more-stages":
      return texts.moreStages(stages ?? 0);
  }
}

/** Strips narrower than wished, of a plan that was asked for by ruler; null without any. */
function narrowNote({ asked, narrowStrips }: PlanCut, project: Project, language: Language): string | null {
  if (asked === "free" || narrowStrips === null || narrowStrips === 0) return null;
  const least = formatLength(project.leastStrip ?? LEAST_STRIP, project.output.lengths, language);
  return RULER_TEXTS[language].narrowStrips(narrowStrips, least);
}

function stripWords(piece: CutPiece, found: StripsPerMetre["yield"], project: Project, language: Language): string {
  const texts = CLI_TEXTS[language].lay;
  if (found.count === 0) {
    const box = ringBox(piece.outline.outer);
    return texts.noStrip(formatLength(box.maxX - box.minX, project.output.lengths, language));
  }
  return found.proven ? texts.stripsProven(found.count) : texts.stripsBound(found.count, found.bound);
}
