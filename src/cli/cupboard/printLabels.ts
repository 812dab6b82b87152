import { basename, dirname } from "node:path";
import { findPiece } from "../../core/cupboard/change.ts";
import { PAPERS, paperNamed } from "../../core/project/papers.ts";
import type { Telling } from "../../export/cutsheet/shelfLabels.ts";
import { EXIT, type ExitCode, type Io, type ParsedArgs, UsageError } from "../command.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { fontBytes } from "../lay/fonts.ts";
import { requiredOption } from "../options/optionValues.ts";
import { CUPBOARD_TEXTS } from "../words/cupboardTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";
import { readCupboardFile, soundOf } from "./cupboardDisk.ts";
import { wantedPieces } from "./cupboardText.ts";

/** Writes labels of the named pieces, or of all that lie in the cupboard, as PDF. */
export async function printLabels(
  args: ParsedArgs,
  io: Io,
  file: string,
  codes: readonly string[],
  telling: Telling,
): Promise<ExitCode> {
  const out = requiredOption(args, "out");
  const name = args.values.get("paper") ?? "A4";
  const paper = paperNamed(name);
  if (paper === undefined) {
    const known = PAPERS.map(({ id }) => id);
    throw new UsageError((say) => say.oneOf("paper", known, name));
  }
  const cupboard = readCupboardFile(file);
  const pieces =
    codes.length > 0
      ? codes.map((code) => soundOf(findPiece(cupboard, code)))
      : wantedPieces(cupboard, args.values.get("material") ?? null, false);
  const texts = CUPBOARD_TEXTS[io.language];
  if (pieces.length === 0) {
    io.err(`${texts.noPieces}\n`);
    return EXIT.input;
  }
  // The code that makes PDFs is loaded for labels alone.
  const { shelfLabelsPdf } = await import("../../export/handouts.ts");
  const { bytes, missingGlyphs } = await shelfLabelsPdf(pieces, basename(file), telling, paper, fontBytes());
  for (const path of writeFiles(dirname(out), [{ name: basename(out), data: bytes }]))
    io.out(`${texts.labels(pieces.length)}: ${CLI_TEXTS[io.language].files.written(path)}\n`);
  if (missingGlyphs.length > 0) io.err(`${CLI_TEXTS[io.language].lay.noFont(missingGlyphs.join(", "))}\n`);
  return EXIT.done;
}
