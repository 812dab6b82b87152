import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { type Command, EXIT, type Io, JSON_OPTION } from "./command.ts";
import { COMMANDS } from "./commands.ts";
import { plainProblem } from "./inOut/toldProblem.ts";
import { writeFiles } from "./inOut/writeFiles.ts";
import { numberOption } from "./options/optionValues.ts";
import { run } from "./run.ts";

function recorder() {
  const said = { out: "", err: "", progress: "" };
  const io: Io = {
    language: "en",
    out: (text) => {
      said.out += text;
    },
    err: (text) => {
      said.err += text;
    },
    progress: (text) => {
      said.progress = text;
    },
  };
  return { said, io };
}

const sample: Command = {
  name: "measure",
  synopsis: "FILE [options]",
  about: "Measures a file.",
  options: [{ name: "effort", value: "N", help: "how long" }, { name: "broken", help: "fails" }, JSON_OPTION],
  operands: [1, 1],
  async run(args, io) {
    if (args.switches.has("broken")) throw new RangeError("seventh layer");
    if (args.operands[0] === "missing")
      throw plainProblem("file-unreadable", "missing", () => "missing cannot be read.");
    io.out(`${args.operands[0]} ${numberOption(args, "effort", { least: -5, most: 10 }, 1)}`);
    return EXIT.done;
  },
};

async function attempt(...words: string[]) {
  const { said, io } = recorder();
  const code = await run(words, [{ name: "measure", summary: "measures", load: async () => sample }], io);
  return { code, ...said };
}

test("every listed command is read under its own name", async () => {
  for (const { name, load } of COMMANDS) expect((await load()).name).toBe(name);
}, 120_000);

test("a command gets its options and operands", async () => {
  expect(await attempt("measure", "a.json", "--effort", "3")).toMatchObject({ code: 0, out: "a.json 3", err: "" });
  expect(await attempt("measure", "--effort=-3", "a.json")).toMatchObject({ code: 0, out: "a.json -3" });
  expect(await attempt("measure", "--effort", "-3", "a.json")).toMatchObject({ code: 0, out: "a.json -3" });
});

test("help goes to standard output and ends with 0", async () => {
  expect((await attempt("--help")).out).toContain("measures");
  const help = await attempt("measure", "--help");
  expect(help.code).toBe(0);
  expect(help.out).toContain("--effort N");
  expect((await attempt("help", "measure")).out).toBe(help.out);
  expect(await attempt("help", "--lang", "de")).toEqual(await attempt("help"));
});

test.each([
  [[], "Usage"],
  [["mesure"], "did you mean measure"],
  [["measure"], "needs FILE"],
  [["measure", "a", "b"], "one word too many"],
  [["measure", "a", "--efort", "3"], "did you mean --effort"],
  [["measure", "a", "-e"], "no option -e"],
  [["measure", "a", "--effort"], "needs a value"],
  [["measure", "a", "--effort", "1", "--effort", "2"], "twice"],
  [["measure", "a", "--json=yes"], "takes no value"],
  [["measure", "a", "--effort", "NaN"], "from -5 to 10"],
  [["measure", "a", "--effort", "1e9"], "from -5 to 10"],
  [["measure", "a", "--effort", ""], "from -5 to 10"],
  [["measure", "a", "--__proto__", "1"], "no option"],
])("wrong usage %j ends with 2 and says why", async (words, why) => {
  const { code, out, err } = await attempt(...words);
  expect(code).toBe(EXIT.usage);
  expect(out).toBe("");
  expect(err).toContain(why);
  expect(err).not.toMatch(/^\s+at /m);
});

test.each([
  [["mesure", "--lang", "de"], "meinen Sie measure?"],
  [["--lang", "de", "measure"], "es gibt keinen Befehl"],
  [["measure", "--lang=de"], "measure braucht FILE"],
  [["measure", "a", "--lang", "de", "--efort", "3"], "meinen Sie --effort?"],
  [["measure", "a", "--lang", "de", "--effort", "NaN"], "muss eine Zahl von -5 bis 10 sein"],
  [["measure", "a", "--lang", "de", "--effort"], "braucht einen Wert"],
  [["measure", "a", "--lang", "it"], "--lang must be one of en, de, fr"],
])("wrong usage %j is told in the language asked for", async (words, why) => {
  const { code, err } = await attempt(...words);
  expect(code).toBe(EXIT.usage);
  expect(err).toContain(why);
});

test("a problem in the input ends with 1, as sentences and as data", async () => {
  expect(await attempt("measure", "missing")).toMatchObject({ code: 1, out: "", err: "missing cannot be read.\n" });
  const { out } = await attempt("measure", "missing", "--json");
  expect(JSON.parse(out).problems).toEqual([
    { code: "file-unreadable", path: "missing", message: "missing cannot be read." },
  ]);
});

test("a bug of ours ends with 3 and says where", async () => {
  const { code, err } = await attempt("measure", "a", "--broken");
  expect(code).toBe(EXIT.bug);
  expect(err).toContain("seventh layer");
});

test("files are written whole or not at all", () => {
  const folder = mkdtempSync(join(tmpdir(), "laywright-write-"));
  expect(writeFiles(folder, [{ name: "a/b.txt", data: "one" }])).toEqual([join(folder, "a/b.txt")]);
  expect(readFileSync(join(folder, "a/b.txt"), "utf8")).toBe("one");
  writeFileSync(join(folder, "plain"), "a file");
  const blocked = [
    { name: "new/c.txt", data: "two" },
    { name: "plain/d.txt", data: "three" },
  ];
  expect(() => writeFiles(folder, blocked)).toThrow("Nothing was written");
  expect(() =>
    writeFiles(folder, [
      { name: "e.txt", data: "four" },
      { name: "a", data: "five" },
    ]),
  ).toThrow("folder");
  expect(readdirSync(folder).sort()).toEqual(["a", "plain"]);
});

test("a command whose code cannot be read is a bug of ours, told like any other", async () => {
  let said = "";
  const io = { language: "en", out: () => {}, err: (text: string) => (said += text), progress: () => {} } as const;
  const broken = { name: "lay", summary: "", load: () => Promise.reject(new Error("no such part")) };
  expect(await run(["lay"], [broken], io)).toBe(3);
  expect(said).toContain("laywright lay: internal error");
  expect(said).toContain("no such part");
});
