import { layDrawing } from "../../core/drawing/layDrawing.ts";
import { pieceArt } from "../../core/drawing/pieceArt.ts";
import { rulerCards, rulerPlan } from "../../core/drawing/rulerPages.ts";
import { isRectangle } from "../../core/geometry/ring.ts";
import { arrange } from "../../core/lay/arrange.ts";
import { rulerCuts } from "../../core/lay/choices/layFigures.ts";
import { chooseEngines } from "../../core/lay/chooseEngines.ts";
import { RULER_TEXTS } from "../../core/lay/ruler/words/rulerTextTables.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import { grainArrow } from "../../export/grainArrow.ts";
import { finished } from "./finished.ts";
import type { Ask, RulerStack } from "./protocol.ts";

/** Evaluations for a plan that a ruler can cut: a second or two, and the same plan every time. */
const EFFORT = 40_000;
/** mm that a ruler cannot tell from nothing. */
const TOLERANCE = 0.05;
/** The picture of a cut, mm. */
const CARD = { width: 90, height: 60 };

/** A plan of edge-to-edge cuts for a material, and the cuts in order, each with its picture. */
export function rulerStacks(ask: Extract<Ask, { kind: "ruler" }>): readonly RulerStack[] {
  const { project, pieces, language, lay } = ask;
  const { problem, material } = lay;
  const texts = RULER_TEXTS[language];
  const plan = finished(arrange(problem, (job) => chooseEngines(job, "ruler"), { evaluations: EFFORT }, 1));
  const art = pieceArt(pieces, project.output.lengths);
  const curved = problem.pieces.some(({ outline }) => !isRectangle(outline.outer, TOLERANCE));
  return problem.stocks.flatMap((stock): RulerStack[] => {
    const placements = plan.placements.filter(({ stockId }) => stockId === stock.id);
    if (placements.length === 0) return [];
    const sheet = layDrawing(stock, plan, art, grainArrow(material));
    const length = plan.uses.find(({ stockId }) => stockId === stock.id)?.usedLength ?? 0;
    const bare = { stockId: stock.id, length, drawing: sheet.drawing };
    // Each stock by itself: one that no ruler can cut does not keep the others from it.
    const cuts = rulerCuts({ ...problem, stocks: [stock] }, plan)?.[0];
    if (cuts === undefined) return [{ ...bare, cuts: 0, settings: 0, notes: [], cards: null }];
    const write = (mm: number) => cutLength(mm, project.output.lengths);
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
        ],
        cards: rulerCards(rulerPlan(cuts, sheet, texts), CARD, write, language),
      },
    ];
  });
}
