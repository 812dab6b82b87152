/// <reference lib="webworker" />
import { namedProblem } from "../../core/drawing/lay/namedProblem.ts";
import { pieceMadeDrawing } from "../../core/drawing/lay/pieceMadeDrawing.ts";
import { jobOf } from "../../core/job/projectJob.ts";
import { bagSteps, freeBags, lengthSteps } from "../../core/job/shopping/bagSteps.ts";
import { fromPiece, type Made } from "../../core/job/shopping/fromPiece.ts";
import type { BarredRow } from "../../core/job/shopping/shopRow.ts";
import { shopTable } from "../../core/job/shopping/shopTable.ts";
import { cheapestPlan } from "../../core/job/stocks/cheapestPlan.ts";
import { otherKinds } from "../../core/job/stocks/openedStocks.ts";
import { BREATH, inOneGo } from "../../core/lay/search/breath.ts";
import { describeProblem } from "../../core/problems/describeProblem.ts";
import { SENTENCES } from "../../core/words/words.ts";
import type { MadeShown, ShopAsk, ShopTold } from "./protocol.ts";

const worker = globalThis as unknown as DedicatedWorkerGlobalScope;

/** Works out what to buy beside the page; whoever has enough ends the worker. */
export function serveShop(): void {
  worker.onmessage = (event: MessageEvent<ShopAsk>) => {
    const ask = event.data;
    const tell = (told: ShopTold): void => worker.postMessage(told);
    if (ask.kind === "table") tellTable(ask, tell);
    else if (ask.kind === "growth") tellGrowth(ask, tell);
    else if (ask.kind === "piece") tellPiece(ask, tell);
    else tellChoice(ask, tell);
    tell({ kind: "end" });
  };
}

function tellTable(ask: ShopAsk, tell: (told: ShopTold) => void): void {
  for (const row of shopTable(ask.project, ask.wish)) {
    if (row === BREATH) continue;
    if (row.kind === "barred") {
      tell({ kind: "line", line: { kind: "barred", cell: row.cell, why: whyBarred(row, ask) } });
      continue;
    }
    // Plans stay here: the page shows figures.
    const { problem: _problem, plan: _plan, ...figures } = row;
    tell({ kind: "line", line: figures });
  }
}

function tellGrowth(ask: Extract<ShopAsk, { kind: "growth" }>, tell: (told: ShopTold) => void): void {
  const found = inOneGo(bagSteps(ask.project, ask.cell, ask.most, ask.wish));
  if (found.kind === "barred") tell({ kind: "barred", why: whyBarred(found, ask) });
  else tell({ kind: "growth", growth: { steps: lengthSteps(found.steps), free: freeBags(found.steps) } });
}

function tellPiece(ask: Extract<ShopAsk, { kind: "piece" }>, tell: (told: ShopTold) => void): void {
  const { project, wish, piece, language } = ask;
  const material = project.materials.find(({ id }) => id === wish.materialId);
  if (material === undefined) return;
  const { bags, straps } = inOneGo(fromPiece(project, material, piece, wish));
  const shown = ({ count, laid }: Made): MadeShown => ({
    count,
    drawing: laid === null ? null : pieceMadeDrawing(project, material, laid, language),
  });
  tell({
    kind: "piece",
    made: {
      bags: shown(bags),
      straps: straps.map((strap) => ({
        ...{ strapId: strap.strapId, alone: shown(strap.alone), besides: shown(strap.besides) },
      })),
    },
  });
}

function tellChoice({ project, wish, language }: ShopAsk, tell: (told: ShopTold) => void): void {
  const lay = jobOf(project, language).lays.find(({ material }) => material.id === wish.materialId);
  if (lay === undefined) return;
  const { best, others } = inOneGo(cheapestPlan(lay.material, lay.problem, project, wish));
  tell({ kind: "choice", choice: { plan: best.plan, others: otherKinds(lay.material, best.opened, others) } });
}

/** Why a way cannot be cut, in a sentence. */
function whyBarred({ troubles, leftOut }: BarredRow, { project, language }: ShopAsk): string {
  const problem = troubles[0] ?? leftOut[0];
  if (problem === undefined) return "";
  const named = namedProblem(problem, project, jobOf(project, language).pieces, language);
  // Where it stands in the file is nothing a maker has seen.
  const { what, remedy } = describeProblem(named, SENTENCES[language]);
  return `${what} ${remedy}`;
}
