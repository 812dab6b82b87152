import { type Caution, mergedCautions, THICK_STACK } from "../../materials/caution.ts";
import { tapeRuns } from "./consumables.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { NeedleCheck } from "./strapResult.ts";

/** Usual cautions for this strap; local rules and a machine's own manual come first. */
export function cautionsOf(resolved: ResolvedWish, needle: readonly NeedleCheck[]): readonly Caution[] {
  const { construction, materials, wish } = resolved;
  const kinds = new Set([materials.outer.kind, materials.facing?.kind]);
  const out: Caution[] = construction.cautions.map((code) => ({ code }));
  if (needle.some((check) => check.thickness >= THICK_STACK)) out.push({ code: "thick-stack" });
  if (kinds.has("woven") || kinds.has("felt")) out.push({ code: "hot-iron" });
  // A strap on its own does not know its vinyl's coating: unknown faux leather counts as PVC.
  if (kinds.has("vinyl")) out.push({ code: "iron-melts" }, { code: "laser-pvc", materials: [] });
  if (kinds.has("cork")) out.push({ code: "cork-cracks" });
  if (tapeRuns(resolved) > 0) out.push({ code: "tape-gums" });
  if (kinds.has("leather") || kinds.has("vinyl") || kinds.has("cork")) out.push({ code: "sharp-blades" });
  if (wish.edgeFinish === "paint") out.push({ code: "solvents" });
  out.push(
    { code: "not-load-rated" },
    { code: "small-children" },
    { code: "rotary-cutter" },
    { code: "local-rules" },
  );
  return mergedCautions(out);
}
