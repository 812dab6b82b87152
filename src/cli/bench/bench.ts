import type { CutMode } from "../../core/lay/search/engine.ts";
import { nodePool } from "../../worker/nodePool.ts";
import type { SearchPool } from "../../worker/searchPool.ts";
import {
  type Command,
  EXIT,
  type ExitCode,
  type Io,
  JSON_OPTION,
  type ParsedArgs,
  UsageError,
} from "../command.ts";
import { InputProblem, plainProblem } from "../inOut/toldProblem.ts";
import { CUT_OPTION, cutMode, SEARCH_OPTIONS, searchSettings } from "../options/searchSettings.ts";
import { timedSearch } from "../timedSearch.ts";
import { type AgainstLine, otherPackers, runAgainst } from "./against.ts";
import { type BenchLine, benchLine } from "./benchLine.ts";
import { benchProblem } from "./benchProblem.ts";
import { type BenchRow, benchTable, scaleTable, seedTable } from "./benchTable.ts";
import { type Instance, readDataset } from "./dataset.ts";
import { familyTable } from "./familyTable.ts";
import { benchModule, instancesAt } from "./instancesAt.ts";
import { outlineRate } from "./outlineRate.ts";
import { verifyLine } from "./verifyLine.ts";

/** Processor time for which `--scale` runs the outline engine alone on each job, s. */
const PACE_SECONDS = 6;

/** `bench`: runs open data sets and proves every placement. */
export const benchCommand: Command = {
  name: "bench",
  synopsis: "PATH… [options]",
  about:
    "Runs instances of strips and sheets from data set files, folders of them or modules that make them, and verifies every placement from the raw outlines. With --json one line an instance on standard output; a table on standard error.\nA plan that fails the check ends the run with exit code 3.",
  options: [
    ...SEARCH_OPTIONS,
    { name: "rotate", help: "let every item turn by quarter turns besides" },
    CUT_OPTION,
    { name: "against", help: "run general-purpose packers on the same instances (rectangles, source checkout)" },
    { name: "scale", help: "run growing jobs: first plan, pace of the outline engine, memory (source checkout)" },
    {
      name: "seeds",
      value: "N,N,…",
      help: "run every instance with each of these seeds; the table has their means",
    },
    { name: "only", value: "NAME", help: "only instances whose name begins so" },
    { ...JSON_OPTION, help: "print one JSON line an instance on standard output" },
  ],
  operands: [0, 1000],
  run: runBench,
};

async function runBench(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const settings = searchSettings(args, 10);
  const quarterTurns = args.switches.has("rotate");
  const mode = cutMode(args);
  const scale = args.switches.has("scale");
  const seeds = seedsOf(args, settings.seed);
  const instances = await instancesOf(args);
  const packers = args.switches.has("against") ? await otherPackers() : [];
  const pool = nodePool(settings.threads);
  const rows: BenchRow[] = [];
  let faults = 0;
  const judge = (name: string, found: readonly string[]): void => {
    for (const fault of found) io.err(`${name}: wrong plan: ${fault}\n`);
    faults += found.length;
  };
  try {
    for (const [index, { instance, seed }] of runsOf(instances, seeds).entries()) {
      io.progress(`${instance.name} (${index + 1} of ${instances.length * seeds.length})`);
      const line = await runInstance(pool, instance, quarterTurns, mode, { ...settings, seed });
      judge(instance.name, verifyLine(instance, line, quarterTurns, mode));
      const against = packers.map((packer): AgainstLine => {
        const compared = runAgainst(packer, instance, line, quarterTurns);
        judge(`${instance.name} by ${packer.name}`, compared.faults);
        return compared.line;
      });
      const memoryMb = process.memoryUsage.rss() / 1e6;
      const asksPace = scale && instance.kind === "irregular-strip";
      const pace = asksPace ? outlineRate(benchProblem(instance, quarterTurns), seed, PACE_SECONDS) : undefined;
      rows.push({ line, against, memoryMb, ...(pace === undefined ? {} : { outlineRate: pace }) });
      if (args.switches.has("json"))
        io.out(`${JSON.stringify(packers.length > 0 ? { ...line, against } : line)}\n`);
    }
  } finally {
    pool.close();
  }
  io.progress("");
  io.err(scale ? scaleTable(rows) : seeds.length > 1 ? seedTable(rows, seeds) : benchTable(rows));
  const lines = rows.map(({ line }) => line).filter(({ kind }) => kind === "rect-strip");
  const families = scale ? "" : familyTable(lines, mode === "free" && !quarterTurns);
  if (families !== "") io.err(`\n${families}\n`);
  io.err(faults === 0 ? `All ${rows.length} plans verified.\n` : `${faults} faults found.\n`);
  return faults === 0 ? EXIT.done : EXIT.bug;
}

