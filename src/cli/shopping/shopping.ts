import { basename, dirname } from "node:path";
import { majorOf } from "../../core/buying/money.ts";
import { shopLength } from "../../core/buying/shopLength.ts";
import {
  listTotals,
  type ProjectToBuy,
  type ShoppingList,
  shoppingList,
} from "../../core/job/shopping/shoppingList.ts";
import { PAPERS, type Paper, paperNamed } from "../../core/project/papers.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { hardwareName } from "../../core/words/strapWords.ts";
import { STRAP_WORDS } from "../../core/words/words.ts";
import { csvText } from "../../export/cutsheet/cutSheetCsv.ts";
import { listPages, type PrintedList } from "../../export/cutsheet/listPages.ts";
import { moneyText } from "../../export/cutsheet/moneyText.ts";
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
import { SHOPPING_TEXTS } from "../words/shoppingTexts.ts";
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
      io.progress(SHOPPING_TEXTS[io.language].looking(job.project.name));
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
  const lengths = jobs[0]!.project.output.lengths;
  const rows = rowsOf(list, lengths, io.language);
  const printed = printedList(list, rows, all, io.language);
  if (args.switches.has("json"))
    io.out(
      `${JSON.stringify({ laywrightShopping: 1, projects: jobs.map(({ project }) => project.name), ...list })}\n`,
    );
  else io.out(`${listText(printed, io.language)}\n`);
  const csv = args.values.get("csv");
  if (csv !== undefined) writeCsv(csv, rows, io);
  const pdf = args.values.get("pdf");
  if (pdf !== undefined) await writePdf(pdf, printed, paper, io);
  return EXIT.done;
}

type Group = keyof (typeof SHOPPING_TEXTS)["en"]["groups"];

interface Row {
  readonly group: Group;
  /** The shop, where it is known. */
  readonly source: string | null;
  readonly what: string;
  readonly amount: string;
  /** Smallest coins; null where no price is known. */
  readonly toPay: number | null;
  readonly currency: string;
  readonly projects: readonly string[];
}

function rowsOf(list: ShoppingList, lengths: LengthStyle, language: Language): Row[] {
  const texts = SHOPPING_TEXTS[language];
  const words = STRAP_WORDS[language];
  const write = (mm: number): string => cutLength(mm, lengths, language);
  const style = lengths.startsWith("in") ? "yd/8" : "m";
  const bare = { source: null, toPay: null, currency: "", projects: [] };
  return [
    ...list.cloths.map(({ name, width, buy, price, ...more }): Row => {
      const what = `${name}, ${texts.wide(write(width))}`;
      return { group: "cloth", what, amount: shopLength(buy, price, language), ...more };
    }),
    ...list.pieces.map(({ name, stockId, project, ...more }): Row => {
      return {
        group: "pieces",
        source: null,
        what: `${name}: ${stockId}`,
        amount: "1",
        projects: [project],
        ...more,
      };
    }),
    ...list.hardware.map((one): Row => {
      return { group: "hardware", what: hardwareName(one, words, write), amount: String(one.count), ...bare };
    }),
    ...list.consumables.map(({ code, mm }): Row => {
      const amount = formatLength(mm, style, language);
      return { group: "consumables", what: words.consumables[code], amount, ...bare };
    }),
    ...list.supplies.map(({ name, packs, pack, ...more }): Row => {
      return { group: "supplies", source: null, what: name, amount: texts.packs(packs, pack), ...more };
    }),
  ];
}

/** The list in words: groups shop by shop, and what is paid in all. */
function printedList(
  list: ShoppingList,
  rows: readonly Row[],
  all: readonly ProjectToBuy[],
  language: Language,
): PrintedList {
  const texts = SHOPPING_TEXTS[language];
  const groups = (Object.keys(texts.groups) as Group[]).flatMap((group) => {
    const own = rows.filter((row) => row.group === group);
    // Shop by shop, what has none at the end.
    const shops = [...new Set(own.map(({ source }) => source))].sort(
      (a, b) => Number(a === null) - Number(b === null),
    );
    return shops.map((shop) => ({
      heading: shop === null ? texts.groups[group] : `${texts.groups[group]}, ${shop}`,
      rows: own
        .filter(({ source }) => source === shop)
        .map(({ what, amount, toPay, currency }) => {
          return [what, amount, toPay === null ? "" : moneyText(toPay, currency, language)] as const;
        }),
    }));
  });
  const totals = [...listTotals(list)].map(([currency, sum]) =>
    sum === null ? texts.noTotal(currency) : texts.total(moneyText(sum, currency, language)),
  );
  return { title: texts.title(all.map(({ project }) => project.name)), groups, totals };
}

function listText({ title, groups, totals }: PrintedList, language: Language): string {
  const rows = groups.flatMap((group) => group.rows);
  if (rows.length === 0) return SHOPPING_TEXTS[language].nothing;
  const [what, amount] = [0, 1].map((i) => Math.max(...rows.map((row) => row[i]!.length))) as [number, number];
  const lines = groups.flatMap(({ heading, rows: own }) => [
    "",
    heading,
    ...own.map((row) => `  ${row[0].padEnd(what)}  ${row[1].padEnd(amount)}  ${row[2]}`.trimEnd()),
  ]);
  return [title, ...lines, "", ...totals].join("\n").trimEnd();
}

/** Writes the list as sheets of paper; the code that makes PDFs is loaded for it alone. */
async function writePdf(file: string, list: PrintedList, paper: Paper, io: Io): Promise<void> {
  const { pagesPdf } = await import("../../export/pdf/pagesPdf.ts");
  const { bytes, missingGlyphs } = await pagesPdf(listPages(list, paper), fontBytes(), { title: list.title });
  for (const path of writeFiles(dirname(file), [{ name: basename(file), data: bytes }]))
    io.err(`${CLI_TEXTS[io.language].files.written(path)}\n`);
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

function writeCsv(file: string, rows: readonly Row[], io: Io): void {
  const texts = SHOPPING_TEXTS[io.language];
  const cells = rows.map(({ group, source, what, amount, toPay, currency, projects }) => [
    ...[texts.groups[group], what, amount, toPay === null ? "" : String(majorOf(toPay, currency))],
    ...[currency, source ?? "", projects.join("; ")],
  ]);
  const data = csvText([texts.heads, ...cells]);
  for (const path of writeFiles(dirname(file), [{ name: basename(file), data }]))
    io.err(`${CLI_TEXTS[io.language].files.written(path)}\n`);
}
