import type { StitchRow } from "../constructions/construction.ts";
import { isPressed } from "../constructions/stepPhrases.ts";
import type { StitchType } from "../wish/strapWish.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";
import type { StrapEnd } from "./strapLengths.ts";
import type { Consumable, StrapLengths } from "./strapResult.ts";

/**
 * Thread per length of seam that is never undercut, by stitch type: 301 as sewing handbooks have it (common practice,
 * no source), 101 and 401 from memory. ISO 4915 names and draws the stitch types; it gives no amounts of thread.
 */
const LEAST_THREAD: Readonly<Record<StitchType, number>> = { 301: 2.5, 101: 4, 401: 5.5 };
/** Thread lost at starts and ends, with the handbook's 10 to 15 % (common practice, no source). */
const THREAD_WASTE = 1.15;
/** mm per stitch (common practice, no source). */
const TOPSTITCH_LENGTH = { cloth: 3, thick: 3.5 } as const;
const SEAM_STITCH = 2.5;
/** Webbing is bought 2 in longer than the strap (common practice, no source). */
const WEBBING_SPARE = 50.8;

/** Threads that lie along the seam, by stitch type (common practice, no source). */
const THREADS_ALONG: Readonly<Record<StitchType, number>> = { 301: 2, 101: 3, 401: 4 };

/** Thread per length of seam: those along it, and once through both ways a stitch. */
export function threadRatio(seamThickness: number, stitchLength: number, type: StitchType = 301): number {
  return THREADS_ALONG[type] + (2 * seamThickness) / stitchLength;
}

function threadToBuy(seamThickness: number, stitchLength: number, type: StitchType): number {
  return Math.max(LEAST_THREAD[type], threadRatio(seamThickness, stitchLength, type)) * THREAD_WASTE;
}

/** mm per topstitch: the maker's, else longer on what holes weaken. */
export function topstitchLength({ wish, materials }: ResolvedWish): number {
  const cloth = materials.outer.kind === "woven" || materials.outer.kind === "felt";
  return wish.stitch?.length ?? (cloth ? TOPSTITCH_LENGTH.cloth : TOPSTITCH_LENGTH.thick);
}

/** Runs of tape along the strap: none where folds are pressed, as no step uses any. */
export function tapeRuns({ construction, choices, materials }: ResolvedWish): number {
  return isPressed(materials.outer.kind) ? 0 : construction.tapeRuns(choices);
}

/** Everything bought by length for all straps of the wish, waste included. */
export function consumablesOf(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  lengths: StrapLengths,
  ends: readonly [StrapEnd, StrapEnd],
  rows: readonly StitchRow[],
): readonly Consumable[] {
  const { wish, construction, input, choices } = resolved;
  const total = (lengths.cut + (lengths.shortPart ?? 0)) * wish.count;
  const out: Consumable[] = [];
  const put = (kind: Consumable["kind"], code: Consumable["code"], mm: number): void => {
    if (mm > 0) out.push({ kind, code, mm });
  };
  put("tape", "tape", tapeRuns(resolved) * total);
  const type = wish.stitch?.type ?? 301;
  // Only a lockstitch shares its thread between needle and bobbin.
  const shared = type === 301 ? "-bobbin" : "";
  const topRows = rows.filter((row) => row.kind === "topstitch").length;
  const seamRows = rows.length - topRows;
  const top = threadToBuy(widths.thickness, topstitchLength(resolved), type);
  const seam = threadToBuy(2 * input.outer.thickness, SEAM_STITCH, type);
  put("topstitch-thread", `topstitch-thread${shared}`, topRows * total * top);
  put("construction-thread", `construction-thread${shared}`, seamRows * total * seam);
  if (wish.edgeFinish === "paint") put("edge-paint", "edge-paint", construction.visibleEdges(choices) * total);
  if (construction.roles.webbing === "needed") {
    put("webbing", "webbing", total + WEBBING_SPARE * wish.count);
  }
  if (construction.roles.cord === "needed") {
    put("cord", "cord", (lengths.finished - ends[0].allowance - ends[1].allowance) * wish.count);
  }
  return out;
}
