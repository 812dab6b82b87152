import { ringBox } from "../geometry/box.ts";
import type { Orientation } from "../geometry/pose.ts";
import { polygonArea } from "../geometry/ring.ts";
import type {
  AskedPiece,
  LayerYield,
  LayPiece,
  LayProblem,
  LaySpread,
  RollStock,
  StockPlacement,
} from "../lay/problem/layProblem.ts";
import { type Extent, fitsBox, pieceExtents } from "../lay/problem/pieceExtent.ts";
import type { CutPiece } from "../materials/cutPiece.ts";
import { foldHalf } from "../materials/foldHalf.ts";
import type { Material } from "../materials/material.ts";
import { mirrorImage } from "../materials/mirrorImage.ts";
import { type AllowedTurns, turnedOver } from "../materials/orientations.ts";
import { facesTogether, layersOf, type Spread } from "../materials/spread.ts";
import type { ClothRoll } from "../materials/stock.ts";
import { isEitherHand } from "../materials/symmetry.ts";
import { LEAST_STRIP, type Project } from "../project/project.ts";
import { oneWayAndShade } from "./bagBands.ts";
import { chooseHalves, type FoldKind } from "./foldChoice.ts";
import { foldRow, withoutSpare } from "./foldRow.ts";
import { type HeldPiece, type Matching, matchingOf } from "./matching/matching.ts";
import { spreadRoll } from "./rollStock.ts";
import { pinsOf, turnsOf } from "./turnsAndPins.ts";

/** What is common to the pieces of one cloth. */
interface Bench {
  readonly material: Material;
  readonly spread: Omit<LaySpread, "asked">;
  readonly stocks: readonly RollStock[];
  readonly margin: number;
  readonly matching: Matching | null;
  /** Nothing lies on the fold that fits beside it. */
  readonly isOffFold: boolean;
}

/** How one piece of the cut list is laid on top. */
interface Laid {
  readonly asked: AskedPiece;
  /** What is laid beside the fold when `onFold` of it lie on the fold. */
  readonly beside: (onFold: number) => LayPiece[];
  /** Half of it, as it lies on the fold; null where it never does. */
  readonly half: Omit<LayPiece, "count"> | null;
  /** How many lie on the fold at least, and at most. */
  readonly least: number;
  readonly most: number;
  /** Cloth all its pieces take of the top layer, mm². */
  readonly area: number;
}

/**
 * The lay problem of the top layer of a spread cloth: copies are those laid there, each giving as many pieces as there
 * are layers, mirror images among them where right sides lie together.
 *
 * On cloth folded lengthwise, panels drawn on a fold lie on it one behind the other, as many as lengthen the plan by
 * nothing; more of them are laid whole, in pairs. The odd one of any piece whose halves are alike lies there too, and one
 * too long to lie beside the fold. Pins hold them there; the rest is laid round them. Limited rolls come before an open one; leftovers and skins, which are cut singly, are not laid on.
 */
export function spreadProblem(
  project: Project,
  material: Material,
  spread: Spread,
  cut: readonly CutPiece[],
): LayProblem {
  const problem = (isOffFold: boolean): LayProblem => problemOnTop(project, material, spread, cut, isOffFold);
  if (material.shadeBand === undefined) return problem(false);
  // What lies on the fold is held there; where that keeps bags together, all that can lies beside it.
  const beside = problem(true);
  return beside.shade === undefined ? problem(false) : beside;
}

function problemOnTop(
  project: Project,
  material: Material,
  spread: Spread,
  cut: readonly CutPiece[],
  isOffFold: boolean,
): LayProblem {
  const rolls = material.stock.filter((stock): stock is ClothRoll => stock.kind === "roll");
  const ordered = [
    ...rolls.filter(({ length }) => length !== null),
    ...rolls.filter(({ length }) => length === null),
  ];
  const gap = material.gap ?? project.gap;
  const bench: Bench = {
    material,
    spread: {
      layers: layersOf(spread),
      faces: facesTogether(spread) ? "together" : "up",
      folded: spread.kind === "folded",
      facesAlike: material.facesAlike,
    },
    stocks: ordered.map((roll) => spreadRoll(roll, material, spread)),
    margin: material.margin ?? project.margin,
    matching: matchingOf(project, material, cut),
    isOffFold,
  };
  const laid = cut.map((piece) => laidPiece(piece, bench));
  const usual = halvesToLay(laid, bench, gap);
  const chosen = chosenHalves(laid, bench, gap, usual);
  const onFold = chosen === null ? usual : chosen.onFold;
  const beside = laid.flatMap((one) => one.beside(0));
  const byHand = pinsOf(project, material.id, [...beside, ...onFold], bench.stocks);
  // What the maker has put down stands; the row gives way to it.
  const row =
    chosen !== null && byHand.length === 0
      ? chosen.row
      : withoutSpare(laid, foldRow(onFold, bench.stocks, { gap, margin: bench.margin, byHand, beside }));
  const pieces = laid.flatMap(({ half, beside: rest }): LayPiece[] => {
    const there = half === null ? 0 : row.filter(({ pieceId }) => pieceId === half.id).length;
    return [...rest(there), ...(half === null || there === 0 ? [] : [{ ...half, count: there }])];
  });
  const counts = new Map(pieces.map(({ id, count }) => [id, count]));
  const halves = new Set(onFold.map(({ id }) => id));
  const spreadOut = { ...bench.spread, asked: laid.map(({ asked }) => asked) };
  const pinned = byHand.filter(({ pieceId, copy }) => !halves.has(pieceId) && copy < (counts.get(pieceId) ?? 0));
  return {
    materialId: material.id,
    pieces,
    stocks: bench.stocks,
    gap,
    margin: bench.margin,
    leastStrip: project.leastStrip ?? LEAST_STRIP,
    pinned: [...row, ...pinned],
    ...(bench.matching === null || bench.matching.held.size === 0
      ? {}
      : { pattern: bench.matching.pattern, phases: bench.matching.phases }),
    ...oneWayAndShade(material, project.bags, { pieces, spread: spreadOut }),
    spread: spreadOut,
  };
}

