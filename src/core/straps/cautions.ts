import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";

/** Stands beside every strap, whatever it is made of. */
const ALWAYS: readonly string[] = [
  "No strap made from this sheet is load rated: never use it for lifting, climbing, animals, children or people.",
  "Long straps and cords are a strangulation risk for small children.",
  "Close a rotary cutter after every cut, cut away from yourself and keep fingers off the ruler's edge.",
];

/** A stack from here on deflects needles on a home machine (common practice, no source), mm. */
const THICK_STACK = 3;

/** Usual cautions for this strap; local rules and a machine's own manual come first. */
export function cautionsOf(resolved: ResolvedWish, widths: SolvedWidths): readonly string[] {
  const { construction, materials, wish } = resolved;
  const kinds = new Set([materials.outer.kind, materials.facing?.kind]);
  const out: string[] = [...construction.cautions];
  if (widths.thickness >= THICK_STACK || construction.layers(resolved.choices) >= 4) {
    out.push(
      "Thick stacks deflect and break needles: wear eye protection, go slowly, turn the wheel by hand over humps and keep the foot level with a folded shim.",
    );
  }
  if (kinds.has("woven") || kinds.has("felt")) {
    out.push("Irons and freshly pressed folds burn: press with a tool or a cloth, not with the fingers.");
  }
  if (kinds.has("vinyl")) {
    out.push(
      "An iron melts vinyl: no steam, low heat from the back through a cloth, or none at all.",
      "Never cut vinyl with a laser: PVC gives off hydrogen chloride. Treat unknown faux leather as PVC.",
    );
  }
  if (kinds.has("cork")) out.push("Do not crease cork sharply: it cracks. Roll the folds.");
  if (construction.tapeRuns > 0) {
    out.push("Ordinary double-sided tape gums needles: use a kind meant for sewing, off the stitch line.");
  }
  if (construction.id === "bonded" || construction.id === "corded" || wish.edgeFinish === "paint") {
    out.push(
      "Solvent adhesives and edge finishes: ventilate, wear gloves, no flame, iron or heater near; read the tin.",
    );
  }
  return [...out, ...ALWAYS];
}
