import { readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { nodePool } from "../worker/nodePool.ts";
import type { SearchPool } from "../worker/searchPool.ts";
import { type BenchLine, benchLine } from "./bench/benchLine.ts";
import { benchProblem } from "./bench/benchProblem.ts";
import { benchTable } from "./bench/benchTable.ts";
import { type Instance, readDataset } from "./bench/dataset.ts";
import { verifyLine } from "./bench/verifyLine.ts";
import { type Command, EXIT, type ExitCode, type Io, JSON_OPTION, type ParsedArgs } from "./command.ts";
import { InputProblem, plainProblem } from "./problemReport.ts";
import { readInput } from "./readInput.ts";
import { SEARCH_OPTIONS, searchSettings } from "./searchSettings.ts";
import { timedSearch } from "./timedSearch.ts";
import { reasonOf } from "./writeFiles.ts";

/** `bench`: runs open data sets and proves every placement. */
export const benchCommand: Command = {
  name: "bench",
  summary: "lay out open data sets, every placement verified",
  synopsis: "PATH… [options]",
  about:
    "Runs strip-packing instances from data set files or folders of them, and verifies every placement from the raw outlines. With --json one line an instance on standard output; a table on standard error.\nA plan that fails the check ends the run with exit code 3.",
  options: [
    ...SEARCH_OPTIONS,
    { name: "rotate", help: "let every item turn by quarter turns besides" },
    { name: "only", value: "NAME", help: "only instances whose name begins so" },
    { ...JSON_OPTION, help: "print one JSON line an instance on standard output" },
  ],
  operands: [1, 1000],
  run: runBench,
};

async function runBench(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const settings = searchSettings(args, 10);
  const quarterTurns = args.switches.has("rotate");
  const only = args.values.get("only") ?? "";
  const instances = args.operands.flatMap(instancesAt).filter(({ name }) => name.startsWith(only));
  if (instances.length === 0) throw plainProblem("nothing-to-run", "", "No instance was found.");
  const pool = nodePool(settings.threads);
  const lines: BenchLine[] = [];
  let faults = 0;
  try {
    for (const [index, instance] of instances.entries()) {
      io.progress(`${instance.name} (${index + 1} of ${instances.length})`);
      const line = await runInstance(pool, instance, quarterTurns, settings);
      const found = verifyLine(instance, line, quarterTurns);
      for (const fault of found) io.err(`${instance.name}: wrong plan: ${fault}\n`);
      faults += found.length;
      lines.push(line);
      if (args.switches.has("json")) io.out(`${JSON.stringify(line)}\n`);
    }
  } finally {
    pool.close();
  }
  io.progress("");
  io.err(benchTable(lines));
  io.err(faults === 0 ? `All ${lines.length} plans verified.\n` : `${faults} faults found.\n`);
  return faults === 0 ? EXIT.done : EXIT.bug;
}

async function runInstance(
  pool: SearchPool,
  instance: Instance,
  quarterTurns: boolean,
  settings: ReturnType<typeof searchSettings>,
): Promise<BenchLine> {
  const { seed, seconds: limit, evaluations: most, threads } = settings;
  const problem = benchProblem(instance, quarterTurns);
  const found = await timedSearch(pool, { problem, mode: "free", seed, evaluations: most }, limit);
  const { plan, evaluations, seconds } = found;
  const [unplaced] = plan.unplaced;
  if (unplaced) {
    const reason = `item ${unplaced.pieceId} does not fit the strip in any turn it may take`;
    throw plainProblem("does-not-fit", instance.name, `${instance.name}: ${reason}.`);
  }
  return benchLine(instance, plan, { seconds, threads, evaluations, seed });
}

function instancesAt(path: string): Instance[] {
  return filesAt(path).flatMap((file) => {
    let data: unknown;
    try {
      data = JSON.parse(readInput(file));
    } catch (error) {
      if (error instanceof InputProblem) throw error;
      throw plainProblem("file-not-json", file, `${file} is not JSON: ${(error as Error).message}.`);
    }
    const { instances, problems } = readDataset(data, file);
    if (problems.length > 0) throw new InputProblem(problems);
    return instances;
  });
}

function filesAt(path: string): string[] {
  try {
    if (!statSync(path).isDirectory()) return [path];
    const names = readdirSync(path, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".json"));
    return names.sort().map((name) => join(path, name));
  } catch (error) {
    throw plainProblem("file-unreadable", path, `${path} cannot be read: ${reasonOf(error)}.`);
  }
}
