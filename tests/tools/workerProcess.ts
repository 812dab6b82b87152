import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";

/** A worker of a queue in a process of its own. */
export interface WorkerProcess {
  readonly child: ChildProcess;
  /** Waits for a line that it says, or has said. */
  said(line: RegExp): Promise<string>;
  end(): Promise<void>;
}

/** Starts one by `queueWorker.ts`, its clock `clockMs` off. */
export function workerProcess(url: string, version: string, what: "hang" | "lay", clockMs: number): WorkerProcess {
  const script = fileURLToPath(new URL("./queueWorker.ts", import.meta.url));
  const words = ["--import", "tsx", script, url, version, what, String(clockMs)];
  const child = spawn(process.execPath, words, { stdio: ["ignore", "pipe", "inherit"] });
  const lines: string[] = [];
  const waiting = new Set<() => void>();
  createInterface({ input: child.stdout! }).on("line", (line) => {
    lines.push(line);
    for (const look of waiting) look();
  });
  const said = (pattern: RegExp) =>
    new Promise<string>((resolve) => {
      const look = (): void => {
        const found = lines.find((line) => pattern.test(line));
        if (found === undefined) return;
        waiting.delete(look);
        resolve(found);
      };
      waiting.add(look);
      look();
    });
  const end = async (): Promise<void> => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    child.kill("SIGKILL");
    await once(child, "exit");
  };
  return { child, said, end };
}
