import type { CutBox, CutDirection, CutTree } from "./cutTree.ts";
import { piecesOf } from "./tidyTree.ts";

/**
 * The tree as a ruler cuts it: every part only as large as the pieces on it ask for, each measured from a fresh edge,
 * so that a cutting gap leaves no sliver between two of them; what all gaps came to is left at the far end. Equal
 * parts stay side by side. Where nothing is left at the end of a node, a part whose extent no other part has comes
 * last: it is what remains, and needs no setting of the ruler.
 *
 * `goesOn`: the cloth is longer than the tree's box, so that nothing is cut off behind the last length.
 * Only for cloth without flaws or pinned pieces: the pieces move. Cost: O(nodes · depth).
 */
export function closeTree(tree: CutTree, goesOn: boolean, tolerance: number): CutTree {
  if (tree.kind !== "parts") return tree;
  const closing = new Closing(tolerance);
  if (tree.direction === "crosscut") return closing.parted("crosscut", tree.parts, tree.box, goesOn);
  const { dx } = closing.need(tree);
  if (!goesOn && tree.box.dx - dx > tolerance) return closing.parted("crosscut", [tree], tree.box, false);
  return closing.parted("rip", tree.parts, { ...tree.box, dx }, false);
}

/**
 * As `closeTree`, for cloth where pieces may not come to lie anywhere: one after another, every part of the tree is
 * closed and moved up to the one before where `mayLie` lets all its pieces; else it stays where it is laid, and what is
 * in it is closed likewise.
 */
export function closeWhereFree(
  tree: CutTree,
  goesOn: boolean,
  tolerance: number,
  mayLie: (piece: number, box: CutBox) => boolean,
): CutTree {
  const allMay = (closed: CutTree): boolean => [...piecesOf(closed)].every(([piece, box]) => mayLie(piece, box));
  const closing = new Closing(tolerance);
  const inside = (part: CutTree): CutTree => {
    if (part.kind !== "parts") return part;
    const { box, direction } = part;
    const crosscut = direction === "crosscut";
    const band = (from: number, to: number): CutBox =>
      crosscut ? { ...box, x: from, dx: to - from } : { ...box, y: from, dy: to - from };
    const startOf = (of: CutBox): number => (crosscut ? of.x : of.y);
    const endOf = (of: CutBox): number => (crosscut ? of.x + of.dx : of.y + of.dy);
    const parts: CutTree[] = [];
    let at = startOf(box);
    const offcutTo = (to: number): void => {
      if (to - at > tolerance) parts.push({ kind: "offcut", box: band(at, to) });
    };
    for (const child of part.parts) {
      if (child.kind === "offcut") continue;
      const { dx, dy } = closing.need(child);
      const moved = closing.placed(child, band(at, at + (crosscut ? dx : dy)));
      const kept = allMay(moved) ? moved : inside(child);
      offcutTo(startOf(kept.box));
      parts.push(kept);
      at = endOf(kept.box);
    }
    offcutTo(endOf(box));
    return partsOf(box, direction, parts);
  };
  const closed = closeTree(tree, goesOn, tolerance);
  return allMay(closed) ? closed : inside(tree);
}

/** The parts of a box; where a rest too small to cut off was all there was beside one of them, that one. */
function partsOf(box: CutBox, direction: CutDirection, parts: readonly CutTree[]): CutTree {
  const [only] = parts;
  return parts.length === 1 ? { ...only!, box } : { kind: "parts", box, direction, parts };
}

interface Extent {
  readonly dx: number;
  readonly dy: number;
}

class Closing {
  readonly #tolerance: number;
  readonly #needs = new Map<CutTree, Extent>();

  constructor(tolerance: number) {
    this.#tolerance = tolerance;
  }

  /** What the pieces of a tree ask for. */
  need(tree: CutTree): Extent {
    if (tree.kind === "offcut") return { dx: 0, dy: 0 };
    if (tree.kind === "piece") return tree.box;
    const known = this.#needs.get(tree);
    if (known) return known;
    const needs = tree.parts.map((part) => this.need(part));
    const sum = (of: (extent: Extent) => number): number => needs.reduce((all, need) => all + of(need), 0);
    const most = (of: (extent: Extent) => number): number => Math.max(0, ...needs.map(of));
    const along = ({ dx }: Extent): number => dx;
    const across = ({ dy }: Extent): number => dy;
    const need =
      tree.direction === "crosscut" ? { dx: sum(along), dy: most(across) } : { dx: most(along), dy: sum(across) };
    this.#needs.set(tree, need);
    return need;
  }

  /** The parts one after another in a box, and what is left of it. */
  parted(direction: CutDirection, parts: readonly CutTree[], box: CutBox, goesOn: boolean): CutTree {
    const crosscut = direction === "crosscut";
    const extentOf = (part: CutTree): number => (crosscut ? this.need(part).dx : this.need(part).dy);
    const kept = parts.filter((part) => part.kind !== "offcut");
    const used = kept.reduce((sum, part) => sum + extentOf(part), 0);
    const rest = (crosscut ? box.dx : box.dy) - used;
    const ends = rest <= this.#tolerance && !goesOn;
    let at = crosscut ? box.x : box.y;
    const room = (extent: number): CutBox => {
      const own = crosscut ? { ...box, x: at, dx: extent } : { ...box, y: at, dy: extent };
      at += extent;
      return own;
    };
    const inOrder = sideBySide(kept, extentOf, ends, this.#tolerance);
    const placed = inOrder.map((part) => this.placed(part, room(extentOf(part))));
    const whole = goesOn && crosscut ? { ...box, dx: used } : box;
    if (rest > this.#tolerance && !goesOn) placed.push({ kind: "offcut", box: room(rest) });
    return goesOn ? { kind: "parts", box: whole, direction, parts: placed } : partsOf(whole, direction, placed);
  }

  /** A part in its room, which is exactly as large as it asks for in the direction that it was cut off. */
  placed(tree: CutTree, box: CutBox): CutTree {
    if (tree.kind === "parts") return this.parted(tree.direction, tree.parts, box, false);
    const need = this.need(tree);
    if (tree.kind === "offcut" || this.#fills(need, box)) return { ...tree, box };
    return this.parted(box.dx - need.dx > this.#tolerance ? "crosscut" : "rip", [tree], box, false);
  }

  #fills(need: Extent, box: CutBox): boolean {
    return box.dx - need.dx <= this.#tolerance && box.dy - need.dy <= this.#tolerance;
  }
}

/** Equal extents side by side; at an end without a rest, one that stands alone comes last. */
function sideBySide(
  parts: readonly CutTree[],
  extentOf: (part: CutTree) => number,
  ends: boolean,
  tolerance: number,
): readonly CutTree[] {
  const runs: CutTree[][] = [];
  for (const part of parts) {
    const run = runs.find(([first]) => Math.abs(extentOf(first!) - extentOf(part)) <= tolerance);
    if (run) run.push(part);
    else runs.push([part]);
  }
  const alone = ends ? runs.findLastIndex((run) => run.length === 1) : -1;
  if (alone >= 0) runs.push(...runs.splice(alone, 1));
  return runs.flat();
}
