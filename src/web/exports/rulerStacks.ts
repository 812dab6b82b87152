import { layDrawing } from "../../core/drawing/lay/layDrawing.ts";
import { pieceArt } from "../../core/drawing/lay/pieceArt.ts";
import { rulerCards, rulerPlan } from "../../core/drawing/sheets/rulerPages.ts";
import { isRectangle } from "../../core/geometry/ring.ts";
import { clothUsed } from "../../core/lay/alternatives/clothUsed.ts";
import { type LayFigures, layFigures, rulerCuts } from "../../core/lay/alternatives/layFigures.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import { chooseEngines } from "../../core/lay/engines/chooseEngines.ts";
import type { LayPlan, LayProblem } from "../../core/lay/problem/layProblem.ts";
import { arrange } from "../../core/lay/search/arrange/arrange.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import { RULER_TEXTS } from "../../core/words/words.ts";
import { grainArrow } from "../../export/grainArrow.ts";
import { titleOf } from "../../export/stockFiles.ts";
import { finished } from "./finished.ts";
import type { Ask, RulerAnswer, RulerStack } from "./protocol.ts";

/** Evaluations for a plan that a ruler can cut: a second or two, and the same plan every time. */
const EFFORT = 40_000;
/** mm that a ruler cannot tell from nothing. */
const TOLERANCE = 0.05;
/** The picture of a cut, mm. */
const CARD = { width: 90, height: 60 };

/** The best plan of edge-to-edge cuts for a material, and the cuts in order, each with its picture. */
export function rulerAnswer(ask: Extract<Ask, { kind: "ruler" }>): RulerAnswer {
  const { problem, plan: table } = ask.lay;
  const onTable = layFigures(problem, table).ruler;
  const isKept = table.placements.length > 0 && problem.pinned.length === table.placements.length;
  const found = onTable !== null && isKept ? table : searchedPlan(problem);
  const figures = layFigures(problem, found).ruler;
  const isOnTable = found === table || (onTable !== null && !isEasier(problem, found, figures, table, onTable));
  const plan = isOnTable ? table : found;
  if (!isOnTable) {
    const faults = checkPlan(problem, plan);
    if (faults.length > 0) throw new Error(`rulerAnswer: the checker refused a ruler plan: ${faults[0]!.code}`);
  }
  return { plan, isOnTable, onTable, found: isOnTable ? onTable : figures, stacks: rulerStacks(ask, plan) };
}

function searchedPlan(problem: LayProblem): LayPlan {
  return finished(arrange(problem, (job) => chooseEngines(job, "ruler"), { evaluations: EFFORT }, 1));
}

/** Whether a plan leaves out fewer pieces than the one on the table, else takes less cloth, else fewer settings. */
function isEasier(problem: LayProblem, plan: LayPlan, figures: Cuts, table: LayPlan, onTable: Cuts): boolean {
  if (figures === null || onTable === null) return figures !== null;
  const weighed = (one: LayPlan, { settings }: NonNullable<Cuts>) => [
    one.unplaced.reduce((sum, { count }) => sum + count, 0),
    Math.round(clothUsed(problem, one)),
    settings,
  ];
  const [mine, theirs] = [weighed(plan, figures), weighed(table, onTable)];
  const at = mine.findIndex((value, i) => value !== theirs[i]);
  return at >= 0 && mine[at]! < theirs[at]!;
}

type Cuts = LayFigures["ruler"];

function rulerStacks(ask: Extract<Ask, { kind: "ruler" }>, plan: LayPlan): readonly RulerStack[] {
  const { project, pieces, language, lay } = ask;
  const { problem, material } = lay;
  const texts = RULER_TEXTS[language];
  const art = pieceArt(pieces, project.output.lengths, language);
  const curved = problem.pieces.some(({ outline }) => !isRectangle(outline.outer, TOLERANCE));
  return problem.stocks.flatMap((stock): RulerStack[] => {
    const placements = plan.placements.filter(({ stockId }) => stockId === stock.id);
    if (placements.length === 0) return [];
    const sheet = layDrawing(stock, plan, art, grainArrow(material), language);
    const name = titleOf(project, material, stock, sheet, language).stock;
    const bare = { stockId: stock.id, name, drawing: sheet.drawing };
    // Each stock by itself: one that no ruler can cut does not keep the others from it.
    const cuts = rulerCuts({ ...problem, stocks: [stock] }, plan)?.[0];
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
        ],
        cards: rulerCards(rulerPlan(cuts, sheet, texts), CARD, write, language),
      },
    ];
  });
}
