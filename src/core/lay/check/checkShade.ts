import type { LayFinding } from "../../problems/layProblems.ts";
import type { LayProblem } from "../problem/layProblem.ts";
import { type CheckedCopy, copyName } from "./laidOutline.ts";

/** Rounding that counts as kept, mm. */
const ROUNDING = 1e-5;

/** Copies that lie the other way than the first, where all have to lie the same way. */
export function checkOneWay({ sameWay }: LayProblem, copies: readonly CheckedCopy[]): LayFinding[] {
  const [first] = copies;
  if (sameWay !== true || first === undefined) return [];
  const way = liesOnward(first);
  return copies.flatMap((copy): LayFinding[] =>
    liesOnward(copy) === way
      ? []
      : [{ code: "plan-two-ways", path: copy.path, ...copyName(copy), other: copyName(first) }],
  );
}

/** Whether the piece is turned as drawn or by a quarter, not by half a turn more; turned over, its arrow is reversed first. */
function liesOnward({ placement: { turnDeg, mirrored } }: CheckedCopy): boolean {
  const arrow = (((turnDeg + (mirrored ? 180 : 0)) % 360) + 360) % 360;
  return arrow < 135 || arrow > 315;
}

/** Bags whose parts lie on two stocks, or farther apart along one than their band is long. */
export function checkShade({ pieces, shade }: LayProblem, copies: readonly CheckedCopy[]): LayFinding[] {
  if (shade === undefined) return [];
  const each = new Map(pieces.map(({ id, count }) => [id, count / shade.bags]));
  const bags = new Map<number, CheckedCopy[]>();
  for (const copy of copies) {
    const { pieceId, copy: number } = copy.placement;
    const bag = Math.floor(number / each.get(pieceId)!);
    bags.set(bag, [...(bags.get(bag) ?? []), copy]);
  }
  return [...bags].flatMap(([bag, parts]): LayFinding[] => {
    const start = parts.reduce((low, copy) => (copy.outline.minX < low.outline.minX ? copy : low));
    const end = parts.reduce((high, copy) => (copy.outline.maxX > high.outline.maxX ? copy : high));
    const away = parts.find(({ stock }) => stock !== parts[0]!.stock);
    const facts = { path: end.path, ...copyName(end), bag: bag + 1 };
    if (away !== undefined)
      return [{ code: "plan-bag-apart", ...facts, path: away.path, ...copyName(away), other: copyName(parts[0]!) }];
    const lengthMm = end.outline.maxX - start.outline.minX;
    if (lengthMm <= shade.band + ROUNDING) return [];
    return [{ code: "plan-bag-scattered", ...facts, other: copyName(start), lengthMm, mostMm: shade.band }];
  });
}
