import type { MaterialKind } from "../../materials/material.ts";
import { failed, ok, type Result } from "../../problems/problem.ts";
import type { EndStyle, EndWish } from "../wish/strapWish.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { LengthItem, StrapLengths } from "./strapResult.ts";

/** Common practice, no source (mm): caught in a seam 1 in; over the shoulder 2 in; flat corded ends 4 in. */
const SEAM_END = 25.4;
const OVER_SHOULDER = 50.8;
const DOUBLED_END = 101.6;
/** From memory: raw ends turned inside, 1/2 in. */
const TUCKED_END = 12.7;
/** Common practice: cloth folded 1/4 in, then 1 in; leather and vinyl about 2 in at a slider. */
const CLOTH_FOLD_BACK = 31.75;
const THICK_FOLD_BACK = 50.8;
/** Part that stays doubled at a slider even at its longest. */
const LEAST_DOUBLED = 50.8;
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
}

/** Both ends: as wished, else caught in seams for a drop, folded over hardware for a slider, doubled for a cord. */
export function endsOf({ wish, construction, materials }: ResolvedWish): readonly [StrapEnd, StrapEnd] {
  const adjusts = (wish.adjustment ?? "fixed") !== "fixed";
  const style: EndStyle =
    construction.usualEnd ?? (adjusts ? "fold-back" : wish.length.kind === "drop" ? "seam" : "raw");
  const [first, second] = wish.ends ?? [{ style } as EndWish, { style } as EndWish];
  const full = (end: EndWish): StrapEnd => ({
    style: end.style,
    allowance: end.allowance ?? defaultAllowance(end.style, materials.outer.kind),
  });
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
  const { wish } = resolved;
  const { kind, mm } = wish.length;
  const endItems = ends
    .filter((end) => end.allowance > 0)
    .map((end): LengthItem => ({ code: `end-${end.style}`, mm: end.allowance }));
  const used = endItems.reduce((sum, item) => sum + item.mm, 0);
  const body: LengthItem[] =
    kind === "drop"
      ? [
          { code: "drop-twice", mm: 2 * mm },
          { code: "over-shoulder", mm: OVER_SHOULDER },
        ]
      : [{ code: "finished", mm: kind === "cut" ? mm - used : mm }];
  const finished = body.reduce((sum, item) => sum + item.mm, 0);
  return {
    finished,
    cut: finished + used,
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
  const worn = kind === "drop" ? 2 * mm + OVER_SHOULDER : mm;
  const effective =
    kind === "cut" ? mm - folds : kind === "finished" ? mm - shortLeft : worn - shortLeft + LEAST_DOUBLED;
  const cut = effective + folds;
  const range = adjustableRange(cut, folds, LEAST_DOUBLED);
  const items: LengthItem[] = [
    { code: "worn-longest-less-short", mm: effective - LEAST_DOUBLED },
    { code: "doubled-at-slider", mm: LEAST_DOUBLED },
    ...ends.map((end): LengthItem => ({ code: `end-${end.style}`, mm: end.allowance })),
  ];
  if (!twoPart) items[0] = { ...items[0]!, code: "worn-longest" };
  return {
    finished: effective + shortLeft,
    cut,
    shortPart: twoPart ? short : null,
    items: items.filter((item) => item.mm !== 0),
    longest: range.longest + shortLeft,
    shortest: range.shortest + shortLeft,
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
    : lengths.cut - ends[0].allowance - ends[1].allowance - LEAST_DOUBLED;
  if (left > 0) return ok(lengths);
  return failed({
    code: "strap-too-short",
    path: `${path}length`,
    lengthMm: wish.length.mm,
    leastMm: wish.length.mm - left,
  });
}
