import { existsSync } from "node:fs";
import { basename, dirname } from "node:path";
import { minorDigits } from "../../core/buying/money.ts";
import { shopLength } from "../../core/buying/shopLength.ts";
import { yieldCurvePicture } from "../../core/drawing/lay/yieldPictures.ts";
import type { ProjectJob } from "../../core/job/projectJob.ts";
import {
  type BagStep,
  bagSteps,
  bagsFrom,
  freeBags,
  type LengthStep,
  lengthSteps,
} from "../../core/job/shopping/bagSteps.ts";
import type { ShopCell } from "../../core/job/shopping/shopCell.ts";
import type { ShopWish } from "../../core/job/shopping/shopTable.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Project } from "../../core/project/project.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { parseLength } from "../../core/units/parseLength.ts";
import { moneyText } from "../../export/cutsheet/moneyText.ts";
import { svgText } from "../../export/svg/svgText.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, UsageError } from "../command.ts";
import { inputProblem, plainProblem } from "../inOut/toldProblem.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { numberOption } from "../options/optionValues.ts";
import { attended } from "../timedSearch.ts";
import { BUY_TEXTS } from "../words/buyTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";
import { barredText } from "./buyText.ts";

/** More bags than this in one table nobody reads. */
const MOST_BAGS = 100;

/** How cloth and money grow up to so many bags; null when that is not asked. Throws `UsageError`. */
export function readUpTo(args: ParsedArgs): number | null {
  const most = numberOption(args, "up-to", { least: 2, most: MOST_BAGS, whole: true }, null);
  if (most !== null) {
    // Bag by bag everything comes off one new roll, and the last number is laid first: nothing stands half way.
    for (const name of ["own-stock", "seconds"])
      if (args.values.has(name) || args.switches.has(name))
        throw new UsageError((say) => say.notWith(name, "up-to"));
    return most;
  }
  for (const name of ["picture"])
    if (args.values.has(name)) throw new UsageError((say) => say.onlyWith(name, "up-to"));
  return null;
}

/** Tells how cloth and money grow with the bags, bag by bag, at one width and way. */
export async function tellGrowth(
  args: ParsedArgs,
  io: Io,
  job: ProjectJob,
  material: Material,
  wish: ShopWish,
  most: number,
): Promise<ExitCode> {
  const { project } = job;
  const texts = BUY_TEXTS[io.language];
  const have = readHave(args);
  const picture = args.values.get("picture");
  if (picture !== undefined && !existsSync(dirname(picture)))
    throw plainProblem("cannot-write", picture, ({ files }) => files.notWritten(picture, files.faults.missing));
  const cell: ShopCell = {
    sold: wish.widths[0]!,
    construction: wish.constructions[0]!,
    direction: wish.directions[0]!,
    joins: wish.joins[0]!,
  };
  io.progress(texts.looking(most));
  const found = await attended(bagSteps(project, cell, most, wish));
  io.progress("");
  if (found.kind === "barred") {
    io.err(`${barredText(found, { job, material, wish, language: io.language })}\n`);
    return EXIT.input;
  }
  const { steps } = found;
  const makes = have === null ? null : bagsFrom(steps, have);
  if (args.switches.has("json")) {
    const growth = steps.map(({ bags, row }) => ({
      ...{ bags, usedMm: row.usedLength, buyMm: row.buyLength, toPayMinor: row.toPay, proven: row.isProven },
    }));
    const money = { currency: project.currency, minorDigits: minorDigits(project.currency) };
    io.out(
      `${JSON.stringify({ laywrightBuy: 1, project: project.name, ...money, materialId: material.id, widthMm: cell.sold.width, growth, haveMm: have, makes })}\n`,
    );
  } else {
    const length = (mm: number): string => shopLength(mm, material.price, io.language);
    const money = (minor: number | null): string =>
      minor === null ? "–" : moneyText(minor, project.currency, io.language);
    const rows = steps.map(({ bags, row }, i) => [
      String(bags),
      length(row.buyLength),
      money(row.toPay),
      i > 0 && row.buyLength === steps[i - 1]!.row.buyLength ? texts.alsoFree : "",
    ]);
    const table = [[texts.bags, texts.columns.buy, texts.columns.toPay, ""], ...rows];
    const widths = table[0]!.map((_, i) => Math.max(...table.map((line) => line[i]!.length)));
    const lines = table.map((line) =>
      line
        .map((text, i) => text.padEnd(widths[i]!))
        .join("  ")
        .trimEnd(),
    );
    const made = have === null ? [] : [texts.makes(formatLength(have, "m", io.language), makes!, makes === most)];
    const free = freeBags(steps);
    const growing = lengthSteps(steps).map((step) => ({
      length: stepText(step, material, project, io.language),
      bags: step.bags,
    }));
    const said = [texts.growing(growing), ...(free.length > 0 ? [texts.freeBags(free)] : [])];
    io.out(`${[material.name, ...lines, ...said, ...made].join("\n")}\n`);
  }
  if (picture !== undefined) writeGrowth(picture, steps, material, project, io);
  return EXIT.done;
}

/** A length as it is asked for, with its money in brackets. */
function stepText(
  { length, toPay }: LengthStep,
  { price }: Material,
  { currency }: Project,
  language: Language,
): string {
  const said = shopLength(length, price, language);
  return toPay === null ? said : `${said} (${moneyText(toPay, currency, language)})`;
}

function readHave(args: ParsedArgs): number | null {
  const text = args.values.get("have");
  if (text === undefined) return null;
  const read = parseLength(text, "mm", "--have", { minMm: 1, maxMm: 1_000_000 });
  if (!read.ok) throw inputProblem(read.problems);
  return read.value;
}

/** The curve as SVG: bags over the length that is bought. */
function writeGrowth(file: string, steps: readonly BagStep[], material: Material, project: Project, io: Io): void {
  const texts = BUY_TEXTS[io.language];
  const { files, yields } = CLI_TEXTS[io.language];
  // Of bags that take the same length the last one stands: the others come with it.
  const points = lengthSteps(steps).map((step) => ({
    ...{ length: step.length, count: step.bags },
    label: stepText(step, material, project, io.language),
  }));
  const drawing = yieldCurvePicture(points, points.at(-1)!.length * 1.05, {
    length: yields.lengthAxis,
    count: texts.bags,
  });
  const data = svgText(drawing, { title: material.name });
  for (const path of writeFiles(dirname(file), [{ name: basename(file), data }]))
    io.err(`${files.written(path)}\n`);
}
