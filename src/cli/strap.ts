import { basename, dirname } from "node:path";
import { strapPictures } from "../core/drawing/strapPictures.ts";
import { buildStrap } from "../core/straps/buildStrap.ts";
import type { StrapResult } from "../core/straps/strapResult.ts";
import { CONSTRUCTION_IDS } from "../core/straps/strapWish.ts";
import { english } from "../core/straps/words/english.ts";
import { STRAP_WORDS } from "../core/straps/words/strapWordTables.ts";
import { svgText } from "../export/svg/svgText.ts";
import { type Command, EXIT, type Io, JSON_OPTION, type ParsedArgs } from "./command.ts";
import { foldTestReport } from "./foldTestReport.ts";
import { inputProblem } from "./problemReport.ts";
import { STRAP_OPTIONS } from "./strapHelp.ts";
import { readStrap } from "./strapOptions.ts";
import { strapJson, strapText } from "./strapReport.ts";
import { writeFiles } from "./writeFiles.ts";

/** `laywright strap`: one strap, from the fold to the finished strap. */
export const strapCommand: Command = {
  name: "strap",
  summary: "one strap: true cut size from the fold, pieces, consumables, order of work, pictures",
  synopsis: '--construction ID --width "1 in" --length "60 in" [options]',
  about: [
    "Works out one strap from its construction, width, length and material, in either direction: the finished width gives the cut width, a cut width gives the finished one. Sizes come from the fold: thickness, layers, and where raw edges stop.",
    "",
    ...CONSTRUCTION_IDS.map((id) => `${id}: ${english.constructions[id].title}`),
    "",
    'Example: laywright strap --construction fourfold --width "1 in" --length "60 in" --thickness "1 mm" --material vinyl',
  ].join("\n"),
  options: [...STRAP_OPTIONS, JSON_OPTION],
  operands: [0, 0],
  run: async (args, io) => {
    const json = args.switches.has("json");
    if (args.switches.has("fold-test")) {
      const report = foldTestReport(args);
      io.out(json ? `${JSON.stringify(report.json)}\n` : report.text);
      return EXIT.done;
    }
    const { wish, materials } = readStrap(args);
    const built = buildStrap(wish, materials, "", STRAP_WORDS[io.language].parts);
    if (!built.ok) throw inputProblem(built.problems);
    writePictures(args, built.value, io);
    io.out(
      json
        ? `${JSON.stringify(strapJson(built.value, materials, io.language))}\n`
        : strapText(built.value, materials, io.language),
    );
    return EXIT.done;
  },
};

/** Writes the section to the file of `--picture`, and all pictures into the folder of `--out`. */
function writePictures(args: ParsedArgs, result: StrapResult, io: Io): void {
  const file = args.values.get("picture");
  const folder = args.values.get("out");
  if (file === undefined && folder === undefined) return;
  const pictures = strapPictures(result, STRAP_WORDS[io.language]).map(({ stem, caption, drawing }) => ({
    name: `${stem}.svg`,
    data: svgText(drawing, { title: caption }),
  }));
  const written = [
    ...(file === undefined ? [] : writeFiles(dirname(file), [{ ...pictures[0]!, name: basename(file) }])),
    ...(folder === undefined ? [] : writeFiles(folder, pictures)),
  ];
  for (const path of written) io.err(`wrote ${path}\n`);
}
