import { BAG_BODIES } from "../../core/bags/bagWish.ts";
import { en } from "../../core/words/en/en.ts";
import { type Command, JSON_OPTION } from "../command.ts";

/** `laywright bag`: a starting project from a bag's outside measures. */
export const bagCommand: Command = {
  name: "bag",
  synopsis:
    '(--starter NAME | --body ID --width "30 cm" --height "25 cm" [--depth "10 cm"]) [--out FILE] [options]',
  about: [
    "Makes a project from the finished outside measures of a bag. Its panels follow the measures that stand at the top of the file: change one, and all that follows from it changes. What is not given is usual for the body.",
    "",
    ...BAG_BODIES.map((body) => `${body}: ${en.panels.about[body]}`),
    "",
    'Example: laywright bag --body boxed --width "30 cm" --height "25 cm" --depth "10 cm" --out tote.json',
  ].join("\n"),
  options: [
    { name: "starter", value: "NAME", help: "begin from a tote, pouch, crossbody or bucket; the rest changes it" },
    { name: "body", value: "ID", help: "how the body is built; see the list above" },
    { name: "width", value: "L", help: "finished width, outside" },
    { name: "height", value: "L", help: "finished height without handles" },
    { name: "depth", value: "L", help: "finished depth from front to back; a flat bag has none" },
    { name: "allowance", value: "L", help: "seam allowance (default 10 mm, or 3/8 in)" },
    { name: "opening", value: "HOW", help: "open, zip or flap (default open; pouch: zip)" },
    { name: "lining", value: "L", help: "how much smaller the lining is each way (default 2 mm), or none" },
    { name: "pockets", value: "WHICH", help: "none, slip, zip or both (default slip; pouch: none)" },
    { name: "interfacing", value: "HOW", help: "none, full or inset, just inside the seam (default full)" },
    { name: "straps", value: "WHICH", help: "none, handles, shoulder or wrist" },
    { name: "units", value: "UNIT", help: "mm (default) or in: what the file's lengths are written in" },
    { name: "name", value: "NAME", help: "name of the project" },
    { name: "out", value: "FILE", help: "write the project to this file" },
    JSON_OPTION,
  ],
  operands: [0, 0],
  run: async (args, io) => {
    // Panels, straps and the project file are read for a run alone, not for the help.
    const { runBag } = await import("./runBag.ts");
    return runBag(args, io);
  },
};
