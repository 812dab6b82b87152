import { failed, type Result } from "../../problems/problem.ts";
import type { PartNames } from "../../words/strapWords.ts";
import type { StrapMaterial, StrapWish } from "../wish/strapWish.ts";
import { buildStrap } from "./buildStrap.ts";
import type { StrapResult } from "./strapResult.ts";

/**
 * The strap cut at the nearest division of her ruler, `step` mm, and the finished width that comes of it.
 *
 * Errors: those of the strap; a strap whose width a bought webbing settles has no other cut width.
 */
export function roundToRuler(
  wish: StrapWish,
  materials: readonly StrapMaterial[],
  step: number,
  names?: PartNames,
): Result<StrapResult> {
  const exact = buildStrap(wish, materials, "", names);
  if (!exact.ok) return exact;
  const { construction, core } = wish;
  if (core?.webbingWidth !== undefined)
    return failed({ code: "strap-choice-unused", path: "round", choice: "ruler", construction, heededBy: [] });
  const mm = Math.max(1, Math.round(exact.value.cutWidth / step)) * step;
  return buildStrap({ ...wish, width: { kind: "cut", mm } }, materials, "", names);
}
