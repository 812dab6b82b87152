import { ringBox } from "../geometry/box.ts";
import type { Contour } from "../geometry/contour.ts";
import { flattenContour } from "../geometry/contourArcs.ts";
import { straightContour } from "../geometry/contourShapes.ts";
import { solid } from "../geometry/ring.ts";
import { shapePolygon } from "../geometry/shape.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import type { Material } from "../materials/material.ts";
import { grainOn } from "../materials/orientations.ts";
import { spreadOf } from "../materials/spreadOf.ts";
import { type ClothRoll, usableWidth } from "../materials/stock.ts";
import { buildPanel } from "../panels/buildPanel.ts";
import { withMatchSpots } from "../panels/matchSpots.ts";
import { seamLengths, withSeamMarks } from "../panels/seams.ts";
import { sizePanels } from "../panels/sizePanels.ts";
import { failed, ok, type Problem, type Result } from "../problems/problem.ts";
import { buildStrap } from "../straps/build/buildStrap.ts";
import type { StrapResult } from "../straps/build/strapResult.ts";
import type { StrapMaterial, StrapWish } from "../straps/wish/strapWish.ts";
import type { Language } from "../units/language.ts";
import { PANEL_WORDS, STRAP_WORDS } from "../words/words.ts";
import { joinedOnRoll } from "./joinedOnRoll.ts";
import type { Project } from "./project.ts";

/** Every piece to cut for all bags of a project, and the straps worked out on the way. */
export interface CutList {
  /** Counts are for all bags. Ids are unique and the same for the same project. */
  readonly pieces: readonly CutPiece[];
  /** Of one bag, in the project's order. */
  readonly straps: readonly StrapResult[];
  /** Pieces that keep lengthwise because their cloth shrinks differently along and across. */
  readonly heldLengthwise: readonly string[];
}

/** Pieces laid out at a time; far more than a workshop cuts in one go. */
const MOST_PIECES = 20_000;

/**
 * The cut list of a project: straps and panels times the number of bags, cut larger where the finished bag is to be
 * washed and its cloth shrinks: cut = finished ÷ (1 − share).
 *
 * Parts of straps are named in `language`.
 *
 * Errors: every problem of every strap and panel, at its place in the project file.
 */
export function cutListOf(project: Project, language: Language = "en"): Result<CutList> {
  const names = STRAP_WORDS[language].parts;
  const problems: Problem[] = [];
  const materials = project.materials.map(strapMaterial);
  const whole: StrapResult[] = [];
  for (const [i, wish] of project.straps.entries()) {
    const strap = buildStrap(onMachine(project, wish), materials, `straps[${i}].`, names);
    if (strap.ok) whole.push(strap.value);
    else problems.push(...strap.problems);
  }
  const panels: CutPiece[] = [];
  const sized = sizePanels(project.panels, project.measures);
  const seams = sized.ok ? seamLengths(sized.value, project.seams ?? []) : sized;
  if (!seams.ok) problems.push(...seams.problems);
  const marked = sized.ok && seams.ok ? withSeamMarks(sized.value, seams.value) : [];
  const matched = withMatchSpots(marked, sized.ok && seams.ok ? (project.matches ?? []) : []);
  if (!matched.ok) problems.push(...matched.problems);
  for (const [i, panel] of (matched.ok ? matched.value : marked).entries()) {
    const pieces = buildPanel(panel, `panels[${i}].`, PANEL_WORDS[language]);
    if (pieces.ok) panels.push(...pieces.value);
    else problems.push(...pieces.problems);
  }
  if (problems.length > 0) return failed(...problems);
  const pieces = [...whole.flatMap((strap) => strap.pieces), ...panels];
  const straps = whole.map((strap, i) => joinedOnRoll(project, strap, pieces, materials, `straps[${i}].`, names));
  return cutListFrom(project, straps, [...straps.flatMap((strap) => strap.pieces), ...panels]);
}

/** A strap of the project with its sewing machine, where the strap says nothing of its own. */
export function onMachine({ sewingMachine }: Project, wish: StrapWish): StrapWish {
  return sewingMachine === undefined ? wish : { ...wish, machine: { ...sewingMachine, ...wish.machine } };
}

