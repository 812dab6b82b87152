import { type Phrase, phrase, type StrapWarning, warning } from "../../words/phrase.ts";
import { bendAllowance } from "../section/ply.ts";
import type { StrapWish } from "../wish/strapWish.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";
import type { StrapEnd } from "./strapLengths.ts";
import type { StrapLengths } from "./strapResult.ts";

/** Wire or bar of a ring when the maker names none (from memory), mm. */
const BAR = 3;
/** A tab's leg shorter than this cannot be stitched 3/4 in below the ring (common practice, no source), mm. */
const LEAST_LEG = 19;

type Ends = readonly [StrapEnd, StrapEnd];

/** Ends of one style, each different allowance once. */
function alike(ends: Ends, style: StrapEnd["style"]): StrapEnd[] {
  const [first, second] = ends;
  return [first, second].filter(
    (end, i) => end.style === style && (i === 0 || first.style !== style || first.allowance !== end.allowance),
  );
}

/** What is done to edges and ends before the strip is folded. */
export function stepsBeforeFolding(ends: Ends, { endThickness, folds }: StrapWish): readonly Phrase[] {
  const skived = folds?.turnedThickness;
  const edges = skived === undefined ? [] : [phrase("edges-skived", { skived })];
  const reduced = endThickness === undefined ? [] : [phrase("end-reduced", { end: endThickness })];
  return [
    ...edges,
    ...reduced,
    ...alike(ends, "tucked").map((end) => phrase("end-tucked", { tucked: end.allowance })),
  ];
}

/** Each of a tab's two legs once it is folded over its ring, mm. */
function tabLeg({ wish }: ResolvedWish, widths: SolvedWidths, lengths: StrapLengths): number {
  const bar = wish.hardware?.find((one) => one.bar !== undefined)?.bar ?? BAR;
  return (lengths.cut - bendAllowance(Math.PI, bar / 2, widths.thickness, 0.5)) / 2;
}

/** What is done to the ends once the strap is closed. */
export function stepsAfterClosing(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  lengths: StrapLengths,
  ends: Ends,
): readonly Phrase[] {
  const { wish } = resolved;
  if (resolved.construction.overRing) {
    return [
      phrase("end-tab", {
        leg: tabLeg(resolved, widths, lengths),
      }),
      ...alike(ends, "seam").map((end) => phrase("end-seam", { seam: end.allowance })),
    ];
  }
  const steps: Phrase[] = [];
  const adjusts = (wish.adjustment ?? "fixed") !== "fixed";
  const spare = lengths.items.find((item) => item.code === "trimmed-spare");
  if (spare) steps.push(phrase("end-spare", { spare: spare.mm }));
  if (lengths.shortPart !== null) steps.push(phrase("end-short-part", { short: lengths.shortPart }));
  if (adjusts) steps.push(phrase("end-thread"));
  for (const { allowance, under } of alike(ends, "fold-back"))
    steps.push(
      under > 0
        ? phrase("end-fold-back-under", { back: allowance - under, under })
        : phrase("end-fold-back", { back: allowance }),
    );
  for (const end of alike(ends, "seam")) steps.push(phrase("end-seam", { seam: end.allowance }));
  return steps;
}

/** A tab too short to be stitched below its ring. */
export function tabWarnings(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  lengths: StrapLengths,
): readonly StrapWarning[] {
  if (!resolved.construction.overRing) return [];
  const leg = tabLeg(resolved, widths, lengths);
  if (leg >= LEAST_LEG) return [];
  return [warning("tab-short", { leg, least: LEAST_LEG })];
}
