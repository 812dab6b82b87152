import { useEffect, useRef, useState } from "preact/hooks";
import type { PatternWish, ReadPattern } from "./protocol.ts";
import { readPatternFile } from "./readPatternFile.ts";

/** Where reading stands. */
export interface ReadingState {
  /** What was read last, also while it is read anew; null before. */
  readonly read: ReadPattern | null;
  readonly state: "reading" | "read" | "stopped" | "failed";
  stop(): void;
}

/** The pattern in a file, read anew when the file or the wish changes; reading stops when nobody looks any more. */
export function usePatternReading(file: File, wish: PatternWish): ReadingState {
  const [read, setRead] = useState<ReadPattern | null>(null);
  const [state, setState] = useState<ReadingState["state"]>("reading");
  const stop = useRef(() => {});
  useEffect(() => {
    const reading = readPatternFile(file, wish);
    let isWanted = true;
    setState("reading");
    stop.current = () => {
      isWanted = false;
      reading.stop();
      setState("stopped");
    };
    reading.read
      .then((found) => {
        if (!isWanted) return;
        setRead(found);
        setState("read");
      })
      .catch((error: unknown) => {
        console.error(error);
        if (isWanted) setState("failed");
      });
    return () => {
      isWanted = false;
      reading.stop();
    };
  }, [file, wish]);
  return { read, state, stop: () => stop.current() };
}