/** The seeds asked for, or the one. Throws `UsageError`. */
function seedsOf(args: ParsedArgs, one: number): readonly number[] {
  const text = args.values.get("seeds");
  if (text === undefined) return [one];
  const seeds = text.split(",").map(Number);
  if (!/^\d+(,\d+)*$/.test(text) || new Set(seeds).size < seeds.length)
    throw new UsageError(`--seeds takes different whole numbers such as 1,2,3, not ${text}`);
  for (const other of ["against", "scale"])
    if (args.switches.has(other)) throw new UsageError(`--seeds and --${other} cannot be combined`);
  if (args.values.has("seed")) throw new UsageError("--seeds and --seed cannot be combined");
  return seeds;
}

/** Every instance with every seed, all seeds of an instance together. */
function runsOf(
  instances: readonly Instance[],
  seeds: readonly number[],
): { readonly instance: Instance; readonly seed: number }[] {
  return instances.flatMap((instance) => seeds.map((seed) => ({ instance, seed })));
}

/** Instances of all paths, each path's module or files read once. */
async function instancesOf(args: ParsedArgs): Promise<Instance[]> {
  const only = args.values.get("only") ?? "";
  const found: Instance[] = [];
  for (const path of args.operands) found.push(...(await instancesAt(path)));
  if (args.switches.has("scale")) found.push(...(await scaleInstances()));
  else if (args.operands.length === 0) throw new UsageError("bench needs PATH…");
  if (cutMode(args) !== "free" && found.some(({ kind }) => kind === "irregular-strip"))
    throw new UsageError("--cut is for rectangles only");
  if (args.switches.has("against") && found.some(({ kind }) => kind !== "rect-strip"))
    throw new UsageError("--against compares rectangles on strips only");
  const wanted = found.filter(({ name }) => name.startsWith(only));
  if (wanted.length === 0) throw plainProblem("nothing-to-run", "", () => "No instance was found.");
  return wanted;
}

async function scaleInstances(): Promise<Instance[]> {
  const { default: data } = await benchModule<{ default: unknown }>("scaleJobs.ts", "scale");
  const { instances, problems } = readDataset(data, "scaleJobs.ts");
  if (problems.length > 0) throw new InputProblem(() => problems);
  return instances;
}

async function runInstance(
  pool: SearchPool,
  instance: Instance,
  quarterTurns: boolean,
  mode: CutMode,
  settings: ReturnType<typeof searchSettings>,
): Promise<BenchLine> {
  const { seed, seconds: limit, evaluations: most, threads } = settings;
  const problem = benchProblem(instance, quarterTurns);
  const wish = { problem, mode, seed, evaluations: most };
  const { plan, evaluations, seconds, first } = await timedSearch(pool, wish, limit);
  const [unplaced] = plan.unplaced;
  if (unplaced && instance.sheetLength === null) {
    const reason = `item ${unplaced.pieceId} does not fit the strip in any turn it may take`;
    throw plainProblem("does-not-fit", instance.name, () => `${instance.name}: ${reason}.`);
  }
  return benchLine(instance, plan, { seconds, first, threads, evaluations, seed });
}
