import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";
import type { Kind } from "./kind.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** How the program is started: what is built, or the sources. */
export type Program = readonly string[];

export const BUILT: Program = ["dist/cli/main.js"];

const TABLE = [
  "order,due,shade,bags,height,loop.length",
  ...Array.from(
    { length: 6 },
    (_, i) => `${i},2027-03-1${i},${i % 2 ? "navy" : "rust"},${1 + (i % 3)},${100 + i},`,
  ),
  "wrong,2027-03-12,navy,1,high,",
].join("\n");

/** A batch of six orders in a few lays, and one that is wrong. */
function batchInto(folder: string, out: string, program: Program, threads: number): ChildProcess {
  const words = ["batch", join(folder, "pouch.json"), join(folder, "orders.csv"), "--out", join(folder, out)];
  const more = ["--effort", "0.2", "--threads", String(threads)];
  return spawn(process.execPath, [...program, ...words, ...more], {
    cwd: root,
    stdio: "ignore",
  });
}

/** Names and bytes of everything below a folder. */
function bytesOf(folder: string): string {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" }).sort();
  return JSON.stringify(
    names.map((name) => [
      name,
      statSync(join(folder, name)).isFile() && readFileSync(join(folder, name), "base64"),
    ]),
  );
}

/** Batches that are killed at random moments, up to three times, and then run to their end. */
export function batchKillsOf(program: Program, threads: number): Kind {
  let whole: { readonly folder: string; readonly bytes: string; readonly ms: number } | null = null;
  return {
    name: "batchKills",
    about: "batch killed at random moments, then run to its end: the bytes of a run that nobody stopped",
    limitMs: 300_000,
    run: async (draw) => {
      if (whole === null) {
        const folder = mkdtempSync(join(tmpdir(), "laywright-batch-"));
        process.once("exit", () => rmSync(folder, { recursive: true, force: true }));
        writeFileSync(join(folder, "pouch.json"), JSON.stringify(POUCH_TEMPLATE));
        writeFileSync(join(folder, "orders.csv"), TABLE);
        const start = performance.now();
        const [code] = await once(batchInto(folder, "whole", program, 1), "exit");
        if (code !== 1) throw new Error(`an uninterrupted batch ended with ${code}`);
        whole = { folder, bytes: bytesOf(join(folder, "whole")), ms: performance.now() - start };
      }
      const { folder } = whole;
      const out = `killed-${draw.below(2 ** 30)}`;
      let kills = 0;
      try {
        for (let run = 1 + draw.below(3); run > 0; run--) {
          const running = batchInto(folder, out, program, threads);
          const exit = once(running, "exit");
          const timer = setTimeout(() => running.kill("SIGKILL"), draw.below(Math.ceil(whole.ms * 1.1)));
          const [, signal] = await exit;
          clearTimeout(timer);
          if (signal === "SIGKILL") kills++;
        }
        const [code] = await once(batchInto(folder, out, program, threads), "exit");
        if (code !== 1) throw new Error(`the run after ${kills} kills ended with ${code}`);
        if (bytesOf(join(folder, out)) !== whole.bytes)
          throw new Error(`after ${kills} kills other bytes stand there`);
        return `killed ${kills} times`;
      } finally {
        rmSync(join(folder, out), { recursive: true, force: true });
      }
    },
  };
}