function cutListFrom(
  project: Project,
  straps: readonly StrapResult[],
  ofOneBag: readonly CutPiece[],
): Result<CutList> {
  const count = project.bags * ofOneBag.reduce((sum, piece) => sum + piece.count + piece.mirroredCount, 0);
  if (count > MOST_PIECES) return failed({ code: "too-many-pieces", path: "bags", count, most: MOST_PIECES });
  const byId = new Map(project.materials.map((material) => [material.id, material]));
  const conflicts = ofOneBag.flatMap((piece) => grainConflict(project, piece, byId.get(piece.materialId)!));
  if (conflicts.length > 0) return failed(...conflicts);
  const heldLengthwise: string[] = [];
  const pieces = withUniqueIds(ofOneBag).map((piece) => {
    const cut = enlarged(piece, byId.get(piece.materialId)!);
    if (cut.grain !== piece.grain) heldLengthwise.push(piece.id);
    const spread = spreadOf(byId.get(piece.materialId)!);
    return {
      ...cut,
      count: piece.count * project.bags,
      mirroredCount: piece.mirroredCount * project.bags,
      ...(spread === null ? {} : { spread: spread.kind }),
    };
  });
  return ok({ pieces, straps, heldLengthwise });
}

/** A piece that its material is not used for in that direction: an interfacing, or a strap that its backing keeps lengthwise. */
function grainConflict(project: Project, { partId, grain, materialId }: CutPiece, material: Material): Problem[] {
  if (grainOn(grain, material.grain) !== null) return [];
  const strap = project.straps.findIndex(({ id }) => id === partId);
  const path =
    strap >= 0 ? `straps[${strap}].grain` : `panels[${project.panels.findIndex(({ id }) => id === partId)}].grain`;
  return [{ code: "grain-conflict", path, wish: grain, materialId, rule: material.grain }];
}

/** Ids are made of the ids of straps and panels, which could meet by chance: the later one gets a number. */
function withUniqueIds(pieces: readonly CutPiece[]): CutPiece[] {
  const seen = new Set<string>();
  return pieces.map((piece) => {
    let id = piece.id;
    for (let n = 2; seen.has(id); n++) id = `${piece.id}-${n}`;
    seen.add(id);
    return id === piece.id ? piece : { ...piece, id };
  });
}

/** A material as the strap builder sees it, with the stock that straps could be cut from. */
export function strapMaterial(material: Material): StrapMaterial {
  const rolls = material.stock.filter((stock): stock is ClothRoll => stock.kind === "roll");
  const boxes = material.stock.flatMap((stock) =>
    stock.kind === "roll" ? [] : [ringBox(shapePolygon(stock.shape).outer)],
  );
  const widths = [...rolls.map(usableWidth), ...boxes.map((box) => box.maxY - box.minY)];
  const lengths = [...rolls.map((roll) => roll.length ?? Infinity), ...boxes.map((box) => box.maxX - box.minX)];
  const longest = Math.max(...lengths);
  const { id, name, kind, thickness, backing, fold } = material;
  return {
    id,
    name,
    kind,
    thickness,
    backing,
    fold,
    ...(widths.length > 0 ? { usableWidth: Math.max(...widths) } : {}),
    ...(Number.isFinite(longest) ? { longestPiece: longest } : {}),
  };
}

/** The piece cut large enough to have its size after the wash. */
function enlarged(piece: CutPiece, material: Material): CutPiece {
  const { lengthwise, crosswise, when } = material.shrinkage;
  if (when === "before-cutting" || (lengthwise === 0 && crosswise === 0)) return piece;
  const along = 1 / (1 - lengthwise);
  const across = 1 / (1 - crosswise);
  const grain = grainOn(piece.grain, material.grain);
  if (grain === "crosswise") return scaledPiece(piece, across, along);
  // A piece that could lie either way has one cut size only while both ways shrink alike.
  const open = grain !== "lengthwise" && along !== across && !material.oneWay;
  return scaledPiece(open ? { ...piece, grain: "lengthwise" } : piece, along, across);
}

function scaledPiece(piece: CutPiece, alongPiece: number, acrossPiece: number): CutPiece {
  const contour = scaledContour(piece.contour, alongPiece, acrossPiece);
  return {
    ...piece,
    contour,
    outline: solid(flattenContour(contour)),
    lines: piece.lines.map((line) => ({ ...line, contour: scaledContour(line.contour, alongPiece, acrossPiece) })),
    ...(piece.matchPlaces && {
      matchPlaces: piece.matchPlaces.map((place) => ({
        ...place,
        x: place.x * alongPiece,
        y: place.y * acrossPiece,
      })),
    }),
  };
}

/** Arcs stay arcs only when both ways grow alike; a circle stretched one way is none. */
function scaledContour(contour: Contour, x: number, y: number): Contour {
  const bent = contour.vertices.some((bulge, i) => i % 3 === 2 && bulge !== 0);
  if (x !== y && bent) {
    const ring = flattenContour(contour);
    return straightContour(
      ring.map((value, i) => value * (i % 2 === 0 ? x : y)),
      contour.closed,
    );
  }
  return {
    vertices: contour.vertices.map((value, i) => (i % 3 === 2 ? value : value * (i % 3 === 0 ? x : y))),
    closed: contour.closed,
  };
}
