import { stockName } from "../core/drawing/lay/stockName.ts";
import type { LaidCloth } from "../core/job/laidCloth.ts";
import { checkedCuts, needlessStrips } from "../core/job/planCut.ts";
import type { RulerCuts } from "../core/lay/alternatives/layFigures.ts";
import type { CutPart, CutStep } from "../core/lay/boxes/cuts/cutSequence.ts";
import { cautionText } from "../core/materials/caution.ts";
import type { CutPiece } from "../core/materials/cutPiece.ts";
import { isCutBySize } from "../core/materials/cutPiece.ts";
import type { Material } from "../core/materials/material.ts";
import { formatLength, type LengthStyle } from "../core/units/formatLength.ts";
import type { Language } from "../core/units/language.ts";
import type { RulerTexts } from "../core/words/rulerTexts.ts";
import { CAUTION_TABLES, RULER_TEXTS } from "../core/words/words.ts";

type NamedMaterial = Pick<Material, "name" | "stock">;

/**
 * The ruler cuts of a plan as a numbered list to work from, or null when its pieces cannot be parted by straight
 * cuts from edge to edge, or only with strips that are too narrow for it.
 */
export function rulerText(
  project: string,
  laid: Pick<LaidCloth, "problem" | "plan" | "mode"> & { readonly material: NamedMaterial },
  pieces: readonly CutPiece[],
  style: LengthStyle,
  language: Language = "en",
): string | null {
  const texts = RULER_TEXTS[language];
  const { problem, plan, material: cloth } = laid;
  const all = problem.stocks
    .flatMap((stock) => checkedCuts({ ...problem, stocks: [stock] }, plan) ?? [])
    .filter((cuts) => needlessStrips(laid, cuts) === 0);
  if (all.length === 0) return null;
  const names = new Map(pieces.map(({ id, name }) => [id, name]));
  const curved = problem.pieces.some(({ outline }) => !isCutBySize(outline));
  const blocks = all.map((cuts) => stockBlock(cuts, cloth, names, style, language));
  return [
    texts.title(project, cloth.name),
    "",
    texts.measure,
    texts.naming,
    ...(curved ? [texts.curved] : []),
    cautionText({ code: "rotary-cutter" }, CAUTION_TABLES[language]),
    ...blocks.flatMap((block) => ["", ...block]),
    "",
  ].join("\n");
}

function stockBlock(
  { stockId, margin, bare, sequence, placements }: RulerCuts,
  cloth: NamedMaterial,
  names: ReadonlyMap<string, string>,
  style: LengthStyle,
  language: Language,
): string[] {
  const texts = RULER_TEXTS[language];
  const show = (mm: number): string => formatLength(mm, style, language);
  const nameOf = (part: CutPart): string => {
    if (part.kind === "offcut") return `${texts.offcut} ${show(part.box.dx)} × ${show(part.box.dy)}`;
    if (part.kind === "cloth") return part.name === "" ? texts.wholeCloth : part.name;
    const { pieceId } = placements[part.piece]!;
    return names.get(pieceId) ?? pieceId;
  };
  return [
    `${stockName(cloth.stock, stockId, show, language)}: ${texts.counts(sequence.cuts, sequence.settings)}`,
    ...(bare ? [texts.skinFirst] : []),
    ...sequence.steps.map(
      (step) => `${String(step.number).padStart(4)}. ${stepWords(step, nameOf, show, margin, texts)}`,
    ),
  ];
}

function stepWords(
  step: CutStep,
  nameOf: (part: CutPart) => string,
  show: (mm: number) => string,
  margin: number,
  texts: RulerTexts,
): string {
  const { kind, cloth, off, rest, setting, sameSetting } = step;
  if (kind === "straighten" || off === null) {
    return `${texts.straighten(margin > 0 ? show(margin) : "")}.`;
  }
  const how = kind === "crosscut" ? texts.crosscut : texts.rip;
  const ruler = sameSetting ? texts.again(show(setting)) : show(setting);
  const end = rest.box.dx > 0 && rest.box.dy > 0 && rest.kind !== "cloth" ? `; ${texts.remains(nameOf(rest))}` : "";
  return `${how(nameOf(cloth), ruler)}: ${nameOf(off)}${end}`;
}
