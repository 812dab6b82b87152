import type { PatternKind } from "../../core/patterns/patternDrawing.ts";
import type { PatternLimit } from "../../core/problems/patternProblems.ts";
import { kindBefore, MOST_MEGABYTES, READING_SECONDS, stoppedReading } from "../../reading/stoppedReading.ts";
import type { PatternAsk, PatternReply, PatternWish, ReadPattern } from "./protocol.ts";

/** A worker's own seconds cannot be told from those it waits: it may take this many times as long by the clock. */
const PATIENCE = 6;

/** Reading under way. */
export interface PatternReading {
  /** Never comes once it was stopped; rejects on a fault of ours. */
  readonly read: Promise<ReadPattern>;
  stop(): void;
}

/** Reads a pattern in a worker of its own, which ends with the answer, when it is stopped or when it takes too long. */
export function readPatternFile(file: File, wish: PatternWish): PatternReading {
  let worker: Worker | null = null;
  let timer = 0;
  let isStopped = false;
  const stop = () => {
    isStopped = true;
    clearTimeout(timer);
    worker?.terminate();
  };
  const read = async (): Promise<ReadPattern> => {
    if (file.size > MOST_MEGABYTES * 1024 * 1024) return tooMuch("svg", "megabytes", MOST_MEGABYTES);
    const bytes = new Uint8Array(await file.arrayBuffer());
    const kind = kindBefore(bytes);
    return new Promise<ReadPattern>((resolve, reject) => {
      // Stopped while the file was fetched.
      if (isStopped) return;
      worker = new Worker(new URL("./patternWorker.ts", import.meta.url), { type: "module" });
      worker.onmessage = ({ data }: MessageEvent<Partial<PatternReply>>) => {
        if (data.laywrightRead === true) resolve(data.read!);
        else if (data.laywrightRead === false) reject(new Error(data.reason));
        else return;
        stop();
      };
      worker.onerror = (event) => {
        reject(new Error(event.message));
        stop();
      };
      const seconds = READING_SECONDS[kind] * PATIENCE;
      timer = window.setTimeout(() => {
        stop();
        resolve(tooMuch(kind, "seconds", Math.round(seconds)));
      }, seconds * 1000);
      worker.postMessage({ bytes, wish } satisfies PatternAsk, [bytes.buffer]);
    });
  };
  return { read: read(), stop };
}

function tooMuch(kind: PatternKind, of: PatternLimit, limit: number): ReadPattern {
  return { pattern: stoppedReading(kind, of, limit), panels: [] };
}
