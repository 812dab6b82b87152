import { isRectangle } from "../../core/geometry/ring.ts";
import { type RulerCuts, rulerCuts } from "../../core/lay/choices/layFigures.ts";
import type { CutPart, CutStep } from "../../core/lay/ruler/cutSequence.ts";
import type { LayPlan, LayProblem } from "../../core/lay/types.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";

/**
 * The ruler cuts of a plan as a numbered list to work from, or null when its pieces cannot be parted by straight
 * cuts from edge to edge.
 */
export function rulerText(
  title: string,
  problem: LayProblem,
  plan: LayPlan,
  pieces: readonly CutPiece[],
  style: LengthStyle,
): string | null {
  const all = rulerCuts(problem, plan);
  if (all === null || all.length === 0) return null;
  const names = new Map(pieces.map(({ id, name }) => [id, name]));
  const curved = problem.pieces.some(({ outline }) => !isRectangle(outline.outer, 1e-3));
  const blocks = all.map((cuts) => stockBlock(cuts, names, style));
  return [
    title,
    "",
    "Every cut runs from edge to edge of the cloth named. Measure from the fresh edge, along the grain.",
    "Lengths are A, B, C from the cut end; A1 is the first strip of length A, A1B the second part of that strip.",
    "A rotary cutter cuts skin as easily as cloth: blade closed when it lies down, hand behind the ruler's edge.",
    ...(curved
      ? ["A piece with other than straight, square edges comes off as a rectangle; cut its outline after."]
      : []),
    ...blocks.flatMap((block) => ["", ...block]),
    "",
  ].join("\n");
}

function stockBlock(
  { stockId, margin, sequence, placements }: RulerCuts,
  names: ReadonlyMap<string, string>,
  style: LengthStyle,
): string[] {
  const show = (mm: number): string => formatLength(mm, style);
  const nameOf = (part: CutPart): string => {
    if (part.kind === "offcut") return `offcut ${show(part.box.dx)} × ${show(part.box.dy)}`;
    if (part.kind === "cloth") return part.name === "" ? "the cloth" : part.name;
    const { pieceId } = placements[part.piece]!;
    return names.get(pieceId) ?? pieceId;
  };
  return [
    `${stockId}: ${sequence.cuts} cuts, ${sequence.settings} ruler settings`,
    ...sequence.steps.map((step) => `${String(step.number).padStart(4)}. ${stepWords(step, nameOf, show, margin)}`),
  ];
}

function stepWords(
  step: CutStep,
  nameOf: (part: CutPart) => string,
  show: (mm: number) => string,
  margin: number,
): string {
  const { kind, cloth, off, rest, setting, sameSetting } = step;
  if (kind === "straighten" || off === null) {
    const edge = margin > 0 ? `, ${show(margin)} in, and trim one long edge as much` : "";
    return `Straighten the cut end, square to the selvedge${edge}.`;
  }
  const how = kind === "crosscut" ? "Crosscut" : "Rip";
  const ruler = sameSetting ? `${show(setting)} again` : show(setting);
  const end =
    rest.box.dx > 0 && rest.box.dy > 0 && rest.kind !== "cloth" ? `; what remains is ${nameOf(rest)}` : "";
  return `${how} ${nameOf(cloth)} at ${ruler}: ${nameOf(off)}${end}`;
}
