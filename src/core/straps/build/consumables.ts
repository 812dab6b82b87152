import type { StitchRow } from "../constructions/construction.ts";
import type { StitchType } from "../wish/strapWish.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";
import type { StrapEnd } from "./strapLengths.ts";
import type { Consumable, StrapLengths } from "./strapResult.ts";

/** Handbook ratio for lockstitch type 301 (ISO 4915), thread per seam: never less is bought (common practice, no source). */
const HANDBOOK_THREAD_RATIO = 2.5;
/** Thread lost at starts and ends, with the handbook's 10 to 15 % (common practice, no source). */
const THREAD_WASTE = 1.15;
/** mm per stitch (common practice, no source). */
const TOPSTITCH_LENGTH = { cloth: 3, thick: 3.5 } as const;
const SEAM_STITCH = 2.5;
/** Webbing is bought 2 in longer than the strap (common practice, no source). */
const WEBBING_SPARE = 50.8;

/** Threads that lie along the seam, by stitch type of ISO 4915 (common practice, no source). */
const THREADS_ALONG: Readonly<Record<StitchType, number>> = { 301: 2, 101: 3, 401: 4 };

/** Thread per length of seam: those along it, and once through both ways a stitch. */
export function threadRatio(seamThickness: number, stitchLength: number, type: StitchType = 301): number {
  return THREADS_ALONG[type] + (2 * seamThickness) / stitchLength;
}

function threadToBuy(seamThickness: number, stitchLength: number, type: StitchType): number {
  const least = type === 301 ? HANDBOOK_THREAD_RATIO : 0;
  return Math.max(least, threadRatio(seamThickness, stitchLength, type)) * THREAD_WASTE;
}

/** mm per topstitch: the maker's, else longer on what holes weaken. */
export function topstitchLength({ wish, materials }: ResolvedWish): number {
  const cloth = materials.outer.kind === "woven" || materials.outer.kind === "felt";
  return wish.stitch?.length ?? (cloth ? TOPSTITCH_LENGTH.cloth : TOPSTITCH_LENGTH.thick);
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
  put("tape", "tape", construction.tapeRuns * total);
  const type = wish.stitch?.type ?? 301;
  // Only a lockstitch shares its thread between needle and bobbin.
  const shared = type === 301 ? "-bobbin" : "";
  const topRows = rows.filter((row) => row.kind === "topstitch").length + (wish.stitch?.extraRows ?? 0);
  const seamRows = rows.length - rows.filter((row) => row.kind === "topstitch").length;
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
