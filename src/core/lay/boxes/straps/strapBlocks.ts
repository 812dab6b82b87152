import type { StrapOnCloth, StrapPlacement } from "./strapProblem.ts";

/** Straps side by side in even rows: how a person reads a strap plan. */
export interface StrapBlock {
  readonly rotation: 0 | 90;
  /** Near corner, mm. */
  readonly x: number;
  readonly y: number;
  /** Straps along the roll and across it. */
  readonly along: number;
  readonly across: number;
}

/** mm within which two straps stand level. */
const LEVEL = 1e-3;

/**
 * The placements gathered into even blocks, from the cut end on: straps stacked across at one x first, then equal
 * stacks side by side. Every strap is in exactly one block. O(n log n + n·blocks).
 */
export function strapBlocks(cloth: StrapOnCloth, placements: readonly StrapPlacement[]): readonly StrapBlock[] {
  const order = [...placements].sort((a, b) => a.rotation - b.rotation || a.x - b.x || a.y - b.y);
  const stacks: StrapBlock[] = [];
  for (const { x, y, rotation } of order) {
    const last = stacks.at(-1);
    const pitch = (rotation === 0 ? cloth.strapWidth : cloth.strapLength) + cloth.gap;
    const continues =
      last !== undefined &&
      last.rotation === rotation &&
      Math.abs(last.x - x) < LEVEL &&
      Math.abs(last.y + last.across * pitch - y) < LEVEL;
    if (continues) stacks[stacks.length - 1] = { ...last, across: last.across + 1 };
    else stacks.push({ rotation, x, y, along: 1, across: 1 });
  }
  const blocks: StrapBlock[] = [];
  for (const stack of stacks) {
    const pitch = (stack.rotation === 0 ? cloth.strapLength : cloth.strapWidth) + cloth.gap;
    const before = blocks.findIndex(
      (block) =>
        block.rotation === stack.rotation &&
        block.across === stack.across &&
        Math.abs(block.y - stack.y) < LEVEL &&
        Math.abs(block.x + block.along * pitch - stack.x) < LEVEL,
    );
    if (before < 0) blocks.push(stack);
    else blocks[before] = { ...blocks[before]!, along: blocks[before]!.along + 1 };
  }
  return blocks.sort((a, b) => a.x - b.x || a.y - b.y);
}
