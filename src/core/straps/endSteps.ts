import { bendAllowance } from "./bendAllowance.ts";
import { type Phrase, phrase } from "./phrase.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";
import type { StrapEnd } from "./strapLengths.ts";
import type { StrapLengths, StrapWarning } from "./strapResult.ts";

/** Wire or bar of a ring when the maker names none (from memory), mm. */
const BAR = 3;
/** A tab's leg shorter than this cannot be stitched 3/4 in below the ring (common practice, no source), mm. */
const LEAST_LEG = 19;

type Ends = readonly [StrapEnd, StrapEnd];

/** What is done to the ends before the strip is folded. */
export function stepsBeforeFolding(ends: Ends): readonly Phrase[] {
  const tucked = ends.find((end) => end.style === "tucked");
  if (!tucked) return [];
  return [
    phrase("Turn {tucked} of each end to be closed to the wrong side before the long edges are folded or sewn.", {
      tucked: tucked.allowance,
    }),
  ];
}

const THREADING =
  "Thread it: one end over the slider's centre bar and stitched; the other through the ring, back over both outer bars of the slider, and then to its own hardware. Try the slide before the last end is stitched.";

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
  if (resolved.construction.id === "tab") {
    return [
      phrase("Fold the tab over the ring, legs of {leg}, and stitch across both, 3/4 to 1 in below it.", {
        leg: tabLeg(resolved, widths, lengths),
      }),
    ];
  }
  const steps: Phrase[] = [];
  const adjusts = (wish.adjustment ?? "fixed") !== "fixed";
  if (adjusts) steps.push(phrase(THREADING));
  const back = ends.find((end) => end.style === "fold-back");
  if (back) {
    steps.push(
      phrase(
        "Fold {back} of the end over its hardware and stitch across it twice; turn the wheel by hand over the doubled layers.",
        { back: back.allowance },
      ),
    );
  }
  const seam = ends.find((end) => end.style === "seam");
  if (seam) {
    steps.push(
      phrase("Baste the end into the bag's seam with {seam} inside it, and stitch over it twice.", {
        seam: seam.allowance,
      }),
    );
  }
  return steps;
}

/** A tab too short to be stitched below its ring. */
export function tabWarnings(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  lengths: StrapLengths,
): readonly StrapWarning[] {
  if (resolved.construction.id !== "tab") return [];
  const leg = tabLeg(resolved, widths, lengths);
  if (leg >= LEAST_LEG) return [];
  const text = "Legs of {leg} are too short to be stitched below the ring: they should be {least} or more.";
  return [{ code: "tab-short", text, lengths: { leg, least: LEAST_LEG } }];
}
