import { existsSync, readdirSync, statSync } from "node:fs";
import { join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { UsageError } from "../command.ts";
import { readInput } from "../inOut/readInput.ts";
import { InputProblem, plainProblem } from "../inOut/toldProblem.ts";
import { fileReason } from "../inOut/writeFiles.ts";
import { type Instance, readDataset } from "./dataset.ts";

/**
 * Instances of a data set file, of all data set files below a folder, or of a module whose default export is a list
 * of instances. Throws `InputProblem`.
 */
export async function instancesAt(path: string): Promise<Instance[]> {
  const found: Instance[] = [];
  for (const file of filesAt(path)) {
    const { instances, problems } = readDataset(await dataAt(file), file);
    if (problems.length > 0) throw new InputProblem(() => problems);
    found.push(...instances);
  }
  return found;
}

/** A module of the program's own bench folder, which only a checkout has. Throws `UsageError` elsewhere. */
export async function benchModule<T>(name: string, option: string): Promise<T> {
  const path = fileURLToPath(new URL(`../../../tests/bench/${name}`, import.meta.url));
  if (!existsSync(path)) throw new UsageError(`--${option} works in a checkout of the source only`);
  return (await loadedModule(path)) as T;
}

async function dataAt(file: string): Promise<unknown> {
  if (/\.(ts|mjs|js)$/.test(file)) {
    if (!existsSync(file))
      throw plainProblem("file-unreadable", file, ({ files }) => files.unreadable(file, files.faults.missing));
    try {
      return ((await loadedModule(resolve(file))) as { default?: unknown }).default;
    } catch (error) {
      throw plainProblem("file-unreadable", file, () => `${file} cannot be run: ${(error as Error).message}`);
    }
  }
  try {
    return JSON.parse(readInput(file));
  } catch (error) {
    if (error instanceof InputProblem) throw error;
    throw plainProblem("file-not-json", file, () => `${file} is not JSON: ${(error as Error).message}.`);
  }
}

async function loadedModule(path: string): Promise<unknown> {
  const url = pathToFileURL(path).href;
  if (!path.endsWith(".ts")) return import(url);
  const { tsImport } = await import("tsx/esm/api");
  return tsImport(url, import.meta.url);
}

function filesAt(path: string): string[] {
  try {
    if (!statSync(path).isDirectory()) return [path];
    const names = readdirSync(path, { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".json"));
    return names.sort().map((name) => join(path, name));
  } catch (error) {
    throw plainProblem("file-unreadable", path, (texts) => texts.files.unreadable(path, fileReason(error, texts)));
  }
}
