import type { HardwareNeeded, HardwareWish } from "../wish/strapWish.ts";
import { hungOn } from "./hungOn.ts";
import { SLIDER_FACTOR } from "./limits.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";
import type { StrapEnd } from "./strapLengths.ts";

type Ends = readonly [StrapEnd, StrapEnd];

/** Hardware to have ready for all straps of a wish, equal pieces added up; what an adjustable strap lacks is named too. */
export function hardwareNeeded(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  ends: Ends,
): readonly HardwareNeeded[] {
  const { wish } = resolved;
  const adjusts = (wish.adjustment ?? "fixed") !== "fixed";
  const needed = SLIDER_FACTOR * widths.thickness;
  const out: HardwareNeeded[] = [];
  const put = (one: HardwareNeeded): void => {
    const same = out.findIndex(
      ({ kind, innerWidth, opening }) =>
        kind === one.kind && innerWidth === one.innerWidth && opening === one.opening,
    );
    if (same < 0) out.push(one);
    else out[same] = { ...one, count: out[same]!.count + one.count };
  };
  const lacking = (kind: HardwareWish["kind"], count: number): HardwareNeeded => ({
    ...{ kind, count: count * wish.count, innerWidth: widths.finished, named: false },
    opening: kind === "slider" ? needed : null,
  });
  const sliders = (wish.hardware ?? []).filter(({ kind }) => kind === "slider");
  for (const { kind, innerWidth, opening } of sliders)
    put({ kind, count: wish.count, innerWidth, opening: opening ?? needed, named: true });
  if (adjusts && sliders.length === 0) put(lacking("slider", 1));
  const parts = hungOn(resolved, ends);
  for (const { kind, innerWidth } of parts)
    put({ kind, count: wish.count, innerWidth, opening: null, named: true });
  const back = ends.filter(({ style }) => style === "fold-back").length;
  if (adjusts && parts.length === 0) put(lacking("ring", back + (wish.adjustment === "two-part" ? 1 : 0)));
  else if (wish.adjustment === "two-part" && !parts.some(({ kind }) => kind === "ring")) put(lacking("ring", 1));
  return out.filter(({ count }) => count > 0);
}
