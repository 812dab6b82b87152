import { type ChildProcess, spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { once } from "node:events";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Kind } from "./kind.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const program = join(root, "dist/cli/main.js");

/** Lays the demo with a seed into a folder. */
function layInto(out: string, seed: number): ChildProcess {
  const words = [
    "lay",
    "fixtures/harbour-bags.json",
    "--effort",
    "0.001",
    "--seed",
    String(seed),
    "--threads",
    "1",
  ];
  return spawn(process.execPath, [program, ...words, "--out", out], { cwd: root, stdio: "ignore" });
}

/** The folder's plan is absent, or stands beside exactly the bytes it names. */
function isTrue(out: string): boolean {
  const list = join(out, "plan.json");
  if (!existsSync(list)) return false;
  for (const { name, sha256 } of JSON.parse(readFileSync(list, "utf8")).files) {
    const found = createHash("sha256")
      .update(readFileSync(join(out, name)))
      .digest("hex");
    if (found !== sha256) throw new Error(`plan.json stands beside another ${name}`);
  }
  return true;
}

/** `lay --out` over an earlier plan, killed at a random moment; then run again to its end. */
export const kills: Kind = {
  name: "kills",
  about: "lay --out over an earlier plan, killed at a random moment, then run again (from what is built)",
  run: async (draw) => {
    const out = mkdtempSync(join(tmpdir(), "laywright-kills-"));
    try {
      await once(layInto(out, 1), "exit");
      if (!isTrue(out)) throw new Error("no plan was written");
      const second = layInto(out, 2);
      const exit = once(second, "exit");
      const timer = setTimeout(() => second.kill("SIGKILL"), 200 + draw.below(6000));
      const [code] = await exit;
      clearTimeout(timer);
      const stood = isTrue(out);
      await once(layInto(out, 3), "exit");
      if (!isTrue(out)) throw new Error("a killed run stands in the way of the next");
      return code === 0 ? "ended first" : stood ? "killed, a plan stands" : "killed, no plan stands";
    } finally {
      rmSync(out, { recursive: true, force: true });
    }
  },
};
