import { buildStrap } from "../../src/core/straps/build/buildStrap.ts";
import type { StrapResult } from "../../src/core/straps/build/strapResult.ts";
import type { ConstructionId, StrapMaterial, StrapWish } from "../../src/core/straps/wish/strapWish.ts";

/** A material as thick as told, mm, with what else is told. */
export const of = (id: string, kind: StrapMaterial["kind"], thickness: number, more: Partial<StrapMaterial> = {}) =>
  ({ id, name: id, kind, thickness, backing: "woven", fold: {}, ...more }) as const;
/** Materials of round thicknesses, for straps that are reckoned by hand. */
export const MATERIALS: readonly StrapMaterial[] = [
  of("flat", "vinyl", 0),
  of("vinyl", "vinyl", 1),
  of("cloth", "woven", 0.5),
  of("hide", "leather", 1.5),
  of("lining", "woven", 0.25),
];

/** A strap 40 mm wide and 700 mm long when finished, with what else is told; throws what is wrong with it. */
export function strap(
  construction: ConstructionId,
  outer: string,
  more: Partial<StrapWish>,
  from = MATERIALS,
): StrapResult {
  const built = buildStrap(
    {
      ...{ id: "s", name: "Strap", construction, count: 1, materials: { outer } },
      width: construction === "corded" ? undefined : { kind: "finished", mm: 40 },
      length: { kind: "finished", mm: 700 },
      ...more,
    },
    from,
  );
  if (!built.ok) throw new Error(JSON.stringify(built.problems));
  return built.value;
}
