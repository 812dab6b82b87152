import { buildStrap } from "../../core/straps/build/buildStrap.ts";
import { roundToRuler } from "../../core/straps/build/roundToRuler.ts";
import { sideBySide } from "../../core/straps/build/sideBySide.ts";
import { rebuiltAs } from "../../core/straps/build/unusedChoices.ts";
import { CONSTRUCTION_IDS } from "../../core/straps/wish/strapWish.ts";
import { constructionTitle } from "../../core/words/strapWords.ts";
import { STRAP_WORDS } from "../../core/words/words.ts";
import { type Command, EXIT, JSON_OPTION, type ParsedArgs } from "../command.ts";
import { inputProblem } from "../inOut/toldProblem.ts";
import { numberOption, wordOption } from "../options/optionValues.ts";
import { compareCsv, compareText } from "./compareReport.ts";
import { STRAP_OPTIONS } from "./strapHelp.ts";
import { checkModes } from "./strapModes.ts";
import { atOptions, LengthReader, readStrap } from "./strapOptions.ts";
import { strapJson, strapText } from "./strapReport.ts";

/** `laywright strap`: one strap, from the fold to the finished strap. */
export const strapCommand: Command = {
  name: "strap",
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
    checkModes(args);
    if (args.switches.has("fold-test")) {
      // Only a fold test reads and writes project files.
      const { foldTestReport } = await import("./foldTestReport.ts");
      const report = foldTestReport(args, io.language);
      io.out(json ? `${JSON.stringify(report.json)}\n` : report.text);
      return EXIT.done;
    }
    const file = args.values.get("machine");
    // Only a workshop is read by the project file's rules.
    const machine = file === undefined ? {} : (await import("./readNamed.ts")).readMachine(file);
    const { wish, materials } = readStrap(args, io.language, machine);
    if (args.values.has("compare")) {
      const csv = wordOption(args, "compare", ["table", "csv"] as const, "table") === "csv";
      const price = numberOption(args, "price", { least: 0, most: 1_000_000 }, null);
      const byMetre = price === null ? null : { amount: price, basis: { kind: "length" as const, mm: 1000 } };
      // Every construction takes the options it uses.
      const rows = sideBySide(wish, materials, byMetre, (own, id) =>
        rebuiltAs({ ...own, construction: id }, id),
      ).map(({ strap: _, ...row }) => row);
      io.out(json ? `${JSON.stringify(rows)}\n` : csv ? compareCsv(rows) : compareText(rows, io.language));
      return EXIT.done;
    }
    const step = rulerStep(args);
    const { parts, presetNote } = STRAP_WORDS[io.language];
    const built =
      step === undefined ? buildStrap(wish, materials, "", parts) : roundToRuler(wish, materials, step, parts);
    if (!built.ok) throw inputProblem(atOptions(built.problems, wish));
    if (args.values.has("picture") || args.values.has("out")) {
      // Fonts and drawings are read for pictures alone.
      const { writePictures } = await import("./writePictures.ts");
      await writePictures(args, built.value, io);
    }
    io.out(
      json
        ? `${JSON.stringify(strapJson(built.value, materials, io.language))}\n`
        : strapText(built.value, materials, io.language) + (args.values.has("preset") ? `${presetNote}\n` : ""),
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
