import { CHOICES } from "../../core/lay/search/comparePlans.ts";
import { type Command, JSON_OPTION } from "../command.ts";
import { CUT_OPTION, SEARCH_OPTIONS } from "../options/searchSettings.ts";
import { WRITE_OPTION } from "../options/writtenOutputs.ts";
import { FROM_CUPBOARD_OPTIONS, OUTPUT_OPTIONS } from "./layOptions.ts";

/** `lay`: from the project file to the cutting table. */
export const layCommand: Command = {
  name: "lay",
  synopsis: "PROJECT [--out DIR] [options]",
  about:
    "Works out every piece of the project, lays them on the cloth there is, has an independent checker verify each plan, and writes the files into DIR: plan.json, cut sheet, labels, and for every cloth the drawing at true size, sheets to tape together and one long sheet. Without --out only the summary is printed.\nNothing is written unless every plan passes the checker. Ctrl-C ends the search and goes on with the best plan so far. Ends with 1 when pieces had to be left out; what could be laid is written all the same.",
  options: [
    { name: "out", value: "DIR", help: "folder to write to; made if it is not there" },
    ...SEARCH_OPTIONS.filter(({ name }) => name === "seed"),
    {
      name: "threads",
      value: "N",
      help: "workers that search together (default: the machine's cores, all but one where there are more than two; 1 with --effort, --choices and --choose)",
    },
    {
      name: "seconds",
      value: "N",
      help: "search for at most N seconds in all (default 10); a cloth's search ends sooner when nothing shorter has come for long",
    },
    { name: "effort", value: "N", help: "search each cloth with N million evaluations: the same plan every time" },
    ...FROM_CUPBOARD_OPTIONS,
    {
      name: "queue",
      value: "URL",
      help: "search on every machine that runs laywright worker on the same Redis store, from the best plan of all of them",
    },
    CUT_OPTION,
    { name: "choices", help: "instead of a plan: shortest, easiest to cut, largest offcut, each with its figures" },
    { name: "choose", value: "WHICH", help: `the plan to take of these three: ${CHOICES.join(", ")}` },
    WRITE_OPTION,
    ...OUTPUT_OPTIONS,
    JSON_OPTION,
  ],
  operands: [1, 1],
  run: async (args, io) => {
    // Engines, drawings and fonts are read for a run alone, not for the help.
    const { runLay } = await import("./runLay.ts");
    return runLay(args, io);
  },
};
