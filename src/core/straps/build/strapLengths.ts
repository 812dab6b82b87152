import type { MaterialKind } from "../../materials/material.ts";
import { failed, ok, type Result } from "../../problems/problem.ts";
import type { EndStyle, EndWish, StrapWish } from "../wish/strapWish.ts";
import { hardwareLength } from "./hungOn.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { LengthItem, StrapLengths } from "./strapResult.ts";
import { unsaidEndStyle, usualEndStyle } from "./usualEnds.ts";

/** Common practice, no source (mm): caught in a seam 1 in; over the shoulder 2 in; flat corded ends 4 in. */
const SEAM_END = 25.4;
const OVER_SHOULDER = 50.8;
const DOUBLED_END = 101.6;
/** From memory: raw ends turned inside, 1/2 in. */
const TUCKED_END = 12.7;
/** Common practice: cloth folded 1/4 in, then 1 in; leather and vinyl about 2 in at a slider. */
const CLOTH_FOLD_BACK = 31.75;
const THICK_FOLD_BACK = 50.8;
/** What of it is turned under. */
const TURN_UNDER = 6.35;
/** Part that stays doubled at a slider even at its longest. */
export const LEAST_DOUBLED = 50.8;
/** Less strap than this between its two fold-backs cannot be stitched (from memory), mm. */
const LEAST_SHORT_LEFT = 20;
/** Cut length of the short half of a two-part strap: 10 in (common practice, no source), unless the maker says hers. */
const SHORT_PART = 254;

const THICK: ReadonlySet<MaterialKind> = new Set(["vinyl", "leather", "cork"]);

/** Length an end of this style takes when the maker names none, mm. */
function defaultAllowance(style: EndStyle, kind: MaterialKind): number {
  switch (style) {
    case "raw":
      return 0;
    case "seam":
      return SEAM_END;
    case "tucked":
      return TUCKED_END;
    case "doubled":
      return DOUBLED_END;
    case "fold-back":
      return THICK.has(kind) ? THICK_FOLD_BACK : CLOTH_FOLD_BACK;
  }
}

/** An end with its style and the length it takes. mm. */
export interface StrapEnd {
  readonly style: EndStyle;
  readonly allowance: number;
  /** Of that, the raw end turned under before it is folded back: cloth frays, other materials are left flat. */
  readonly under: number;
}

/** Length an end of a strap takes, mm. */
export function endAllowance(wish: StrapWish, end: EndWish, kind: MaterialKind): number {
  return end.allowance ?? defaultAllowance(end.style === "usual" ? usualEndStyle(wish) : end.style, kind);
}

/** Both ends as wished, or as they are when nothing is said. */
export function endsOf({ wish, materials }: ResolvedWish): readonly [StrapEnd, StrapEnd] {
  const unsaid: EndWish = { style: unsaidEndStyle(wish) };
  const [first, second] = wish.ends ?? [unsaid, unsaid];
  const full = (end: EndWish): StrapEnd => {
    const style = end.style === "usual" ? usualEndStyle(wish) : end.style;
    const allowance = endAllowance(wish, end, materials.outer.kind);
    const turns = style === "fold-back" && materials.outer.kind === "woven";
    return { style, allowance, under: turns ? Math.min(TURN_UNDER, allowance / 4) : 0 };
  };
  return [full(first), full(second)];
}

/**
 * Adjustable strap: what is left after the end folds, its longest and its shortest as worn.
 * Model: worn = effective − doubled part; the doubled part is at least `leastDoubled`, at most half of all.
 */
export function adjustableRange(
  cut: number,
  endFolds: number,
  leastDoubled: number,
): { effective: number; longest: number; shortest: number } {
  const effective = cut - endFolds;
  return { effective, longest: effective - leastDoubled, shortest: effective / 2 };
}

/** Cut length of a handle from its drop: twice the drop, what lies over the shoulder, and both ends. */
export function cutFromDrop(drop: number, ends: number): number {
  return 2 * drop + OVER_SHOULDER + ends;
}

