import { basename, dirname } from "node:path";
import { PAPERS, paperNamed } from "../../core/project/papers.ts";
import { EXIT, type ExitCode, type Io, type OptionSpec, type ParsedArgs, UsageError } from "../command.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { CLI_TEXTS } from "../words/words.ts";

export const PHOTO_SHEET_OPTIONS: readonly OptionSpec[] = [
  {
    name: "photo-sheet",
    value: "PDF",
    help: "write our sheet with ring marks, to print at actual size and to lay beside a pattern in a photograph",
  },
  { name: "paper", value: "PAPER", help: "paper of that sheet: A4 (default) or Letter" },
];

/** Papers that the rings fit on with the rim that every printer leaves. */
const FITS = ["A4", "Letter"];

/** Writes the photo sheet to `out`; the code that makes PDFs is loaded for it alone. */
export async function writePhotoSheet(out: string, args: ParsedArgs, io: Io): Promise<ExitCode> {
  const name = args.values.get("paper") ?? "A4";
  const paper = paperNamed(name);
  if (paper === undefined || paper === null || !FITS.includes(paper.id))
    throw new UsageError((say) => say.oneOf("paper", FITS, name));
  const { photoSheetPdf } = await import("../../export/pdf/photoSheetPdf.ts");
  const data = await photoSheetPdf(PAPERS.find(({ id }) => id === paper.id)!, io.language);
  for (const path of writeFiles(dirname(out), [{ name: basename(out), data }]))
    io.out(`${CLI_TEXTS[io.language].files.written(path)}\n`);
  return EXIT.done;
}
