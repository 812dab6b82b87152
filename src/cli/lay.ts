import { ringBox } from "../core/geometry/ring.ts";
import { type StripsPerMetre, strapsPerMetre } from "../core/lay/yield/strapsPerMetre.ts";
import type { CutPiece } from "../core/materials/cutPiece.ts";
import { problemLine } from "../core/problems/describeProblem.ts";
import { SENTENCES } from "../core/problems/sentenceTables.ts";
import type { Project } from "../core/project/project.ts";
import { formatLength } from "../core/units/formatLength.ts";
import type { Language } from "../core/units/language.ts";
import { layWords } from "../export/cutsheet/layWords.ts";
import { nodePool } from "../worker/nodePool.ts";
import { type Command, EXIT, type ExitCode, type Io, JSON_OPTION, type ParsedArgs, UsageError } from "./command.ts";
import { choiceWords } from "./lay/choiceWords.ts";
import { costWords } from "./lay/costWords.ts";
import { type LaidCloth, layProject } from "./lay/laidProject.ts";
import { layDocument, layFiles } from "./lay/layOutput.ts";
import { numberOption } from "./optionValues.ts";
import { readInput } from "./readInput.ts";
import { type ReadProject, readProjectFile } from "./readProjectFile.ts";
import { CUT_OPTION, cutMode, SEARCH_OPTIONS, searchSettings } from "./searchSettings.ts";
import { type OutFile, writeFiles } from "./writeFiles.ts";

const PLAN_FILE = "plan.json";
const EVALUATIONS_PER_EFFORT = 1_000_000;

/** `lay`: from the project file to the cutting table. */
export const layCommand: Command = {
  name: "lay",
  summary: "lay out a project: cut list, plans, check, and every file for the cutting table",
  synopsis: "PROJECT [--out DIR] [options]",
  about:
    "Works out every piece of the project, lays them on the cloth there is, has an independent checker verify each plan, and writes the files into DIR: plan.json, cut sheet, labels, and for every cloth the drawing at true size, sheets to tape together and one long sheet. Without --out only the summary is printed.\nNothing is written unless every plan passes the checker. Ctrl-C ends the search and goes on with the best plan so far. Ends with 1 when pieces had to be left out; what could be laid is written all the same.",
  options: [
    { name: "out", value: "DIR", help: "folder to write to; made if it is not there" },
    ...SEARCH_OPTIONS.filter(({ name }) => name !== "evaluations" && name !== "seconds"),
    { name: "seconds", value: "N", help: "search for at most N seconds in all (default 10)" },
    { name: "effort", value: "N", help: "search each cloth with N million evaluations: the same plan every time" },
    CUT_OPTION,
    { name: "choices", help: "instead of a plan: shortest, easiest to cut, largest offcut, each with its figures" },
    JSON_OPTION,
  ],
  operands: [1, 1],
  run: runLay,
};

async function runLay(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const effort = numberOption(args, "effort", { least: 0.001, most: 1e6 }, null);
  if (effort !== null && args.values.has("seconds")) throw new UsageError("give either --seconds or --effort");
  const { seed, seconds, threads } = searchSettings(args, effort === null ? 10 : 86_400);
  const evaluations = effort === null ? Infinity : effort * EVALUATIONS_PER_EFFORT;
  const mode = cutMode(args);
  const read = readProjectFile(readInput(args.operands[0]!), io.language);
  if (args.switches.has("choices")) return tellChoices(args, io, read, seconds, seed);
  const pool = nodePool(threads);
  let laid: LaidCloth[];
  try {
    laid = await layProject(read, pool, { seconds, evaluations, seed, mode }, io);
  } finally {
    pool.close();
  }
  return tellAndWrite(args, io, read, laid, seed);
}

