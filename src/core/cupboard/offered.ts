import type { Material } from "../materials/material.ts";
import type { MaterialStock } from "../materials/stock.ts";
import { failed, ok, type Problem, type Result } from "../problems/problem.ts";
import type { Project } from "../project/project.ts";
import { type Cupboard, type CupboardPiece, isOfCloth, sameWords } from "./cupboard.ts";

/** A project with the cupboard's pieces in its stock, before everything else. */
export interface OfferedProject {
  readonly project: Project;
  readonly pieces: readonly CupboardPiece[];
}

/**
 * Offers a project what lies in the cupboard of its cloths, each piece by its code, to be used up first. `shade` keeps
 * to pieces of that shade and those of which none is said.
 *
 * Errors: pieces of one cloth in several shades, and none is asked for: a bag in two shades is spoiled. A piece whose
 * code is the id of something else in the project.
 */
export function offerPieces(project: Project, cupboard: Cupboard, shade: string | null): Result<OfferedProject> {
  const problems: Problem[] = [];
  const ids = new Set(project.materials.flatMap(({ stock }) => stock.map(({ id }) => id)));
  const offered: CupboardPiece[] = [];
  const materials = project.materials.map((material, i): Material => {
    const pieces = piecesFor(cupboard, material, shade);
    const shades = shadesOf(pieces);
    if (shade === null && shades.length > 1)
      problems.push({ code: "shades-mixed", path: `materials[${i}]`, cloth: material.name, shades });
    for (const { code } of pieces)
      if (ids.has(code)) problems.push({ code: "piece-code-taken", path: `materials[${i}].stock`, label: code });
    offered.push(...pieces);
    return { ...material, stock: [...pieces.map(labelledStock), ...material.stock] };
  });
  return problems.length > 0 ? failed(...problems) : ok({ project: { ...project, materials }, pieces: offered });
}

/** A piece as stock of a project, named by its label. */
export function labelledStock({ code, stock }: CupboardPiece): MaterialStock {
  return { ...stock, label: code };
}

/** What lies in the cupboard of a cloth, largest first. */
export function piecesFor(
  { pieces }: Cupboard,
  cloth: Pick<Material, "id" | "name">,
  shade: string | null,
): CupboardPiece[] {
  return pieces
    .filter(({ taken }) => taken === null)
    .filter((piece) => isOfCloth(piece, cloth))
    .filter((piece) => shade === null || piece.shade === null || sameWords(piece.shade, shade))
    .sort((a, b) => areaOf(b) - areaOf(a));
}

/** The shades of some pieces, each once. */
export function shadesOf(pieces: readonly CupboardPiece[]): string[] {
  const all = pieces.flatMap(({ shade }) => (shade === null ? [] : [shade]));
  return all.filter((shade, i) => all.findIndex((other) => sameWords(other, shade)) === i);
}

function areaOf({ largest }: CupboardPiece): number {
  return largest === null ? 0 : largest.along * largest.across;
}
