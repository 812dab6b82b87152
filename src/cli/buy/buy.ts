import { minorDigits } from "../../core/buying/money.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import { shopRoll } from "../../core/job/shopping/shopCell.ts";
import type { LaidRow, ShopRow } from "../../core/job/shopping/shopRow.ts";
import { type BestRow, bestRow, type ShopWish, shopTable } from "../../core/job/shopping/shopTable.ts";
import { BREATH } from "../../core/lay/search/breath.ts";
import type { Material } from "../../core/materials/material.ts";
import { nearestWord } from "../../core/problems/nearestWord.ts";
import { type Command, EXIT, type ExitCode, type Io, type ParsedArgs } from "../command.ts";
import { readProjectFile } from "../inOut/editProjectFile.ts";
import { readInput, withItsWorkshop } from "../inOut/readInput.ts";
import { plainProblem } from "../inOut/toldProblem.ts";
import { numberOption } from "../options/optionValues.ts";
import { BUY_TEXTS } from "../words/buyTexts.ts";
import { BUY_OPTIONS, buyProblem, shopWish } from "./buyOptions.ts";
import { bestText, headText, rowText, type Told } from "./buyText.ts";
import { readUpTo, tellGrowth } from "./growth.ts";
import { tellMakes } from "./makes.ts";
import { tellOpened } from "./opened.ts";

/** `laywright buy`: what to buy of each cloth, by width and by the way straps are made. */
export const buyCommand: Command = {
  name: "buy",
  synopsis: "PROJECT [--material NAME] [--widths LIST] [options]",
  about: [
    "What to buy for a project: for every width a cloth is sold in and every way to make its straps the length, what is to be paid, bags from a metre, how much of the cloth is used, and the thickest strap. Every row is a plan that an independent checker has passed; rows are told as they are found, and the best one with its reason at the end.",
    "\nWithout --own-stock everything is laid on a new roll. Ctrl-C ends the search; the rows so far stand. Ends with 1 when nothing can be cut.",
    '\nExample: laywright buy bags.json --material sailcloth --widths "110 cm at 19, 150 cm at 24.50"',
  ].join("\n"),
  options: BUY_OPTIONS,
  operands: [1, 1],
  run: runBuy,
};

/** The table of one cloth. */
interface Table {
  readonly material: Material;
  readonly rows: readonly ShopRow[];
  readonly best: BestRow | null;
  readonly stopped: boolean;
}

/** Longest time between two looks at what the person does, ms. */
const LOOK_UP = 50;

async function runBuy(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const file = args.operands[0]!;
  const job = readProjectFile(withItsWorkshop(readInput(file), file), io.language);
  const materials = askedMaterials(args, job, file);
  const wishes = materials.map((material) => shopWish(args, job.project, material));
  if (args.switches.has("open")) return await tellOpened(args, io, job, materials, wishes);
  const upTo = readUpTo(args);
  const isMakes = upTo === null && args.values.has("have");
  if (upTo !== null || isMakes) {
    if (materials.length > 1) throw buyProblem("one-cloth", "--material", ({ oneCloth }) => oneCloth);
  }
  if (isMakes) return await tellMakes(args, io, job, materials[0]!, wishes[0]!);
  if (upTo !== null) {
    return await tellGrowth(args, io, job, materials[0]!, wishes[0]!, upTo);
  }
  const seconds = numberOption(args, "seconds", { least: 0, most: 86_400 }, Infinity);
  const end = performance.now() + 1000 * seconds;
  const isJson = args.switches.has("json");
  let isStopped = false;
  const stop = (): void => {
    isStopped = true;
  };
  process.once("SIGINT", stop);
  const tables: Table[] = [];
  try {
    for (const [i, material] of materials.entries()) {
      const told: Told = { job, material, wish: wishes[i]!, language: io.language };
      if (!isJson) io.out(`${i > 0 ? "\n" : ""}${headText(told)}\n`);
      const hear = (row: ShopRow): void => {
        if (!isJson) io.out(`${rowText(row, told)}\n`);
      };
      const rows = await collect(job, wishes[i]!, hear, () => isStopped || performance.now() > end);
      const stopped = rows.length < waysOf(wishes[i]!);
      const best = bestRow<LaidRow>(rows, shopRoll(job.project, material)?.width ?? Number.NaN);
      tables.push({ material, rows, best, stopped });
      if (!isJson) io.out(`${bestText(best, rows, told)}\n`);
      if (stopped) io.err(`${BUY_TEXTS[io.language].stopped}\n`);
    }
  } finally {
    process.off("SIGINT", stop);
  }
  if (isJson) io.out(`${JSON.stringify(document(job, tables))}\n`);
  return tables.some(({ best }) => best !== null) ? EXIT.done : EXIT.input;
}