/** Three plans for every cloth side by side; the seconds are shared among the cloths. */
function tellChoices(args: ParsedArgs, io: Io, read: ReadProject, seconds: number, seed: number): ExitCode {
  for (const other of ["out", "effort", "cut"])
    if (args.values.has(other)) throw new UsageError(`--choices compares plans; it does not go with --${other}`);
  if (args.switches.has("json")) throw new UsageError("--choices does not go with --json");
  const { project, problems } = read;
  for (const problem of problems) {
    const material = project.materials.find(({ id }) => id === problem.materialId)!;
    io.progress(`${material.name}: three plans`);
    const words = choiceWords(problem, seconds / problems.length, seed, project.output.lengths);
    io.out(`${[material.name, ...words.map((line) => `  ${line}`)].join("\n")}\n`);
  }
  io.progress("");
  return EXIT.done;
}

async function tellAndWrite(
  args: ParsedArgs,
  io: Io,
  read: ReadProject,
  laid: readonly LaidCloth[],
  seed: number,
): Promise<ExitCode> {
  const document = layDocument(read, laid, seed);
  const out = args.values.get("out");
  const planFile: OutFile = { name: PLAN_FILE, data: `${JSON.stringify(document)}\n` };
  const faults = laid.flatMap((cloth) => cloth.faults);
  if (faults.length > 0) {
    io.err("A plan of ours is wrong; nothing is to be cut from it. A bug of ours, please send us your file.\n");
    for (const fault of faults) io.err(`${problemLine(fault, SENTENCES[io.language])}\n`);
    if (out !== undefined) io.err(`The plan is kept in ${writeFiles(out, [planFile]).join("")}\n`);
    return EXIT.bug;
  }
  const made = out === undefined ? null : await layFiles(read, laid, io.language);
  const paths = out === undefined || made === null ? [] : writeFiles(out, [planFile, ...made.files]);
  for (const note of made?.notes ?? []) io.err(`${note}\n`);
  if (made !== null && made.missingGlyphs.length > 0) {
    io.err(`No font at hand has ${made.missingGlyphs.join(", ")}; the pages show their numbers in brackets.\n`);
  }
  if (args.switches.has("json")) io.out(`${JSON.stringify(document)}\n`);
  else io.out(summary(read, laid, paths, io.language));
  const leftOut = laid.flatMap((cloth) => cloth.leftOut);
  for (const left of leftOut) io.err(`${problemLine(left, SENTENCES[io.language])}\n`);
  return leftOut.length > 0 ? EXIT.input : EXIT.done;
}

function summary(
  read: ReadProject,
  laid: readonly LaidCloth[],
  paths: readonly string[],
  language: Language,
): string {
  const { project, cutList, problems } = read;
  const lines = [`${project.name}, ${project.bags} ${project.bags === 1 ? "bag" : "bags"}`];
  for (const cloth of laid)
    lines.push(
      "",
      cloth.material.name,
      ...layWords(cloth, project, language).map((line) => `  ${line}`),
      ...(cloth.note === null ? [] : [`  ${cloth.note}`]),
    );
  if (cutList.heldLengthwise.length > 0)
    lines.push(
      "",
      `Held lengthwise, as their cloth shrinks differently each way: ${cutList.heldLengthwise.join(", ")}.`,
    );
  const costs = costWords(laid, project);
  if (costs.length > 0) lines.push("", "Cost", ...costs.map((line) => `  ${line}`));
  const strips = strapsPerMetre(cutList.pieces, problems);
  if (strips.length > 0) lines.push("", "Strips from a metre of roll");
  for (const { piece, yield: found } of strips) lines.push(`  ${piece.name}: ${stripWords(piece, found, project)}`);
  if (paths.length > 0) lines.push("", "Written", ...paths.map((path) => `  ${path}`));
  return `${lines.join("\n")}\n`;
}

function stripWords(piece: CutPiece, found: StripsPerMetre["yield"], project: Project): string {
  if (found.count === 0) {
    const box = ringBox(piece.outline.outer);
    return `none; one strip is ${formatLength(box.maxX - box.minX, project.output.lengths)} long`;
  }
  return `${found.count} (${found.proven ? "proven most" : `at most ${found.bound}`})`;
}
