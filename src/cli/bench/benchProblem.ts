import { solid } from "../../core/geometry/ring.ts";
import type { LayPiece, LayProblem } from "../../core/lay/problem/layProblem.ts";
import type { DatasetItem, Instance } from "./dataset.ts";

/** Identity of an item in the lay problem: its place in the list. */
const pieceId = (index: number): string => `${index}`;

/** An instance as a lay problem: one roll, open for a strip and as long as a sheet, no gap and no margin. `quarterTurns` adds turns by 90°. */
export function benchProblem(instance: Instance, quarterTurns: boolean): LayProblem {
  const turns = quarterTurns ? [...new Set(instance.turns.flatMap((turn) => [turn, turn + 90]))] : instance.turns;
  const orientations = turns.map((turnDeg) => ({ turnDeg: turnDeg % 360, mirrored: false }));
  const pieces = instance.items.flatMap((item, index): LayPiece[] =>
    item.count > 0
      ? [{ id: pieceId(index), outline: solid(itemRing(item)), count: item.count, orientations, freeTurn: false }]
      : [],
  );
  const roll = {
    kind: "roll",
    id: "strip",
    width: instance.stripWidth,
    length: instance.sheetLength,
    flaws: [],
  } as const;
  return { materialId: instance.name, pieces, stocks: [roll], gap: 0, margin: 0, pinned: [] };
}

/** The item's outline as a counter-clockwise ring. */
function itemRing({ points }: DatasetItem): Float64Array {
  const twice = points.reduce((sum, [x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length]!;
    return sum + (x * ny - nx * y);
  }, 0);
  return Float64Array.from((twice < 0 ? [...points].reverse() : points).flat());
}