/** Rows as they come, until there are no more or the person has enough; one whole row is waited for. */
async function collect(
  { project }: ProjectJob,
  wish: ShopWish,
  hear: (row: ShopRow) => void,
  isOver: () => boolean,
): Promise<ShopRow[]> {
  const rows: ShopRow[] = [];
  let looked = performance.now();
  for (const step of shopTable(project, wish)) {
    if (step !== BREATH) {
      rows.push(step);
      hear(step);
    }
    if (performance.now() - looked < LOOK_UP) continue;
    await new Promise(setImmediate);
    looked = performance.now();
    if (rows.length > 0 && isOver()) break;
  }
  return rows;
}

function waysOf({ widths, constructions, directions, joins }: ShopWish): number {
  return widths.length * constructions.length * directions.length * joins.length;
}

/** The cloths asked for: by id or name, else all that pieces are cut from off a roll. Throws `InputProblem`. */
function askedMaterials(args: ParsedArgs, { project, lays }: ProjectJob, file: string): readonly Material[] {
  const sold = lays.map(({ material }) => material).filter((material) => shopRoll(project, material) !== null);
  const asked = args.values.get("material");
  if (asked === undefined) {
    if (sold.length === 0) throw buyProblem("no-cloth", file, ({ noCloth }) => noCloth);
    return sold;
  }
  const material = project.materials.find(({ id, name }) => id === asked || name === asked);
  if (material === undefined) {
    const ids = project.materials.map(({ id }) => id);
    throw plainProblem("material-unknown", "--material", ({ files }) =>
      files.noMaterial(file, asked, nearestWord(asked, ids), ids.map((id) => `"${id}"`).join(", ")),
    );
  }
  if (!sold.includes(material))
    throw buyProblem("cloth-not-sold", "--material", ({ notSold }) => notSold(material.name));
  return [material];
}

function document({ project }: ProjectJob, tables: readonly Table[]): object {
  return {
    laywrightBuy: 1,
    project: project.name,
    bags: project.bags,
    currency: project.currency,
    minorDigits: minorDigits(project.currency),
    materials: tables.map(({ material, rows, best, stopped }) => ({
      materialId: material.id,
      name: material.name,
      rows: rows.map(rowData),
      best: best && { row: rows.indexOf(best.row), by: best.by, savedMinor: best.saved, alike: best.alike },
      stopped,
    })),
  };
}

/** A row as data; lengths in mm, areas in mm², money in the smallest coin. */
function rowData(row: ShopRow): object {
  const { sold, construction, direction, joins } = row.cell;
  const way = { widthMm: sold.width, amount: sold.amount, construction, direction, joins };
  if (row.kind === "barred") return { ...way, laid: false, troubles: row.troubles, leftOut: row.leftOut };
  return {
    ...way,
    laid: true,
    usedMm: row.usedLength,
    buyMm: row.buyLength,
    proven: row.isProven,
    toPayMinor: row.toPay,
    bagsPerMetre: row.bagsPerMetre,
    efficiency: row.efficiency,
    utilisation: row.utilisation,
    layers: row.layers,
    thicknessMm: row.thickness,
    elsewhere: row.elsewhere.map(({ materialId, area }) => ({ materialId, areaMm2: area })),
    placements: row.plan.placements,
  };
}
