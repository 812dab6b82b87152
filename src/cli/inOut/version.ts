import { readFileSync } from "node:fs";

/** The version of the program. Another may lay otherwise: its results are not taken for this one's. */
export function programVersion(): string {
  return JSON.parse(readFileSync(new URL("../../../package.json", import.meta.url), "utf8")).version;
}
