import { existsSync } from "node:fs";
import { basename, dirname } from "node:path";
import type { DrawnText } from "../../core/drawing/list/drawing.ts";
import { strapPictures } from "../../core/drawing/strap/strapPictures.ts";
import { buildStrap } from "../../core/straps/build/buildStrap.ts";
import { roundToRuler } from "../../core/straps/build/roundToRuler.ts";
import { sideBySide } from "../../core/straps/build/sideBySide.ts";
import type { StrapResult } from "../../core/straps/build/strapResult.ts";
import { CONSTRUCTION_IDS } from "../../core/straps/wish/strapWish.ts";
import { constructionTitle } from "../../core/words/strapWords.ts";
import { STRAP_WORDS } from "../../core/words/words.ts";
import { openFaces } from "../../export/fonts/faces.ts";
import { textOutlines } from "../../export/fonts/textOutlines.ts";
import { svgText } from "../../export/svg/svgText.ts";
import { type Command, EXIT, type Io, JSON_OPTION, type ParsedArgs } from "../command.ts";
import { inputProblem, plainProblem } from "../inOut/problemReport.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { fontBytes } from "../lay/fonts.ts";
import { numberOption, wordOption } from "../options/optionValues.ts";
import { CLI_TEXTS } from "../words/cliTextTables.ts";
import { compareCsv, compareText } from "./compareReport.ts";
import { foldTestReport } from "./foldTestReport.ts";
import { STRAP_OPTIONS } from "./strapHelp.ts";
import { atOptions, LengthReader, readStrap } from "./strapOptions.ts";
import { strapJson, strapText } from "./strapReport.ts";

/** `laywright strap`: one strap, from the fold to the finished strap. */
export const strapCommand: Command = {
  name: "strap",
  summary: "one strap: true cut size from the fold, pieces, consumables, order of work, pictures",
  synopsis: '--construction ID --width "1 1/4 in" --length "60 in" [options]',
  about: [
    "Works out one strap from its construction, width, length and material, in either direction: the finished width gives the cut width, a cut width gives the finished one. Sizes come from the fold: thickness, layers, and where raw edges stop.",
    "",
    ...CONSTRUCTION_IDS.map((id) => `${id}: ${constructionTitle(STRAP_WORDS.en.constructions[id])}`),
    "",
    'Example: laywright strap --construction fourfold --width "1 1/4 in" --length "60 in" --thickness "1 mm" --material vinyl',
  ].join("\n"),
  options: [...STRAP_OPTIONS, JSON_OPTION],
  operands: [0, 0],
  run: async (args, io) => {
    const json = args.switches.has("json");
    if (args.switches.has("fold-test")) {
      const report = foldTestReport(args, io.language);
      io.out(json ? `${JSON.stringify(report.json)}\n` : report.text);
      return EXIT.done;
    }
    const { wish, materials } = readStrap(args, io.language);
    if (args.values.has("compare")) {
      const csv = wordOption(args, "compare", ["table", "csv"] as const, "table") === "csv";
      const price = numberOption(args, "price", { least: 0, most: 1_000_000 }, null);
      const rows = sideBySide(wish, materials, price);
      io.out(json ? `${JSON.stringify(rows)}\n` : csv ? compareCsv(rows) : compareText(rows, io.language));
      return EXIT.done;
    }
    const step = rulerStep(args);
    const { parts } = STRAP_WORDS[io.language];
    const built =
      step === undefined ? buildStrap(wish, materials, "", parts) : roundToRuler(wish, materials, step, parts);
    if (!built.ok) throw inputProblem(atOptions(built.problems, wish));
    await writePictures(args, built.value, io);
    io.out(
      json
        ? `${JSON.stringify(strapJson(built.value, materials, io.language))}\n`
        : strapText(built.value, materials, io.language),
    );
    return EXIT.done;
  },
};

/** The division of the ruler that `--round` names, mm. */
function rulerStep(args: ParsedArgs): number | undefined {
  const lengths = new LengthReader(args);
  const step = lengths.length("round", { minMm: 0.1, maxMm: 30 });
  lengths.check();
  return step;
}

/** Signs besides Latin letters, punctuation, fractions, arrows and the signs of arithmetic. */
const BEYOND_LATIN = /[^ -\u024f\u2000-\u22ff]/u;

/** Writes the section to the file of `--picture`, and all pictures into the folder of `--out`. */
async function writePictures(args: ParsedArgs, result: StrapResult, io: Io): Promise<void> {
  const file = args.values.get("picture");
  const folder = args.values.get("out");
  if (file === undefined && folder === undefined) return;
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
