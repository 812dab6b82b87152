import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect } from "vitest";

/**
 * Holds texts against the files of a folder, names included. `UPDATE_GOLDEN=1` writes the folder anew instead; a
 * change of it belongs in the commit that explains it.
 */
export function expectGolden(folder: string, texts: ReadonlyMap<string, string>): void {
  if (process.env["UPDATE_GOLDEN"] === "1") {
    rmSync(folder, { recursive: true, force: true });
    for (const [name, text] of texts) {
      mkdirSync(dirname(join(folder, name)), { recursive: true });
      writeFileSync(join(folder, name), text);
    }
  }
  expect([...texts.keys()].sort()).toEqual(existsSync(folder) ? readdirSync(folder).sort() : []);
  for (const [name, text] of texts) expect(text, name).toBe(readFileSync(join(folder, name), "utf8"));
}

/** JSON to read and compare line by line: lists of numbers, and of points, stand on one line. */
export function jsonLines(value: unknown, indent = ""): string {
  if (typeof value !== "object" || value === null) return JSON.stringify(value);
  if (Array.isArray(value) && value.flat(2).every((entry) => typeof entry === "number"))
    return JSON.stringify(value);
  const inner = `${indent} `;
  const entries = Array.isArray(value)
    ? value.map((entry) => jsonLines(entry, inner))
    : Object.entries(value).map(([key, entry]) => `${JSON.stringify(key)}: ${jsonLines(entry, inner)}`);
  const [open, close] = Array.isArray(value) ? "[]" : "{}";
  return entries.length === 0
    ? `${open}${close}`
    : `${open}\n${inner}${entries.join(`,\n${inner}`)}\n${indent}${close}`;
}
