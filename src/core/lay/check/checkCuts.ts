import type { RulerCuts } from "../alternatives/layFigures.ts";
import type { CutPart, CutStep } from "../boxes/cuts/cutSequence.ts";
import type { CutBox } from "../boxes/cuts/cutTree.ts";
import type { LayProblem } from "../problem/layProblem.ts";
import { laidOutline } from "./laidOutline.ts";

/**
 * What is wrong with ruler cuts. `no-such-cloth`: a cut is to run through cloth that does not lie on the table;
 * `off-the-cloth`: it misses it; `other-parts`: it does not leave what it is said to leave; `piece-cut`: it runs through
 * a piece; `other-size`: a piece does not come out as large as it is; `pieces-missing`: not every piece comes out once;
 * `strips-untold`: the strips narrower than the least are not as many as told.
 */
export interface CutFault {
  readonly fault:
    | "no-such-cloth"
    | "off-the-cloth"
    | "other-parts"
    | "piece-cut"
    | "other-size"
    | "pieces-missing"
    | "strips-untold";
  /** Number of the cut, from 1; 0 where all are meant. */
  readonly step: number;
  /** What was told, and what the checker finds, where these are numbers. */
  readonly told: number | null;
  readonly found: number | null;
}

/** mm within which two edges are one. */
const SAME = 1e-2;
/** Rounding of sums of lengths, mm. */
const ROUNDING = 1e-6;

/** Cloth on the table, and which way the last cut ran that made it. */
interface Part {
  readonly box: CutBox;
  readonly by: "rip" | "crosscut" | null;
  readonly piece: number | null;
}

/**
 * Carries ruler cuts out on a table of rectangles and says what does not agree: the cuts themselves, the sizes of the
 * pieces by the problem's outlines, and how many strips narrower than the problem's least are cut off, those along the
 * far edge and the end of a roll not counted.
 *
 * Independent: reads the steps as they are printed, not the tree that they came from. O(steps²).
 */
export function checkCuts(problem: LayProblem, cuts: RulerCuts): CutFault[] {
  const faults: CutFault[] = [];
  const blame = (fault: CutFault["fault"], step: number, told: number | null = null, found: number | null = null) =>
    faults.push({ fault, step, told, found });
  const whole = cuts.sequence.steps[0]!.cloth.box;
  let table: Part[] = [{ box: whole, by: null, piece: null }];
  for (const step of cuts.sequence.steps) {
    if (step.kind === "straighten") continue;
    const under = table.find(({ box }) => isSame(box, step.cloth.box));
    if (under === undefined) {
      blame("no-such-cloth", step.number);
      continue;
    }
    const halves = parted(under.box, step);
    if (halves === null) {
      blame("off-the-cloth", step.number);
      continue;
    }
    // The last length of a roll that goes on is cut off the roll: nothing is parted.
    if (under.piece !== null && !isSame(halves[0], under.box)) blame("piece-cut", step.number);
    const fresh: Part[] = [];
    for (const [i, told] of [step.off, step.rest].entries()) {
      const box = halves[i]!;
      if (told === null || !isSame(told.box, box)) blame("other-parts", step.number);
      else if (box.dx > 0 && box.dy > 0) fresh.push({ box, by: step.kind, piece: pieceOf(told) });
    }
    table = [...table.filter((part) => part !== under), ...fresh];
  }
  const pieces = table.flatMap(({ box, piece }) => (piece === null ? [] : [{ box, piece }]));
  for (const { box, piece } of pieces) {
    const { pieceId, ...pose } = cuts.placements[piece]!;
    const outline = problem.pieces.find(({ id }) => id === pieceId)!.outline;
    const { minX, minY, maxX, maxY } = laidOutline(outline, pose);
    if (Math.abs(maxX - minX - box.dx) > SAME || Math.abs(maxY - minY - box.dy) > SAME)
      blame("other-size", 0, box.dx, maxX - minX);
  }
  const once = new Set(pieces.map(({ piece }) => piece));
  if (once.size !== pieces.length || once.size !== cuts.placements.length)
    blame("pieces-missing", 0, cuts.placements.length, once.size);
  const isRoll = problem.stocks.find(({ id }) => id === cuts.stockId)?.kind === "roll";
  const least = problem.leastStrip ?? 0;
  const narrowerThan = (most: number): number =>
    table.filter(({ box, by, piece }) => {
      if (piece !== null || by === null || (by === "rip" ? box.dy : box.dx) >= most) return false;
      if (!isRoll) return true;
      const far = by === "rip" ? whole.y + whole.dy - box.y - box.dy : whole.x + whole.dx - box.x - box.dx;
      return far > SAME;
    }).length;
  // A strip that is narrower by less than a ruler shows may be told or not.
  const surely = narrowerThan(least - SAME);
  const told = cuts.narrow.length;
  if (told < surely || told > narrowerThan(least - ROUNDING)) blame("strips-untold", 0, told, surely);
  return faults;
}

function pieceOf(part: CutPart): number | null {
  return part.kind === "piece" ? part.piece : null;
}

/** The two parts of a box at a cut, the measured one first; null where the cut does not meet it. */
function parted(box: CutBox, { kind, at }: CutStep): readonly [CutBox, CutBox] | null {
  const [from, size] = kind === "rip" ? [box.y, box.dy] : [box.x, box.dx];
  if (at <= from + SAME || at > from + size + SAME) return null;
  return kind === "rip"
    ? [
        { ...box, dy: at - from },
        { ...box, y: at, dy: Math.max(0, from + size - at) },
      ]
    : [
        { ...box, dx: at - from },
        { ...box, x: at, dx: Math.max(0, from + size - at) },
      ];
}

function isSame(a: CutBox, b: CutBox): boolean {
  return [a.x - b.x, a.y - b.y, a.dx - b.dx, a.dy - b.dy].every((apart) => Math.abs(apart) <= SAME);
}
