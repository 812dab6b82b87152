import type { ProjectJob } from "../../core/job/projectJob.ts";
import { fromPiece, type OwnedPiece } from "../../core/job/shopping/fromPiece.ts";
import { shopRoll } from "../../core/job/shopping/shopCell.ts";
import type { ShopWish } from "../../core/job/shopping/shopTable.ts";
import type { Material } from "../../core/materials/material.ts";
import { usableWidth } from "../../core/materials/stock.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import { parseLength } from "../../core/units/parseLength.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, UsageError } from "../command.ts";
import { attended } from "../timedSearch.ts";
import { BUY_TEXTS } from "../words/buyTexts.ts";
import { buyProblem } from "./buyOptions.ts";

/** Evaluations for each number that is looked at unless told: about a tenth of a second. */
const NUMBER_EFFORT = 20_000;
const PIECE = { minMm: 1, maxMm: 100_000 };

/** Tells what a piece that is there makes: bags, each strap alone, and straps beside the bags. */
export async function tellMakes(
  args: ParsedArgs,
  io: Io,
  job: ProjectJob,
  material: Material,
  wish: ShopWish,
): Promise<ExitCode> {
  for (const name of ["widths", "constructions", "directions", "seconds", "picture"])
    if (args.values.has(name)) throw new UsageError((say) => say.notWith(name, "have"));
  const text = args.values.get("have")!;
  const piece = readPiece(text, shopRoll(job.project, material)!);
  const texts = BUY_TEXTS[io.language].piece;
  const evaluations = args.values.has("evaluations") ? wish.evaluations : NUMBER_EFFORT;
  const said = text.trim();
  io.progress(texts.looking(said));
  const { bags, straps } = await attended(fromPiece(job.project, material, piece, { ...wish, evaluations }));
  io.progress("");
  const { project } = job;
  if (args.switches.has("json")) {
    const made = straps.map(({ strapId, alone, besides }) => ({
      ...{ strapId, alone: alone.count, besides: besides.count },
    }));
    io.out(
      `${JSON.stringify({
        ...{ laywrightBuy: 1, project: project.name, materialId: material.id },
        ...{ pieceMm: [piece.length, piece.width], bags: bags.count, straps: made },
      })}\n`,
    );
    return EXIT.done;
  }
  const size = `${formatLength(piece.length, "cm", io.language)} × ${formatLength(piece.width, "cm", io.language)}`;
  const lines = straps.map(({ strapId, alone, besides }) => {
    const name = project.straps.find(({ id }) => id === strapId)?.name ?? strapId;
    return texts.strap(name, alone.count, besides.count, bags.count);
  });
  io.out(`${[material.name, texts.bags(size, bags.count), ...lines].join("\n")}\n`);
  return EXIT.done;
}

/** "1.3 m" of the roll between its selvedges, or "45 cm x 60 cm": along the selvedge, then across. */
function readPiece(text: string, roll: NonNullable<ReturnType<typeof shopRoll>>): OwnedPiece {
  const parts = text.split(/[x×]/u);
  const sizes = parts.map((part) => parseLength(part.trim(), "mm", "--have", PIECE));
  const read = sizes.flatMap((size) => (size.ok ? [size.value] : []));
  if (read.length < parts.length || parts.length > 2)
    throw buyProblem("piece-unreadable", "--have", ({ piece }) => piece.unreadable(text));
  return { length: read[0]!, width: read[1] ?? usableWidth(roll) };
}
