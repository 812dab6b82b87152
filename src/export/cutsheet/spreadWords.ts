import { lengthToCut } from "../../core/buying/purchase.ts";
import type { LaidCloth } from "../../core/job/laidCloth.ts";
import { isMatched } from "../../core/lay/problem/lattice.ts";
import { spareOf } from "../../core/lay/problem/layerSums.ts";
import type { Project } from "../../core/project/project.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import type { Language } from "../../core/units/language.ts";
import { SHEET_TEXTS } from "../../core/words/words.ts";

/** How the cloth is spread before the plan is laid on it, and what comes of it; nothing for a single layer. */
export function spreadWords(
  { material, problem, plan }: LaidCloth,
  project: Project,
  language: Language,
): readonly string[] {
  const { spread, pieces } = problem;
  if (spread === undefined || plan.placements.length === 0) return [];
  const texts = SHEET_TEXTS[language];
  const write = (mm: number): string => cutLength(mm, project.output.lengths, language);
  const lengths = plan.uses.flatMap(({ stockId, usedLength }) => {
    const roll = material.stock.find(({ id }) => id === stockId);
    return usedLength > 0 && roll?.kind === "roll" ? [write(lengthToCut(material, roll, usedLength))] : [];
  });
  const how = spread.folded
    ? [texts.spreadFolded]
    : [...new Set(lengths)].map((length) =>
        texts.spreadLayers(spread.layers, length, spread.faces, material.oneWay !== false),
      );
  const along = material.repeat?.along ?? 0;
  const isRepeated = !spread.folded && along > 0;
  const spare = spareOf(problem, plan).map(({ pieceId, asDrawn, mirrored }) => {
    const name = project.panels.find(({ id }) => id === pieceId)?.name ?? pieceId;
    return [
      ...(asDrawn > 0 ? [texts.sparePiece(asDrawn, name, false)] : []),
      ...(mirrored > 0 ? [texts.sparePiece(mirrored, name, true)] : []),
    ].join(", ");
  });
  return [
    ...how,
    ...(isRepeated ? [texts.spreadRepeat(write(along))] : []),
    ...(isMatched(problem) ? [texts.spreadOnLines] : []),
    ...(pieces.some(({ gives }) => (gives?.mirrored ?? 0) > 0 && gives?.asDrawn !== 0) ? [texts.givesPairs] : []),
    ...(pieces.some(({ gives }) => gives?.onFold) ? [texts.givesOnFold] : []),
    ...(spare.length > 0 ? [texts.spare(spare.join(", "))] : []),
    ...(material.stock.some((stock) => stock.kind !== "roll" && !stock.keptBack) ? [texts.leftoversSingly] : []),
  ];
}
