import { TOGETHER } from "../../core/batch/together.ts";
import { type Command, JSON_OPTION } from "../command.ts";
import { CUT_OPTION } from "../options/searchSettings.ts";
import { WRITE_OPTION } from "../options/writtenOutputs.ts";

/** `batch`: from one template and a table of orders to a folder for each. */
export const batchCommand: Command = {
  name: "batch",
  synopsis: "TEMPLATE ORDERS --out DIR [options], or FOLDER --out DIR [options]",
  about:
    'Lays every order of a table (CSV, or a JSON list), each the template with its own values, or every project file of a folder. A column is named order, due, shade, bags, or by a part and its field: "handle.width". Each order gets a folder; summary.html and summary.csv tell metres, use of cloth, cost and what went wrong. One wrong order never stops the others.\nThe same orders and effort give the same bytes on any number of threads. Ctrl-C finishes the lays under way; the same command then goes on, and does nothing twice. Ends with 1 when an order was not laid whole, or when two lays count on the same leftover.',
  options: [
    { name: "out", value: "DIR", help: "folder to write to; made if it is not there" },
    {
      name: "together",
      value: "WHICH",
      help: `orders of the same cloth and shade that are laid together: ${TOGETHER.join(", ")} (default none; due: those due the same day)`,
    },
    { name: "effort", value: "N", help: "search each cloth with N million evaluations (default 0.2)" },
    { name: "seed", value: "N", help: "seed of the search (default 1)" },
    {
      name: "threads",
      value: "N",
      help: "lays worked out at a time (default: the machine's cores, all but one where there are more than two)",
    },
    {
      name: "queue",
      value: "URL",
      help: "have the lays searched by every machine that runs laywright worker on the same Redis store: redis://host:6379, or rediss:// for an encrypted line, user and password in the address; plans are checked and drawn here",
    },
    {
      name: "plans",
      value: "DIR",
      help: "keep plans in this folder and take those out that are there and pass the checker; it may be shared by machines and batches, and with --queue by the workers",
    },
    CUT_OPTION,
    WRITE_OPTION,
    JSON_OPTION,
  ],
  operands: [1, 2],
  run: async (args, io) => {
    // Engines, drawings and fonts are read for a run alone, not for the help.
    const { runBatch } = await import("./runBatch.ts");
    return runBatch(args, io);
  },
};
