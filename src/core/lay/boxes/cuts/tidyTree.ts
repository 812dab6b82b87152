import type { CutBox, CutTree } from "./cutTree.ts";

/**
 * The same cuts in a better order: parts of equal size side by side, so that the ruler keeps its setting, larger
 * ones first, and all that is left over gathered into one offcut at the far end. No piece is turned.
 *
 * The pieces move; read their new places with `piecesOf`. Only for cloth without flaws or pinned pieces.
 */
export function tidyTree(tree: CutTree, tolerance: number): CutTree {
  return placedTree(tidied(tree, tolerance), tree.box.x, tree.box.y);
}

function tidied(tree: CutTree, tolerance: number): CutTree {
  if (tree.kind !== "parts") return tree;
  const crosscut = tree.direction === "crosscut";
  const extent = (part: CutTree): number => (crosscut ? part.box.dx : part.box.dy);
  const kept = tree.parts.filter((part) => part.kind !== "offcut").map((part) => tidied(part, tolerance));
  const rank = new Map(kept.map((part, i) => [part, i]));
  kept.sort((a, b) => {
    const apart = extent(b) - extent(a);
    return Math.abs(apart) > tolerance ? apart : wasteOf(a) - wasteOf(b) || rank.get(a)! - rank.get(b)!;
  });
  const used = kept.reduce((sum, part) => sum + extent(part), 0);
  const rest = extent(tree) - used;
  if (rest <= tolerance) return { ...tree, parts: kept };
  const { box } = tree;
  const offcut: CutBox = crosscut ? { ...box, dx: rest } : { ...box, dy: rest };
  return { ...tree, parts: [...kept, { kind: "offcut", box: offcut }] };
}

function wasteOf(tree: CutTree): number {
  if (tree.kind === "offcut") return tree.box.dx * tree.box.dy;
  return tree.kind === "piece" ? 0 : tree.parts.reduce((sum, part) => sum + wasteOf(part), 0);
}

/** The tree with its near corner at (x, y). */
function placedTree(tree: CutTree, x: number, y: number): CutTree {
  const box = { ...tree.box, x, y };
  if (tree.kind !== "parts") return { ...tree, box };
  let along = x;
  let across = y;
  const parts = tree.parts.map((part) => {
    const placed = placedTree(part, along, across);
    if (tree.direction === "crosscut") along += part.box.dx;
    else across += part.box.dy;
    return placed;
  });
  return { ...tree, box, parts };
}

/** Where each piece of the tree lies, by its number. */
export function piecesOf(tree: CutTree): Map<number, CutBox> {
  const found = new Map<number, CutBox>();
  const walk = (part: CutTree): void => {
    if (part.kind === "piece") found.set(part.piece, part.box);
    else if (part.kind === "parts") part.parts.forEach(walk);
  };
  walk(tree);
  return found;
}
