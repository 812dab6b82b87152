import type { UnderstoodPattern } from "../../core/patterns/patternOutline.ts";
import type { LengthStyle } from "../../core/units/formatLength.ts";
import { readPatternOnThread } from "../../reading/nodeReading.ts";
import {
  type Command,
  EXIT,
  type ExitCode,
  type Io,
  JSON_OPTION,
  type ParsedArgs,
  UsageError,
} from "../command.ts";
import { readInputBytes } from "../inOut/readInput.ts";
import { InputProblem } from "../inOut/toldProblem.ts";
import { PATTERN_TEXTS } from "../words/patternTexts.ts";
import { IMAGE_OPTIONS, readImageOptions } from "./imageOptions.ts";
import { addToProject } from "./intoProject.ts";
import { emptyPatternJson, patternJson, problemsInWords } from "./patternJson.ts";
import { PATTERN_OPTIONS, readPatternOptions } from "./patternOptions.ts";
import { patternText } from "./patternText.ts";
import { PHOTO_SHEET_OPTIONS, writePhotoSheet } from "./photoSheet.ts";

/** `laywright pattern`: a maker's own pattern brought in from a file. */
export const patternCommand: Command = {
  name: "pattern",
  synopsis: "FILE [options] | --photo-sheet PDF",
  about: [
    "Reads the lines of a drawing that are drawn and can be seen, joins them to outlines, says how large each is and",
    "what it is taken for (cut line, stitch line, fold, notch, grain, drill hole), and what is wrong: open gaps, lines",
    "drawn twice, outlines that cross themselves, slivers, a doubtful scale. --mend puts right what it names.",
    "With --into its panels are added to a project:",
    "each outer line with the notches, grain, fold, holes and lines in it.",
    "\nA photograph finds its scale and perspective by the sheet that --photo-sheet writes, lying in it.",
    "\nNothing outside the file is opened and nothing in it is run. Ends with 1 when no line came in.",
  ].join(" "),
  options: [...PATTERN_OPTIONS, ...IMAGE_OPTIONS, ...PHOTO_SHEET_OPTIONS, JSON_OPTION],
  operands: [0, 1],
  run: runPattern,
};

async function runPattern(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const sheet = args.values.get("photo-sheet");
  const [path] = args.operands;
  if (sheet !== undefined && path !== undefined) throw new UsageError((say) => say.oneTooMany(path));
  if (sheet !== undefined) return writePhotoSheet(sheet, args, io);
  if (path === undefined) throw new UsageError((say) => say.needs("pattern", "FILE"));
  const json = args.switches.has("json");
  const { options, seconds, into, pdf } = readPatternOptions(args);
  let bytes: Uint8Array;
  try {
    bytes = readInputBytes(path);
  } catch (error) {
    if (!(error instanceof InputProblem && json)) throw error;
    const problems = error.told(io.language);
    for (const problem of problems) io.err(`${problem.message}\n`);
    io.out(`${JSON.stringify(emptyPatternJson(problems))}\n`);
    return EXIT.input;
  }
  const pattern = await readPatternOnThread({ bytes, options, pdf, image: readImageOptions(args) }, { seconds });
  const added = into === null || pattern.outlines.length === 0 ? null : addToProject(pattern, into);
  tell(pattern, path, json, io, added?.lengths ?? "mm");
  if (added !== null && into !== null) {
    const { added: say } = PATTERN_TEXTS[io.language];
    const names = added.panels.map(({ name, id }) => `${name} (${id})`).join(", ");
    (json ? io.err : io.out)(`${say(into.file, names)}\n`);
  }
  return pattern.outlines.length > 0 ? EXIT.done : EXIT.input;
}

function tell(pattern: UnderstoodPattern, path: string, json: boolean, io: Io, lengths: LengthStyle): void {
  for (const { message } of problemsInWords(pattern, io.language, lengths)) io.err(`${message}\n`);
  if (json) io.out(`${JSON.stringify(patternJson(pattern, io.language, lengths))}\n`);
  else if (pattern.outlines.length > 0) io.out(patternText(pattern, path, io.language, lengths));
}