function fixedLengths(resolved: ResolvedWish, ends: readonly [StrapEnd, StrapEnd]): StrapLengths {
  const { wish, construction } = resolved;
  const { kind, mm } = wish.length;
  const worn = kind === "worn" ? hardwareLength(resolved, ends) : 0;
  const endItems = ends
    .filter((end) => end.allowance > 0)
    .map((end): LengthItem => ({ code: `end-${end.style}`, mm: end.allowance }));
  const used = endItems.reduce((sum, item) => sum + item.mm, 0);
  const whole = kind === "cut" ? (mm - used) / (1 + construction.lengthSpare) : mm - worn;
  const body: LengthItem[] =
    kind === "drop"
      ? [
          { code: "drop-twice", mm: 2 * mm },
          { code: "over-shoulder", mm: OVER_SHOULDER },
        ]
      : [{ code: "finished", mm: whole }];
  const finished = body.reduce((sum, item) => sum + item.mm, 0);
  const spare = finished * construction.lengthSpare;
  if (spare > 0) endItems.push({ code: "trimmed-spare", mm: spare });
  return {
    finished,
    cut: finished + used + spare,
    shortPart: null,
    items: [...body, ...endItems],
    longest: null,
    shortest: null,
  };
}

function adjustableLengths(resolved: ResolvedWish, ends: readonly [StrapEnd, StrapEnd]): StrapLengths {
  const { kind, mm } = resolved.wish.length;
  const folds = ends[0].allowance + ends[1].allowance;
  const twoPart = resolved.wish.adjustment === "two-part";
  const short = resolved.wish.shortPart ?? SHORT_PART;
  const shortLeft = twoPart ? Math.max(0, short - folds) : 0;
  const hardware = hardwareLength(resolved, ends);
  const worn = (kind === "drop" ? 2 * mm + OVER_SHOULDER : mm) - hardware;
  const share = resolved.construction.lengthSpare;
  const asked = kind === "finished" ? mm - shortLeft : worn - shortLeft + LEAST_DOUBLED;
  const effective = kind === "cut" ? (mm - folds) / (1 + share) : asked;
  const spare = effective * share;
  const range = adjustableRange(effective + folds, folds, LEAST_DOUBLED);
  const items: LengthItem[] = [
    { code: "worn-longest-less-short", mm: effective - LEAST_DOUBLED },
    { code: "doubled-at-slider", mm: LEAST_DOUBLED },
    ...ends.map((end): LengthItem => ({ code: `end-${end.style}`, mm: end.allowance })),
    { code: "trimmed-spare", mm: spare },
  ];
  if (!twoPart) items[0] = { ...items[0]!, code: "worn-longest" };
  return {
    finished: effective + shortLeft,
    cut: effective + folds + spare,
    shortPart: twoPart ? short : null,
    items: items.filter((item) => item.mm !== 0),
    longest: range.longest + shortLeft + hardware,
    shortest: range.shortest + shortLeft + hardware,
  };
}

/** Finished and cut length of a wish, every allowance itemised; refuses what its own ends use up. */
export function strapLengths(resolved: ResolvedWish, ends: readonly [StrapEnd, StrapEnd]): Result<StrapLengths> {
  const { wish, path, construction } = resolved;
  const fixed = (wish.adjustment ?? "fixed") === "fixed";
  const lengths = fixed ? fixedLengths(resolved, ends) : adjustableLengths(resolved, ends);
  const flatEnds = construction.roles.cord === "needed" ? ends[0].allowance + ends[1].allowance : 0;
  const left = fixed
    ? lengths.finished - flatEnds
    : (lengths.items.find(({ code }) => code.startsWith("worn-longest"))?.mm ?? 0);
  const { shortPart } = lengths;
  const least = ends[0].allowance + ends[1].allowance + LEAST_SHORT_LEFT;
  if (shortPart !== null && shortPart < least)
    return failed({
      code: "strap-short-part-short",
      path: `${path}shortPart`,
      lengthMm: shortPart,
      leastMm: least,
    });
  if (left > 0) return ok(lengths);
  return failed({
    code: "strap-too-short",
    path: `${path}length`,
    lengthMm: wish.length.mm,
    leastMm: wish.length.mm - left,
  });
}
