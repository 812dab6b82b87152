import { layDrawing } from "../../core/drawing/layDrawing.ts";
import { pieceArt } from "../../core/drawing/pieceArt.ts";
import { poseRing } from "../../core/geometry/pose.ts";
import { ringBox } from "../../core/geometry/ring.ts";
import { arrange } from "../../core/lay/arrange.ts";
import { chooseEngines } from "../../core/lay/chooseEngines.ts";
import { type CutPart, cutSequence } from "../../core/lay/ruler/cutSequence.ts";
import { type CutBox, cutTreeOf } from "../../core/lay/ruler/cutTree.ts";
import { grainArrow } from "../../export/grainArrow.ts";
import { finished } from "./finished.ts";
import type { Ask, RulerStack } from "./protocol.ts";

/** Evaluations for a plan that a ruler can cut: a second or two, and the same plan every time. */
const EFFORT = 40_000;
/** mm that a ruler cannot tell from nothing. */
const TOLERANCE = 0.01;

/** A plan of edge-to-edge cuts for a material, and the cuts in order. */
export function rulerStacks({ project, pieces, lay }: Extract<Ask, { kind: "ruler" }>): readonly RulerStack[] {
  const { problem, material } = lay;
  const plan = finished(arrange(problem, (job) => chooseEngines(job, "ruler"), { evaluations: EFFORT }, 1));
  const art = pieceArt(pieces, project.output.lengths);
  const outlines = new Map(problem.pieces.map(({ id, outline }) => [id, outline.outer]));
  return problem.stocks.flatMap((stock): RulerStack[] => {
    const placements = plan.placements.filter(({ stockId }) => stockId === stock.id);
    const used = plan.uses.find(({ stockId }) => stockId === stock.id)?.usedLength ?? 0;
    if (placements.length === 0) return [];
    const { drawing } = layDrawing(stock, plan, art, grainArrow(material));
    const boxes = placements.map((placement): CutBox => {
      const box = ringBox(poseRing(outlines.get(placement.pieceId)!, placement));
      return { x: box.minX, y: box.minY, dx: box.maxX - box.minX, dy: box.maxY - box.minY };
    });
    const whole = stock.kind === "roll" ? { x: 0, y: 0, dx: used, dy: stock.width } : null;
    const tree = whole === null ? null : cutTreeOf(whole, boxes, TOLERANCE);
    const bare = { stockId: stock.id, length: used, drawing };
    if (tree === null) return [{ ...bare, cuts: 0, settings: 0, steps: null }];
    const sequence = cutSequence(tree, true);
    const nameOf = (part: CutPart | null): string | null => {
      if (part === null || part.kind === "offcut") return null;
      if (part.kind === "cloth") return part.name;
      const { pieceId, copy } = placements[part.piece]!;
      const known = art.get(pieceId);
      return known === undefined
        ? pieceId
        : known.count > 1
          ? `${known.name} ${copy + 1}/${known.count}`
          : known.name;
    };
    const steps = sequence.steps.map(({ kind, cloth, setting, sameSetting, off }) => ({
      kind,
      cloth: nameOf(cloth) ?? "",
      setting,
      sameSetting,
      off: nameOf(off),
    }));
    return [{ ...bare, cuts: sequence.cuts, settings: sequence.settings, steps }];
  });
}
