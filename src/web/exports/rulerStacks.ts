import { layDrawing } from "../../core/drawing/lay/layDrawing.ts";
import { grainArrow, pieceArt } from "../../core/drawing/lay/pieceArt.ts";
import { rulerCards, rulerPlan } from "../../core/drawing/sheets/rulerPages.ts";
import { checkedCuts } from "../../core/job/planCut.ts";
import { rulerJobOf } from "../../core/job/rulerJob.ts";
import type { LayPlan } from "../../core/lay/problem/layProblem.ts";
import { isCutBySize } from "../../core/materials/cutPiece.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import { RULER_TEXTS } from "../../core/words/words.ts";
import { titleOf } from "../../export/tiledPages.ts";
import type { Ask, RulerAnswer, RulerStack } from "./protocol.ts";

/** The picture of a cut, mm. */
const CARD = { width: 90, height: 60 };

/** The best plan of edge-to-edge cuts for a material, and the cuts in order, each with its picture. */
export function rulerAnswer(ask: Extract<Ask, { kind: "ruler" }>): RulerAnswer {
  const job = rulerJobOf(ask.lay.problem, ask.lay.plan);
  return { ...job, stacks: rulerStacks(ask, job.plan) };
}

function rulerStacks(ask: Extract<Ask, { kind: "ruler" }>, plan: LayPlan): readonly RulerStack[] {
  const { project, pieces, language, lay } = ask;
  const { problem, material } = lay;
  const texts = RULER_TEXTS[language];
  const art = pieceArt(pieces, project.output.lengths, language);
  const curved = problem.pieces.some(({ outline }) => !isCutBySize(outline));
  return problem.stocks.flatMap((stock): RulerStack[] => {
    const placements = plan.placements.filter(({ stockId }) => stockId === stock.id);
    if (placements.length === 0) return [];
    const sheet = layDrawing(stock, plan, art, grainArrow(material), language, [], problem.pattern);
    const name = titleOf(project, material, stock, sheet, language).stock;
    const bare = { stockId: stock.id, name, drawing: sheet.drawing };
    // Each stock by itself: one that no ruler can cut does not keep the others from it.
    const cuts = checkedCuts({ ...problem, stocks: [stock] }, plan)?.[0];
    if (cuts === undefined) return [{ ...bare, cuts: 0, settings: 0, notes: [], cards: null }];
    const write = (mm: number) => cutLength(mm, project.output.lengths, language);
    return [
      {
        ...bare,
        cuts: cuts.sequence.cuts,
        settings: cuts.sequence.settings,
        notes: [
          texts.measure,
          texts.naming,
          ...(curved ? [texts.curved] : []),
          ...(cuts.bare ? [texts.skinFirst] : []),
          ...(cuts.narrow.length > 0
            ? [texts.narrowStrips(cuts.narrow.length, write(problem.leastStrip ?? 0))]
            : []),
        ],
        cards: rulerCards(rulerPlan(cuts, sheet, texts), CARD, write, language),
      },
    ];
  });
}
