import { rectangleContour, segmentContour } from "../../geometry/contourShapes.ts";
import { rectangleRing, solid } from "../../geometry/ring.ts";
import type { CutPiece, PieceGrain, PieceLine } from "../../materials/cutPiece.ts";
import type { PartNames } from "../../words/strapWords.ts";
import type { StitchRow } from "../constructions/construction.ts";
import { foldLinesOf, type SolvedSection, type SolvedStrip } from "../section/foldSection.ts";
import { tapeRuns } from "./consumables.ts";
import type { ResolvedWish } from "./resolveWish.ts";
import type { SolvedWidths } from "./solveStrap.ts";
import { stripLines } from "./stripLines.ts";

/** One length of strip to cut: `suffix` keeps ids apart, `name` says which part of the strap it is. mm. */
export interface StripLength {
  readonly suffix: string;
  readonly name: string;
  readonly mm: number;
  /** Sewn end to end with others of its strap. */
  readonly joined?: true;
}

/** Knit-backed material gives across its width only, so straps of it run along the roll (common practice, no source). */
function grainOf({ wish, materials }: ResolvedWish): PieceGrain {
  return wish.grain ?? (materials.outer.backing === "knit" ? "lengthwise" : "either");
}

function strip(
  resolved: ResolvedWish,
  part: { readonly role: string; readonly name: string; readonly materialId: string; readonly perStrap: number },
  length: StripLength,
  width: number,
  lines: readonly PieceLine[],
): CutPiece {
  const { wish } = resolved;
  return {
    id: [wish.id, part.role, length.suffix].filter(Boolean).join("-"),
    name: [wish.name, part.name, length.name].filter(Boolean).join(", "),
    partId: wish.id,
    materialId: part.materialId,
    kind: "strip",
    contour: rectangleContour(0, 0, length.mm, width),
    outline: solid(rectangleRing(0, 0, length.mm, width)),
    lines,
    count: wish.count * part.perStrap,
    mirroredCount: 0,
    grain: grainOf(resolved),
    ...(length.joined && { joined: true }),
  };
}

/**
 * Width of an interfacing piece: `full` covers the strip, `reduced` leaves a quarter out to cut bulk, `quarter` is
 * the part between the two fold lines of the face (common practice, no source). mm.
 */
function interfacingWidth(placement: "full" | "reduced" | "quarter", onto: SolvedStrip): number {
  if (placement === "full") return onto.width;
  if (placement === "reduced") return onto.width - onto.width / 4;
  const folds = foldLinesOf(onto);
  const before = folds[onto.plan.face - 1] ?? 0;
  const after = folds[onto.plan.face] ?? onto.width;
  return after - before;
}

/** Pieces of the strips of one section, on every length of strip that the strap needs. */
function stripPieces(
  resolved: ResolvedWish,
  section: SolvedSection,
  lengths: readonly StripLength[],
  rows: readonly StitchRow[],
  names: PartNames,
): readonly CutPiece[] {
  const { materials, construction, choices, wish, input } = resolved;
  const trim = construction.trim(choices);
  const taped = tapeRuns(resolved) >= 2;
  const pieces: CutPiece[] = [];
  const roles = [...new Set(section.strips.map((one) => one.plan.ply.role))];
  const needsFacing = roles.includes("facing");
  for (const role of roles) {
    const same = section.strips.filter((one) => one.plan.ply.role === role);
    const material = (role === "facing" ? materials.facing : undefined) ?? materials.outer;
    const name = role === "facing" ? names.facing : needsFacing ? names.outer : "";
    for (const length of lengths) {
      const lines = stripLines(same[0]!, length.mm, section.finishedWidth, trim, rows, taped);
      const part = { role, name, materialId: material.id, perStrap: same.length };
      pieces.push(strip(resolved, part, length, same[0]!.width + 2 * trim, lines));
    }
  }
  const placement = wish.interfacing ?? "none";
  if (placement !== "none" && materials.interfacing) {
    const onto = section.strips.find((one) => one.plan.ply.role === construction.interfaced)!;
    const part = {
      role: "interfacing",
      name: names.interfacing,
      materialId: materials.interfacing.id,
      // Every strip of that kind is interfaced, as its thickness is reckoned.
      perStrap: section.strips.filter((one) => one.plan.ply.role === construction.interfaced).length,
    };
    const width = interfacingWidth(placement, onto);
    for (const length of lengths) pieces.push(strip(resolved, part, length, width, []));
  }
  if (input.padding !== null && materials.padding) {
    const part = { role: "padding", name: names.padding, materialId: materials.padding.id, perStrap: 1 };
    const width = section.finishedWidth - construction.paddingShy;
    for (const length of lengths) pieces.push(strip(resolved, part, length, width, []));
  }
  return pieces;
}

/** Every piece to cut for a solved strap: strips, facing, interfacing, padding. */
export function strapPieces(
  resolved: ResolvedWish,
  widths: SolvedWidths,
  lengths: readonly StripLength[],
  rows: readonly StitchRow[],
  names: PartNames,
): readonly CutPiece[] {
  if (widths.section.kind === "layered") return stripPieces(resolved, widths.section, lengths, rows, names);
  const { materials } = resolved;
  const allowance = widths.section.seamAllowance;
  const part = { role: "outer", name: "", materialId: materials.outer.id, perStrap: 1 };
  return lengths.map((length) => {
    const line = (y: number): PieceLine => ({
      role: "stitch",
      contour: segmentContour(0, y, length.mm, y),
      note: "seam",
    });
    return strip(resolved, part, length, widths.cut, [line(allowance), line(widths.cut - allowance)]);
  });
}
