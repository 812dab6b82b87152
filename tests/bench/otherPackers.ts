import type { PACKING_LOGIC } from "maxrects-packer";
import potpack from "potpack";
import type { OtherPacker, OtherResult } from "../../src/cli/bench/against.ts";
import type { BenchPlacement } from "../../src/cli/bench/benchLine.ts";
import type { Instance } from "../../src/cli/bench/dataset.ts";

// The package's main file is no module although its manifest says so; its .mjs has no types of its own.
const { MaxRectsPacker, PACKING_LOGIC: LOGIC } = (await import(
  "maxrects-packer/dist/maxrects-packer.mjs" as string
)) as typeof import("maxrects-packer");

interface Box {
  readonly item: number;
  readonly copy: number;
  /** Across the strip, and along it. */
  readonly w: number;
  readonly h: number;
}

function boxesOf(instance: Instance): Box[] {
  return instance.items.flatMap(({ points, count }, item) => {
    const [h, w] = points[2]!;
    return Array.from({ length: count }, (_, copy): Box => ({ item, copy, w, h }));
  });
}

const ORDERS: readonly ((a: Box, b: Box) => number)[] = [
  (a, b) => b.w * b.h - a.w * a.h,
  (a, b) => b.h - a.h,
  (a, b) => b.w - a.w,
  (a, b) => Math.max(b.w, b.h) - Math.max(a.w, a.h),
  (a, b) => Math.min(b.w, b.h) - Math.min(a.w, a.h),
  (a, b) => b.w + b.h - a.w - a.h,
];

/** Best of two rules and six orders, each in the shortest bin that takes all (by bisection). */
const maxrects: OtherPacker = {
  name: "maxrects-packer",
  pack(instance, quarterTurns): OtherResult {
    const boxes = boxesOf(instance);
    let best: { length: number; placements: BenchPlacement[] } | null = null;
    const area = boxes.reduce((sum, box) => sum + box.w * box.h, 0);
    for (const logic of [LOGIC.MAX_AREA, LOGIC.MAX_EDGE])
      for (const order of ORDERS) {
        const sorted = [...boxes].sort(order);
        let low = Math.floor(area / instance.stripWidth);
        let high = best
          ? best.length - 1
          : 3 * low + Math.ceil(Math.max(...boxes.map((box) => Math.max(box.w, box.h))));
        while (low <= high) {
          const length = Math.floor((low + high) / 2);
          const plan = packed(sorted, instance, length, quarterTurns || instance.turns.includes(90), logic);
          if (plan) {
            best = plan;
            high = plan.length - 1;
          } else low = length + 1;
        }
      }
    return best ?? { length: Number.NaN, placements: [] };
  },
};

function packed(
  boxes: readonly Box[],
  instance: Instance,
  length: number,
  allowRotation: boolean,
  logic: PACKING_LOGIC,
): { length: number; placements: BenchPlacement[] } | null {
  const options = { smart: false, pot: false, square: false, allowRotation, logic };
  const packer = new MaxRectsPacker(instance.stripWidth, length, 0, options);
  const placements: BenchPlacement[] = [];
  let used = 0;
  for (const box of boxes) {
    const rect = packer.add(box.w, box.h, box);
    if (packer.bins.length > 1 || rect.oversized) return null;
    // It tells the box's corner; a turned box keeps its unturned sizes and says `rot`.
    const rotation = rect.rot ? 90 : 0;
    used = Math.max(used, rect.y + (rect.rot ? box.w : box.h));
    placements.push({
      item: instance.items[box.item]!.item,
      copy: box.copy,
      x: rect.y,
      y: rect.x,
      rotation,
      mirrored: false,
    });
  }
  return { length: used, placements };
}

/** Chooses its own, nearly square, box; only the share it fills can be compared. */
const squareBox: OtherPacker = {
  name: "potpack",
  pack: (instance) => ({ density: potpack(boxesOf(instance).map(({ w, h }) => ({ w, h }))).fill }),
};

const packers: readonly OtherPacker[] = [maxrects, squareBox];
export default packers;
