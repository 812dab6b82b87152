import { useEffect, useRef, useState } from "preact/hooks";
import { openShop } from "../asking/askWorker.ts";
import type { Growth, PieceShown, ShopAsk, ShopLine, ShopTold } from "./protocol.ts";

/** Where looking stands. */
export type Looking = "idle" | "looking" | "done" | "stopped" | "failed";

/** What the shop workers found so far, and how to begin and end. */
export interface Shop {
  readonly lines: readonly ShopLine[];
  readonly growth: Growth | null;
  readonly made: PieceShown | null;
  /** Why no number of bags can be cut. */
  readonly barred: string | null;
  readonly state: Looking;
  /** Asks each worker its part; what was found before is forgotten. */
  start(asks: readonly ShopAsk[]): void;
  stop(): void;
}

/** Workers that are opened for one question and ended with it, or as soon as nobody looks. */
export function useShop(): Shop {
  const [lines, setLines] = useState<readonly ShopLine[]>([]);
  const [growth, setGrowth] = useState<Growth | null>(null);
  const [made, setMade] = useState<PieceShown | null>(null);
  const [barred, setBarred] = useState<string | null>(null);
  const [state, setState] = useState<Looking>("idle");
  const workers = useRef<Worker[]>([]);
  const end = () => {
    for (const worker of workers.current) worker.terminate();
    workers.current = [];
  };
  useEffect(() => end, []);
  const start = (asks: readonly ShopAsk[]) => {
    end();
    setLines([]);
    setGrowth(null);
    setMade(null);
    setBarred(null);
    setState("looking");
    let open = asks.length;
    for (const ask of asks) {
      const worker = openShop();
      workers.current.push(worker);
      worker.onmessage = ({ data }: MessageEvent<ShopTold>) => {
        if (data.kind === "line") setLines((old) => [...old, data.line]);
        else if (data.kind === "growth") setGrowth(data.growth);
        else if (data.kind === "piece") setMade(data.made);
        else if (data.kind === "barred") setBarred(data.why);
        else if (--open === 0) setState("done");
      };
      worker.onerror = (event) => {
        console.error(event.message);
        end();
        setState("failed");
      };
      worker.postMessage(ask);
    }
  };
  const stop = () => {
    end();
    setState("stopped");
  };
  return { lines, growth, made, barred, state, start, stop };
}
