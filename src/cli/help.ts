import { type Command, LANGUAGE_OPTION, type ListedCommand, type OptionSpec } from "./command.ts";

const WIDTH = 92;

/** The page for `laywright --help`. */
export function programHelp(commands: readonly ListedCommand[]): string {
  const column = Math.max(...commands.map((command) => command.name.length)) + 2;
  const list = commands.map((command) => `  ${command.name.padEnd(column)}${command.summary}`);
  return [
    "Laywright: strap and panel pieces cut right the first time.",
    "",
    "Usage: laywright COMMAND [options]",
    "",
    ...list,
    "",
    "laywright COMMAND --help explains a command. laywright --version prints the version.",
    'Lengths are written with their unit: "4 7/8 in", "123.8 mm", "1.2 m"; a plain number is in mm.',
    "Exit codes: 0 done, 1 a problem in the input, 2 wrong usage, 3 an internal error.",
    "",
  ].join("\n");
}

/** The page for `laywright COMMAND --help`. */
export function commandHelp(command: Command): string {
  const options: OptionSpec[] = [...command.options, LANGUAGE_OPTION, { name: "help", help: "show this page" }];
  const left = options.map((option) => `  --${option.name}${option.value ? ` ${option.value}` : ""}`);
  const column = Math.max(...left.map((text) => text.length)) + 2;
  const lines = options.map((option, i) => {
    const rows = wrapped(option.help, WIDTH - column);
    return rows.map((row, k) => (k === 0 ? left[i]! : "").padEnd(column) + row).join("\n");
  });
  const about = command.about.split("\n").flatMap((paragraph) => wrapped(paragraph, WIDTH));
  return [usageLine(command), "", ...about, "", "Options:", ...lines, ""].join("\n");
}

/** The one line shown with a usage error. */
export function usageLine(command: Command, word = "Usage"): string {
  return `${word}: laywright ${command.name} ${command.synopsis}`.trimEnd();
}

function wrapped(text: string, width: number): string[] {
  const rows: string[] = [""];
  for (const word of text.split(" ")) {
    const last = rows.length - 1;
    const joined = rows[last] ? `${rows[last]} ${word}` : word;
    if (joined.length <= width || !rows[last]) rows[last] = joined;
    else rows.push(word);
  }
  return rows;
}
