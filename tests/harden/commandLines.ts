import { COMMANDS } from "../../src/cli/commands.ts";
import { runCli } from "../tools/runCli.ts";
import type { Draw, Kind } from "./kind.ts";

const VALUES = [
  ...[
    "4 in x 28 in",
    "42 in",
    "36 in",
    "1 in",
    "60 cm",
    "-1",
    "0",
    "1e9 mm",
    "",
    "NaN",
    "1/0 in",
    "../..",
    "\u0000",
    "∞",
  ],
  ...[
    "fourfold",
    "three-raw",
    "tube",
    "vinyl",
    "cotton",
    "lengthwise",
    "ruler",
    "A4",
    "[1]",
    "{}",
    "fixtures/none.json",
  ],
];
const OPTIONS = [
  ...[
    "--strip",
    "--width",
    "--length",
    "--count",
    "--gap",
    "--grain",
    "--construction",
    "--thickness",
    "--material",
  ],
  ...[
    "--cut-width",
    "--json",
    "--lang",
    "--help",
    "--paper",
    "--cut",
    "--choose",
    "--seed",
    "--threads",
    "--unknown",
    "-x",
  ],
];

/** All but the one that waits to be asked. */
const NAMES = COMMANDS.map(({ name }) => name).filter((name) => name !== "serve");

function words(draw: Draw): string[] {
  return Array.from({ length: draw.below(10) }, () => draw.one(draw.below(2) === 0 ? OPTIONS : VALUES));
}

/** Random command lines: an exit code of the contract, a sentence where something is wrong, never a stack. */
export const commandLines: Kind = {
  name: "commands",
  about: "random command lines",
  run: async (draw) => {
    const line = [draw.one([...NAMES, "nonsense"]), ...words(draw)];
    const { code, out, err } = await runCli(...line);
    const told = JSON.stringify(line);
    if (![0, 1, 2].includes(code)) throw new Error(`${told}: exit ${code}: ${err}`);
    if (code !== 0 && err.trim() === "" && !line.includes("--json"))
      throw new Error(`${told}: exit ${code} without a word`);
    if (/^\s+at .*:\d+/mu.test(err)) throw new Error(`${told}: a stack: ${err}`);
    if (code === 2 && out !== "") throw new Error(`${told}: wrong usage, and an answer`);
    return `exit ${code}`;
  },
};