/** The halves to lie on the fold: those that must, then the deepest that a plan as full as most takes no longer for. */
function halvesToLay(laid: readonly Laid[], { stocks }: Bench, gap: number): LayPiece[] {
  const width = Math.max(...stocks.map((stock) => stock.width));
  const length = laid.reduce((sum, { area }) => sum + area, 0) / (width * USUAL_FILL);
  const halves = laid.flatMap(({ half, least, most }) =>
    half === null || most === 0 ? [] : [{ half, least, most, box: ringBox(half.outline.outer) }],
  );
  const long = ({ box }: (typeof halves)[number]): number => box.maxX - box.minX + gap;
  let row = halves.reduce((sum, each) => sum + each.least * long(each), 0);
  return [...halves]
    .sort((a, b) => b.box.maxY - a.box.maxY)
    .flatMap((each): LayPiece[] => {
      // Those beside the fold come in pairs, so those on it are taken in pairs too.
      const pairs = Math.min((each.most - each.least) / 2, Math.max(0, (length - row) / (2 * long(each))));
      const count = each.least + 2 * Math.floor(pairs);
      row += (count - each.least) * long(each);
      return count === 0 ? [] : [{ ...each.half, count }];
    });
}

interface ChosenHalves {
  readonly onFold: LayPiece[];
  readonly row: StockPlacement[];
}

/**
 * The halves that a look at all pieces as boxes puts on the fold, and where, on one open roll without flaws; null where
 * that is no shorter than the usual ones in a row.
 */
function chosenHalves(
  laid: readonly Laid[],
  { stocks, margin }: Bench,
  gap: number,
  usual: readonly LayPiece[],
): ChosenHalves | null {
  const [stock] = stocks;
  if (stocks.length !== 1 || stock!.length !== null || stock!.flaws.length > 0) return null;
  const can = laid.filter(({ half, most }) => half !== null && most > 0);
  if (can.length === 0) return null;
  const kinds = can.map(({ half, beside, asked, least, most }): FoldKind => {
    const [whole] = beside(0);
    const box = ringBox(half!.outline.outer);
    return {
      half: { along: box.maxX - box.minX, across: box.maxY },
      whole: least === asked.asDrawn || whole === undefined ? [] : pieceExtents(whole),
      count: asked.asDrawn,
      most,
    };
  });
  const others = laid
    .filter((one) => !can.includes(one))
    .flatMap(({ beside }) =>
      beside(0).flatMap((piece) => Array(piece.count).fill(pieceExtents(piece)) as Extent[][]),
    );
  const counts = can.map(({ half }) => usual.find(({ id }) => id === half!.id)?.count ?? 0);
  const places = chooseHalves(kinds, others, counts, { width: stock!.width, margin, gap });
  if (places === null) return null;
  const onFold = can.flatMap(({ half }, kind): LayPiece[] => {
    const count = places.filter((place) => place.kind === kind).length;
    return count === 0 ? [] : [{ ...half!, count }];
  });
  const row = can.flatMap(({ half }, kind) =>
    places
      .filter((place) => place.kind === kind)
      .map(({ x }, copy): StockPlacement => {
        const { minX } = ringBox(half!.outline.outer);
        return { pieceId: half!.id, stockId: stock!.id, copy, x: x - minX, y: 0, turnDeg: 0, mirrored: false };
      }),
  );
  return { onFold, row };
}

