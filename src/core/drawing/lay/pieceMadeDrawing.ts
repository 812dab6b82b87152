import { jobOf } from "../../job/projectJob.ts";
import { type LaidPiece, ownPieceId } from "../../job/shopping/fromPiece.ts";
import type { Material } from "../../materials/material.ts";
import type { Project } from "../../project/project.ts";
import type { Language } from "../../units/language.ts";
import type { Drawing } from "../list/drawing.ts";
import { layDrawing, type PieceArt } from "./layDrawing.ts";
import { grainArrow, pieceArt } from "./pieceArt.ts";

/** What a piece of cloth makes, drawn on it: one drawing in mm, every piece named. Cost: O(points). */
export function pieceMadeDrawing(
  project: Project,
  material: Material,
  { problem, plan }: LaidPiece,
  language: Language,
): Drawing {
  // Laid as one layer, whatever the project spreads.
  const materials = project.materials.map((one) => (one.id === material.id ? { ...one, spread: null } : one));
  const { pieces } = jobOf({ ...project, materials, matches: undefined, centred: undefined }, language);
  const own = pieceArt(pieces, project.output.lengths, language);
  const art = new Map<string, PieceArt>();
  for (const { id } of problem.pieces) {
    const drawn = own.get(ownPieceId(id));
    // Which one of how many is nothing to say of what is not cut yet.
    if (drawn !== undefined) art.set(id, { ...drawn, count: 1 });
  }
  return layDrawing(problem.stocks[0]!, plan, art, grainArrow(material), language).drawing;
}
