import { existsSync } from "node:fs";
import { basename, dirname } from "node:path";
import type { DrawnText } from "../../core/drawing/list/drawing.ts";
import { strapPictures } from "../../core/drawing/strap/strapPictures.ts";
import type { StrapResult } from "../../core/straps/build/strapResult.ts";
import { STRAP_WORDS } from "../../core/words/words.ts";
import { openFaces } from "../../export/fonts/faces.ts";
import { textOutlines } from "../../export/fonts/textOutlines.ts";
import { svgText } from "../../export/svg/svgText.ts";
import type { Io, ParsedArgs } from "../command.ts";
import { plainProblem } from "../inOut/toldProblem.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { fontBytes } from "../lay/fonts.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** Signs besides Latin letters, punctuation, fractions, arrows and the signs of arithmetic. */
const BEYOND_LATIN = /[^ -\u024f\u2000-\u22ff]/u;

/** Writes the section to the file of `--picture`, and all pictures into the folder of `--out`. */
export async function writePictures(args: ParsedArgs, result: StrapResult, io: Io): Promise<void> {
  const file = args.values.get("picture");
  const folder = args.values.get("out");
  // A mistyped path is told, not made into folders; `--out` names a folder to make.
  if (file !== undefined && !existsSync(dirname(file)))
    throw plainProblem("cannot-write", file, ({ files }) => files.notWritten(file, files.faults.missing));
  const drawn = strapPictures(result, STRAP_WORDS[io.language]);
  const texts = drawn.flatMap(({ drawing }) =>
    drawing.items.flatMap((item) => (item.kind === "text" ? [item.text] : [])),
  );
  const faces = await openFaces(fontBytes(), texts);
  // A viewer may lack the writing of a name: letters beyond Latin are drawn.
  const outlineText = (text: DrawnText) => (BEYOND_LATIN.test(text.text) ? textOutlines(text, faces) : null);
  const pictures = drawn.map(({ stem, caption, drawing }) => ({
    name: `${stem}.svg`,
    data: svgText(drawing, { title: caption, outlineText }),
  }));
  const written = [
    ...(file === undefined ? [] : writeFiles(dirname(file), [{ ...pictures[0]!, name: basename(file) }])),
    ...(folder === undefined ? [] : writeFiles(folder, pictures)),
  ];
  for (const path of written) io.err(`${CLI_TEXTS[io.language].files.written(path)}\n`);
}