/** Share of the cloth that the pieces of a usual plan cover; no promise, a measure of how long it may be. */
const USUAL_FILL = 0.8;

function laidPiece(piece: CutPiece, bench: Bench): Laid {
  const { material, spread } = bench;
  const held = bench.matching?.held.get(piece);
  const turns = turnsOf(piece, material);
  const { layers, faces, folded, facesAlike } = spread;
  // What is matched lies one way only, so its mirror image is another piece where it would have to be turned.
  const either = facesAlike || isEitherHand(piece, held?.drawn?.turns ?? turns);
  const [count, mirroredCount] = either
    ? [piece.count + piece.mirroredCount, 0]
    : [piece.count, piece.mirroredCount];
  const asked: AskedPiece = { pieceId: piece.id, asDrawn: count, mirrored: mirroredCount };
  const area = (polygonArea(piece.outline) * (count + mirroredCount)) / layers;
  const off = { asked, area, half: null, least: 0, most: 0 };
  if (!either && faces === "up") return { ...off, beside: () => laidFacesUp(piece, turns, layers, held) };
  const each = either ? { asDrawn: layers, mirrored: 0 } : { asDrawn: layers / 2, mirrored: layers / 2 };
  const lies = either ? turns : { ...turns, orientations: [...turns.orientations, ...turnedOverToo(turns)] };
  const beside = (onFold: number): LayPiece[] => {
    const needed = Math.max((count - onFold) / each.asDrawn, each.mirrored > 0 ? mirroredCount / each.mirrored : 0);
    const copies = Math.ceil(needed);
    const gives = { of: piece.id, ...each, onFold: false };
    return copies === 0 ? [] : [layPiece(piece, piece.id, copies, gives, lies, held?.drawn)];
  };
  // What is held to the pattern lies beside the fold: on it half the cloth would be seen only when it is cut.
  const half = folded && either && held === undefined ? halfOf(piece, turns) : null;
  if (half === null) return { ...off, beside };
  const whole = layPiece(piece, piece.id, 1, { of: piece.id, ...each, onFold: false }, lies, null);
  if (!fitsSomewhere(whole, bench)) return { ...off, beside, half, least: count, most: count };
  if (bench.isOffFold) return { ...off, beside };
  const odd = count % layers;
  return { ...off, beside, half, least: odd, most: piece.onFold === true ? count : odd };
}

/** All layers face up: a piece and its mirror image are laid each for itself. */
function laidFacesUp(
  piece: CutPiece,
  turns: AllowedTurns,
  layers: number,
  held: { readonly drawn: HeldPiece; readonly mirrored: HeldPiece | null } | undefined,
): LayPiece[] {
  const mirrored = mirrorImage(piece);
  const lay = (of: CutPiece, hand: "asDrawn" | "mirrored"): LayPiece => {
    const gives = { of: piece.id, asDrawn: 0, mirrored: 0, onFold: false, [hand]: layers };
    const by = hand === "asDrawn" ? held?.drawn : held?.mirrored;
    return layPiece(of, of.id, Math.ceil(of.count / layers), gives, turns, by);
  };
  return [...(piece.count > 0 ? [lay(piece, "asDrawn")] : []), ...(mirrored ? [lay(mirrored, "mirrored")] : [])];
}

function layPiece(
  { outline }: CutPiece,
  id: string,
  count: number,
  gives: LayerYield,
  { orientations, freeTurn }: AllowedTurns,
  held: HeldPiece | null | undefined,
): LayPiece {
  const lies = held ? { ...held.turns, match: held.match } : { orientations, freeTurn };
  return { id, outline, count, ...lies, gives };
}

/** Right sides together, a piece turned over gives the same pair: it may lie so too. */
function turnedOverToo({ orientations }: AllowedTurns): Orientation[] {
  return orientations.map(({ turnDeg }) => turnedOver(turnDeg));
}

/** The half of a piece that lies on the fold, with its grain on the cloth as it may lie; null where there is none. */
function halfOf(piece: CutPiece, { orientations }: AllowedTurns): Omit<LayPiece, "count"> | null {
  const along = orientations.some(({ turnDeg }) => turnDeg % 180 === 0);
  const across = orientations.some(({ turnDeg }) => Math.abs(turnDeg % 180) === 90);
  const half = (along && foldHalf(piece, "along")) || (across && foldHalf(piece, "across")) || null;
  if (half === null) return null;
  return {
    id: half.id,
    outline: half.outline,
    orientations: [{ turnDeg: 0, mirrored: false }],
    freeTurn: false,
    gives: { of: piece.id, asDrawn: 1, mirrored: 0, onFold: true },
  };
}

function fitsSomewhere(piece: LayPiece, { stocks, margin }: Bench): boolean {
  const extents = pieceExtents(piece);
  return stocks.some((stock) => fitsBox(extents, stock, margin));
}
