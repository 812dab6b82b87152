import type { ShopWish } from "../../core/job/shopping/shopTable.ts";
import { openShop } from "../asking/askWorker.ts";
import type { ChooseStock, ChosenStock } from "../state/layBoard.ts";
import type { ShopAsk, ShopTold } from "./protocol.ts";

/** Evaluations for each set of stock that is looked at. */
const SET_EFFORT = 20_000;

/** Asks a worker of its own which stocks of a cloth to cut into for least money; the worker ends with the answer. */
export const chooseStock: ChooseStock = (project, materialId, language) => {
  const worker = openShop();
  const result = new Promise<ChosenStock>((resolve, reject) => {
    worker.onmessage = ({ data }: MessageEvent<ShopTold>) => {
      if (data.kind === "choice") resolve(data.choice);
      if (data.kind !== "end") return;
      worker.terminate();
      reject(new Error(`no stock was chosen for ${materialId}`));
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(new Error(event.message));
    };
  });
  const wish: ShopWish = {
    ...{ materialId, widths: [], constructions: [], directions: [], joins: [], ownStock: true },
    ...{ mode: "free", evaluations: SET_EFFORT, seed: 1 },
  };
  const ask: ShopAsk = { kind: "choice", project, wish, language };
  worker.postMessage(ask);
  return { result, stop: () => worker.terminate() };
};
