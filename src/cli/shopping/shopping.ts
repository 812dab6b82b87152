import { basename, dirname } from "node:path";
import { type ProjectToBuy, shoppingList } from "../../core/job/shopping/shoppingList.ts";
import { PAPERS, type Paper, paperNamed } from "../../core/project/papers.ts";
import {
  type ShoppingSheet,
  shoppingCsv,
  shoppingSheet,
  shoppingText,
} from "../../export/cutsheet/shoppingSheet.ts";
import { nodePool } from "../../worker/nodePool.ts";
import {
  type Command,
  EXIT,
  type ExitCode,
  type Io,
  JSON_OPTION,
  type ParsedArgs,
  UsageError,
} from "../command.ts";
import { readProjectFile } from "../inOut/editProjectFile.ts";
import { readInput, withItsWorkshop } from "../inOut/readInput.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { fontBytes } from "../lay/fonts.ts";
import { layProject } from "../lay/laidProject.ts";
import { numberOption } from "../options/optionValues.ts";
import { CLI_TEXTS } from "../words/words.ts";

const EVALUATIONS_PER_EFFORT = 1_000_000;

/** `laywright shopping`: what to buy for one project or several, the same things added up. */
export const shoppingCommand: Command = {
  name: "shopping",
  synopsis: "PROJECT… [--csv FILE] [options]",
  about: [
    "A shopping list for one project or several: cloth, hardware, thread and tape, and what else goes into the bags. The same thing of several projects is one line, rounded up once to what the shop sells. Every project is laid out and its plans are checked; leftovers it has are used up first.",
    "\nExample: laywright shopping tote.json pouch.json --csv list.csv",
  ].join("\n"),
  options: [
    { name: "csv", value: "FILE", help: "write the list as comma-separated values too" },
    { name: "pdf", value: "FILE", help: "write it as a sheet to take along, with a box to tick beside each line" },
    { name: "paper", value: "PAPER", help: "paper of that sheet: A4 (default), Letter or another" },
    { name: "effort", value: "N", help: "lay each cloth with N million evaluations (default 0.2)" },
    JSON_OPTION,
  ],
  operands: [1, 50],
  run: runShopping,
};

async function runShopping(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const paper = readPaper(args);
  const effort = numberOption(args, "effort", { least: 0.001, most: 1000 }, 0.2);
  const jobs = args.operands.map((file) => readProjectFile(withItsWorkshop(readInput(file), file), io.language));
  const evaluations = effort * EVALUATIONS_PER_EFFORT;
  const wish = { seconds: 86_400, evaluations, seed: 1, mode: "free", choose: null, threads: 1 } as const;
  const pool = nodePool(1);
  const all: ProjectToBuy[] = [];
  try {
    for (const job of jobs) {
      io.progress(CLI_TEXTS[io.language].lay.bags(job.project.name, job.project.bags));
      const { laid } = await layProject(job, pool, wish, io);
      const faults = laid.flatMap((cloth) => cloth.faults);
      if (faults.length > 0) throw new Error(JSON.stringify(faults));
      all.push({ project: job.project, straps: job.straps, cloths: laid });
    }
  } finally {
    pool.close();
    io.progress("");
  }
  const list = shoppingList(all);
  const names = jobs.map(({ project }) => project.name);
  const sheet = shoppingSheet(list, names, jobs[0]!.project.output.lengths, io.language);
  if (args.switches.has("json")) io.out(`${JSON.stringify({ laywrightShopping: 1, projects: names, ...list })}\n`);
  else io.out(shoppingText(sheet));
  const csv = args.values.get("csv");
  if (csv !== undefined) writeOne(csv, shoppingCsv(sheet), io);
  const pdf = args.values.get("pdf");
  if (pdf !== undefined) await writePdf(pdf, sheet, paper, io);
  return EXIT.done;
}

/** Writes the list as sheets of paper; the code that makes PDFs is loaded for it alone. */
async function writePdf(file: string, sheet: ShoppingSheet, paper: Paper, io: Io): Promise<void> {
  const { shoppingPdf } = await import("../../export/handouts.ts");
  const { bytes, missingGlyphs } = await shoppingPdf(sheet, paper, fontBytes());
  writeOne(file, bytes, io);
  if (missingGlyphs.length > 0) io.err(`${CLI_TEXTS[io.language].lay.noFont(missingGlyphs.join(", "))}\n`);
}

function readPaper(args: ParsedArgs): Paper {
  const name = args.values.get("paper") ?? "A4";
  if (args.values.has("paper") && !args.values.has("pdf"))
    throw new UsageError((say) => say.onlyWith("paper", "pdf"));
  const paper = paperNamed(name);
  const known = PAPERS.map(({ id }) => id);
  if (paper === undefined) throw new UsageError((say) => say.oneOf("paper", known, name));
  return paper;
}

function writeOne(file: string, data: string | Uint8Array, io: Io): void {
  for (const path of writeFiles(dirname(file), [{ name: basename(file), data }]))
    io.err(`${CLI_TEXTS[io.language].files.written(path)}\n`);
}
