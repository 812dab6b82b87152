import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Command, OptionSpec } from "../../src/cli/command.ts";
import { COMMANDS } from "../../src/cli/commands.ts";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";
import { runCli } from "../tools/runCli.ts";
import type { Draw, Kind } from "./kind.ts";

const BAD = [
  ...["-1", "0", "1e9 mm", "", " ", "NaN", "1/0 in", "../..", "\u0000", "∞", "--", "1e400", "0x10", "1,5,5", "a=b"],
  ...["[1]", "{}", "null", "\u202e", "x".repeat(3000), "1e-300 mm", "999999999999", "%s", "$(x)"],
];
/** By what stands for the value in the help. */
const GOOD: Readonly<Record<string, readonly string[]>> = {
  L: ["25 mm", "1 in", "60 in", "1.2 m", "4 7/8 in", "3"],
  W: ["54 in", "140 cm", "30 mm"],
  T: ["0.5 mm", "1.2 mm", "3 oz", "0.3"],
  D: ["5 mm", "3/16 in"],
  G: ["2 mm"],
  S: ["1", "0.5", "10 mm"],
  N: ["1", "2", "7", "100"],
  P: ["A4", "Letter", "12.50", "8"],
  "W x L": ["4 in x 28 in", "100 mm x 700 mm"],
  "L x W": ["300 mm x 200 mm"],
  "X x Y": ["10 mm x 10 mm"],
  WxT: ["25 mm x 1.5 mm"],
  WxL: ["25 mm x 8 mm"],
  WxH: ["25 mm x 20 mm"],
  "0..1": ["0.3", "1"],
  CxR: ["2x1"],
  SHARE: ["3 %", "0.03"],
  LIST: ["1", "a,b", "25 mm,30 mm", "fourfold,tube"],
  UNIT: ["mm", "in"],
  MM: ["0.1", "1"],
  JSON: ["settings.json"],
};
/** In the folder that a line is run in; the last ones are not there, or not what they seem. */
const FILES = [
  ...["project.json", "pouch.json", "orders.csv", "cupboard.json", "line.svg", "line.dxf", "settings.json"],
  ...["broken.json", "empty.json", "bytes.bin", "folder", "none.json", "none/none.json", "machine.json"],
];
const WRITTEN = [
  "out",
  "out/deep",
  "written.txt",
  "folder",
  "project.json/under",
  "out.svg",
  "out.pdf",
  "a\u0000b",
];

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="160mm" viewBox="0 0 220 160">
  <path id="Front" d="M20 20H170V120H20Z" fill="none" stroke="#000"/></svg>`;
const DXF = ["0", "SECTION", "2", "ENTITIES", "0", "LINE", "8", "0", "10", "0", "20", "0", "11", "90", "21", "0"]
  .concat(["0", "ENDSEC", "0", "EOF", ""])
  .join("\n");

/** A project of one panel and one strap: a line that lays it is over at once. */
const PROJECT = {
  laywright: 1,
  name: "Small",
  materials: [
    {
      id: "cloth",
      kind: "woven",
      thickness: 0.5,
      stock: [{ kind: "roll", id: "roll", width: 1400, length: 3000 }],
    },
  ],
  panels: [{ id: "body", material: "cloth", shape: { kind: "rectangle", along: 300, across: 200 }, count: 2 }],
  straps: [{ id: "s", construction: "fourfold", width: 25, length: 700, materials: { outer: "cloth" } }],
};

/** Below the program, where its threads find what they are started with. */
const WITHIN = fileURLToPath(new URL("../../out/harden/", import.meta.url));

/** The folder that lines are run in, below one of its own, and what stands in both when it is made. */
let made: { readonly top: string; readonly place: string; readonly state: string } | null = null;

/** Names, sizes and times of all that stands below a folder. */
function stateOf(top: string): string {
  const names = readdirSync(top, { recursive: true, encoding: "utf8" }).sort();
  return names
    .map((name) => {
      const { size, mtimeMs, ctimeMs } = statSync(join(top, name));
      return `${name} ${size} ${mtimeMs} ${ctimeMs}`;
    })
    .join("\n");
}

/** A folder with the files that lines name, deep enough that `../..` is still inside; made anew where a line changed it. */
function folder(): string {
  if (made !== null && stateOf(made.top) === made.state) return made.place;
  let top = made?.top;
  if (top === undefined) {
    mkdirSync(WITHIN, { recursive: true });
    const own = mkdtempSync(join(WITHIN, "lines-"));
    process.once("exit", () => rmSync(own, { recursive: true, force: true }));
    top = own;
  }
  for (const name of readdirSync(top)) rmSync(join(top, name), { recursive: true, force: true });
  const place = join(top, "a/b/c");
  mkdirSync(join(place, "folder"), { recursive: true });
  for (const [name, data] of Object.entries(CONTENTS)) writeFileSync(join(place, name), data);
  made = { top, place, state: stateOf(top) };
  return place;
}

const CONTENTS: Readonly<Record<string, string | Uint8Array>> = {
  "project.json": JSON.stringify(PROJECT),
  "pouch.json": JSON.stringify(POUCH_TEMPLATE),
  "orders.csv": "order,due,shade,bags,height,loop.length\n1,2027-03-11,navy,1,100,\n",
  "line.svg": SVG,
  "line.dxf": DXF,
  "settings.json": "{}",
  "machine.json": '{ "thickness": "3 mm" }',
  "broken.json": '{"laywright": 1, "name": ',
  "empty.json": "",
  "bytes.bin": Uint8Array.from({ length: 4000 }, (_, i) => (i * 151) % 256),
};

/** A value for an option: of its kind, of another option's kind, or one that nobody should give. */
function value(draw: Draw, { name, value: kind = "", help }: OptionSpec): string {
  if (draw.below(15) === 0) return draw.one(BAD);
  if (draw.below(25) === 0) return draw.one(draw.one(Object.values(GOOD)));
  if (["DIR", "FILE", "PDF", "PROJECT"].includes(kind))
    return draw.one(["out", "csv", "pdf", "picture", "photo-sheet"].includes(name) ? WRITTEN : FILES);
  // What an option may be stands in its help, one after the other.
  const listed = help.match(/[a-z0-9][a-z0-9-]*(?=,| or )|(?<=, | or )[a-z0-9][a-z0-9-]*/gu);
  return draw.one(GOOD[kind] ?? listed ?? [kind]);
}

/** Options that keep a search short; without them a line would take seconds. */
const SHORT: Readonly<Record<string, readonly string[]>> = {
  lay: ["--effort", "0.001", "--threads", "1"],
  batch: ["--effort", "0.001", "--threads", "1"],
  shopping: ["--effort", "0.001"],
  buy: ["--evaluations", "300"],
  yield: ["--evaluations", "300"],
  bench: ["--evaluations", "300", "--threads", "1"],
};
/** Left out of lines: what waits for others or for the clock, and what measures for minutes. */
const WAITING = new Set(["queue", "seconds", "effort", "evaluations", "threads", "wait", "scale", "against"]);

function optionWords(draw: Draw, command: Command): string[] {
  const known = command.options.filter(({ name }) => !WAITING.has(name));
  const words: string[] = [];
  for (let more = draw.one([0, 1, 1, 2, 2, 3, 6]); more > 0 && known.length > 0; more--) {
    const option = draw.one(known);
    const name = draw.below(30) === 0 ? draw.one(["--unknown", "-x", `--no-${option.name}`]) : `--${option.name}`;
    const given = option.value === undefined ? [] : [value(draw, option)];
    const how = draw.below(50);
    if (how === 0) words.push(name);
    else if (how === 1) words.push(`${name}=${given[0] ?? "1"}`);
    else words.push(name, ...given);
    if (how === 2) words.push(name, ...given);
  }
  return words;
}

/** Every option without which a command does nothing, so that many lines get as far as its work. */
function needed(draw: Draw, command: Command): string[] {
  const named = [...command.synopsis.replaceAll(/\[[^\]]*\]/gu, "").matchAll(/--([a-z-]+)/gu)].map(
    ([, name]) => name,
  );
  return command.options
    .filter(({ name }) => named.includes(name) && !WAITING.has(name) && draw.below(12) > 0)
    .flatMap((option) =>
      option.value === undefined ? [`--${option.name}`] : [`--${option.name}`, value(draw, option)],
    );
}

async function line(draw: Draw): Promise<string[]> {
  const listed = draw.one(COMMANDS);
  if (draw.below(200) === 0)
    return [draw.one(["help", "nonsense", "", "--help", "-v", listed.name.slice(1)]), listed.name];
  const command = await listed.load();
  const [least, most] = command.operands;
  const operands = draw.below(25) === 0 ? draw.below(4) : least + draw.below(Math.min(2, most - least + 1));
  const files = Array.from({ length: operands }, () => draw.one(draw.below(4) === 0 ? FILES : FILES.slice(0, 2)));
  if (command.name === "cupboard" && draw.below(8) > 0)
    files[0] = draw.one(command.about.match(/[a-z]{3,}/gu) ?? ["list"]);
  // One that serves would not end, and one that helps would wait for a store: only what is wrong with their words.
  const ending =
    command.name === "serve" || command.name === "worker" ? [draw.one(["--unknown", "--help", "more"])] : [];
  const own = draw.below(8) > 0 ? needed(draw, command) : [];
  const words = [...files, ...own, ...optionWords(draw, command), ...(SHORT[command.name] ?? []), ...ending];
  return [command.name, ...words];
}

/** Command lines of each command's own options: an exit code of the contract, a sentence where something is wrong, never a stack. */
export const commandLines: Kind = {
  name: "commands",
  about:
    "command lines of each command's own options, good, bad, doubled and contradicting, on files good and hostile",
  limitMs: 60_000,
  run: async (draw) => {
    const words = await line(draw);
    const told = JSON.stringify(words).slice(0, 2000);
    const before = process.cwd();
    const own = folder();
    const project = readFileSync(join(own, "project.json"), "utf8");
    process.chdir(own);
    try {
      const { code, out, err } = await runCli(...words);
      if (![0, 1, 2].includes(code)) throw new Error(`${told}: exit ${code}: ${err}`);
      // That no strap fits is an answer of `yield`, which stands where answers stand.
      const said = words[0] === "yield" ? out + err : err;
      if (code !== 0 && said.trim() === "" && !words.includes("--json"))
        throw new Error(`${told}: exit ${code} without a word`);
      if (/^\s+at .*:\d+/mu.test(err)) throw new Error(`${told}: a stack: ${err}`);
      // What was typed may be told back.
      const ours = words.includes("NaN") ? err.replaceAll("NaN", "") : err.replaceAll('"NaN', "");
      if (/undefined|\[object |NaN/u.test(ours)) throw new Error(`${told}: told badly: ${err}`);
      if (code === 2 && out !== "") throw new Error(`${told}: wrong usage, and an answer`);
      if (code === 2 && readFileSync(join(own, "project.json"), "utf8") !== project)
        throw new Error(`${told}: wrong usage, and a file changed`);
      return `${words[0]} exit ${code}`;
    } finally {
      process.chdir(before);
    }
  },
};
