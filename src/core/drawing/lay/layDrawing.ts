import { type Box, ringBox } from "../../geometry/box.ts";
import { boxIndex } from "../../geometry/boxIndex.ts";
import type { Contour } from "../../geometry/contour.ts";
import { flattenContour, poseContour } from "../../geometry/contourArcs.ts";
import { ringContour, segmentContour } from "../../geometry/contourShapes.ts";
import { posePolygon } from "../../geometry/pose.ts";
import type { Polygon, Ring } from "../../geometry/ring.ts";
import type { LayPattern, LayPlan, Stock, StockPlacement } from "../../lay/problem/layProblem.ts";
import type { PieceLine } from "../../materials/cutPiece.ts";
import type { Language } from "../../units/language.ts";
import type { PaperTexts } from "../../words/paperTexts.ts";
import { PAPER_TEXTS } from "../../words/words.ts";
import { type Drawing, type DrawingItem, pieceKey } from "../list/drawing.ts";
import { drawArea, drawLine, drawText } from "../list/items.ts";
import { labelSpot } from "../list/labelSpot.ts";
import { plainLine, textWidth } from "../list/textWidth.ts";
import { blockHeight, type GrainArrow, labelBlock, sizeOf } from "./labelBlock.ts";
import { patternArt } from "./patternArt.ts";

/** What is drawn of a kind of piece, in the frame of its lay piece (mirrored already when it is a mirror image). */
export interface PieceArt {
  readonly name: string;
  /** Second line of the label, such as the size; may be empty. */
  readonly detail: string;
  /** Cut line with its arcs. */
  readonly contour: Contour;
  /** What of the cut line is cut, where that is not all: the edge on the fold is not. */
  readonly cutLine?: Contour;
  /** Cut line flattened, with its holes. */
  readonly outline: Polygon;
  readonly lines: readonly PieceLine[];
  readonly count: number;
}

/** One copy of a piece where it lies. */
export interface LaidCopy {
  readonly key: string;
  readonly pieceId: string;
  readonly copy: number;
  readonly name: string;
  readonly outline: Polygon;
}

/** One stock with what was laid on it, and its drawing. */
export interface LaySheet {
  readonly stockId: string;
  /** Drawn when it is first asked for: many ask only where the pieces lie. */
  readonly drawing: Drawing;
  readonly copies: readonly LaidCopy[];
  /** Used length along the roll, mm. */
  readonly usedLength: number;
}

const SIZES = [8, 6, 5, 4, 3, 2.4, 1.8];

/**
 * The pieces that lie on one stock, drawn on its cloth; names keep off the `seams`, where sheets of paper are taped
 * together, wherever a piece has room beside them. The cloth's `pattern`, where something is matched on it, lies over
 * the pieces as areas: it is nothing to cut. Cost O(points).
 */
export function layDrawing(
  stock: Stock,
  plan: LayPlan,
  art: ReadonlyMap<string, PieceArt>,
  grain: GrainArrow,
  language: Language = "en",
  seams: readonly Box[] = [],
  pattern?: LayPattern,
): LaySheet {
  const placements = plan.placements.filter((placement) => placement.stockId === stock.id);
  const usedLength = plan.uses.find((use) => use.stockId === stock.id)?.usedLength ?? 0;
  const texts = PAPER_TEXTS[language].pieces;
  const laid = placements.map((placement) => {
    const piece = art.get(placement.pieceId);
    if (!piece) throw new RangeError(`layDrawing: no drawing for piece ${placement.pieceId}`);
    return { placement, piece, copy: laidCopy(placement, piece) };
  });
  const draw = (): Drawing => {
    const ground = groundOf(stock, usedLength, texts.fold);
    const items: DrawingItem[] = [...ground.items];
    const seamsNear = boxIndex(seams, (seam) => seam);
    const rooms = new Map<string, LabelRooms>();
    for (const { placement, piece, copy } of laid) {
      const near = seamsNear(ringBox(copy.outline.outer));
      items.push(...pieceItems(piece, placement, copy, { grain, texts, seams: near, rooms }));
    }
    if (pattern !== undefined) {
      const marks = patternArt(pattern, stock, usedLength);
      putUnderLines(
        items,
        marks.map((contours) => drawArea("pattern", contours)),
      );
    }
    return { box: ground.box, items };
  };
  let drawn: Drawing | null = null;
  return {
    stockId: stock.id,
    get drawing(): Drawing {
      drawn ??= draw();
      return drawn;
    },
    copies: laid.map(({ copy }) => copy),
    usedLength,
  };
}

/** Puts areas over all areas and under all lines: pieces do not hide the pattern they lie on. */
function putUnderLines(items: DrawingItem[], marks: readonly DrawingItem[]): void {
  const areas = items.filter(({ kind }) => kind === "area");
  const rest = items.filter(({ kind }) => kind !== "area");
  items.splice(0, items.length, ...areas, ...marks, ...rest);
}

/** How pieces are to be labelled. */
interface LabelWish {
  readonly grain: GrainArrow;
  readonly texts: PaperTexts["pieces"];
  readonly seams: readonly Box[];
  /** What is known of pieces that lie the same way and have a name as long. */
  readonly rooms: Map<string, LabelRooms>;
}

/** For each way to put a label, whether there is room for it where no seam is near; filled as it is asked. */
type LabelRooms = Map<string, "none" | "crossed" | "clear">;

function laidCopy(placement: StockPlacement, piece: PieceArt): LaidCopy {
  return {
    key: pieceKey(placement.pieceId, placement.copy),
    pieceId: placement.pieceId,
    copy: placement.copy,
    name: plainLine(piece.name),
    outline: posePolygon(piece.outline, placement),
  };
}

/** Height of the letters along the fold, mm. */
const FOLD_TEXT = 6;

function groundOf(stock: Stock, usedLength: number, foldText: string): Drawing {
  const rings: Ring[] =
    stock.kind === "roll"
      ? [Float64Array.of(0, 0, usedLength, 0, usedLength, stock.width, 0, stock.width)]
      : [stock.outline.outer, ...stock.outline.holes];
  const outline = rings.map(ringContour);
  const items: DrawingItem[] = [drawArea("cloth", outline), ...outline.map((ring) => drawLine("cloth", ring))];
  for (const flaw of stock.flaws) {
    const contours = [flaw.outer, ...flaw.holes].map(ringContour);
    items.push(drawArea("flaw", contours), ...contours.map((ring) => drawLine("flaw", ring)));
  }
  const box = ringBox(rings[0]!);
  if (stock.kind !== "roll" || stock.folded !== true) return { box, items };
  // The fold carries its name below it, off the cloth, where no piece lies.
  const fold = segmentContour(0, 0, usedLength, 0);
  items.push(
    drawLine("fold", fold),
    drawText(foldText, FOLD_TEXT, -1.6 * FOLD_TEXT, FOLD_TEXT, { anchor: "start" }),
  );
  return { box: { ...box, minY: -2 * FOLD_TEXT }, items };
}

/** A piece's area, its lines where they lie, its label and its grain arrow. */
function pieceItems(piece: PieceArt, pose: StockPlacement, copy: LaidCopy, wish: LabelWish): DrawingItem[] {
  const { key, outline } = copy;
  const cut = poseContour(piece.contour, pose);
  const holes = outline.holes.map(ringContour);
  const lines = piece.lines.map((line) => ({ ...line, contour: poseContour(line.contour, pose) }));
  const obstacles = lines.map((line) => flattenContour(line.contour, 0.1));
  const items: DrawingItem[] = [drawArea("piece", [cut, ...holes], key)];
  for (const line of lines) items.push(drawLine(line.role, line.contour, key));
  for (const { text, contour } of lines) if (text !== undefined) items.push(wordsAtEnd(text, contour, key));
  for (const hole of holes) items.push(drawLine("cut", hole, key));
  items.push(drawLine("cut", piece.cutLine ? poseContour(piece.cutLine, pose) : cut, key));
  items.push(...pieceLabel(piece, pose, copy, obstacles, wish));
  return items;
}

/** Words just past the end of a line; no larger than a notch, so that they stand beside it. */
function wordsAtEnd(text: string, { vertices }: Contour, key: string): DrawingItem {
  const [x, y] = [vertices.at(-3)!, vertices.at(-2)!];
  return drawText(text, x + 1, y - 1, 3.5, { anchor: "start", owner: key });
}

/** Name, "2 of 4", size and grain arrow, as large as the piece allows and clear of its lines if it can be. */
function pieceLabel(
  piece: PieceArt,
  pose: StockPlacement,
  copy: LaidCopy,
  obstacles: readonly Ring[],
  wish: LabelWish,
): DrawingItem[] {
  const clear = labelBesides(piece, pose, copy, obstacles, wish);
  return clear.length > 0 || wish.seams.length === 0
    ? clear
    : labelBesides(piece, pose, copy, obstacles, { ...wish, seams: [] });
}

function labelBesides(
  piece: PieceArt,
  pose: StockPlacement,
  copy: LaidCopy,
  obstacles: readonly Ring[],
  { grain, texts, seams, rooms }: LabelWish,
): DrawingItem[] {
  const rings = [copy.outline.outer, ...copy.outline.holes];
  const name = piece.count > 1 ? `${copy.name} · ${texts.copy(copy.copy + 1, piece.count)}` : copy.name;
  const detail = plainLine(piece.detail);
  const blocks = [[name, detail].filter((line) => line !== ""), [name]];
  const like = `${copy.pieceId} ${pose.turnDeg} ${pose.mirrored} ${textWidth(name, 1)}`;
  const known: LabelRooms = rooms.get(like) ?? new Map();
  rooms.set(like, known);
  for (const { turned, crossedToo, least } of LABEL_TRIES) {
    const room = turned ? rings.map(quarterTurned) : rings;
    const lines = turned ? obstacles.map(quarterTurned) : obstacles;
    const bands = turned ? seams.map(turnedBox) : seams;
    for (const text of blocks) {
      for (const size of SIZES) {
        if (size < least) continue;
        const width = Math.max(...text.map((line, i) => textWidth(line, sizeOf(size, i), i === 0)));
        const height = blockHeight(size, text.length) + (grain === "none" ? 0 : size);
        const way = `${turned} ${text.length} ${size}`;
        const found = known.get(way);
        // Seams only take room away; where there is none of them, a line in the way lies there for every copy.
        if (found === "none" || (found === "crossed" && !crossedToo && bands.length === 0)) continue;
        const spot = labelSpot(room, lines, width + size, height + size * 0.5, bands);
        if (bands.length === 0) known.set(way, spot === null ? "none" : spot.crossed ? "crossed" : "clear");
        else if (
          found === undefined &&
          spot === null &&
          labelSpot(room, lines, width + size, height + size * 0.5) === null
        )
          known.set(way, "none");
        if (!spot || (spot.crossed && !crossedToo)) continue;
        const at = turned ? { x: -spot.y, y: spot.x } : spot;
        return labelBlock(text, at, size, turned, grain, copy.key, spot.width);
      }
    }
  }
  return [];
}

/** Ways to put a label, best first: clear of the lines and easy to read, level or along the piece; then what is left. */
const LABEL_TRIES = [
  { turned: false, crossedToo: false, least: 2.4 },
  { turned: true, crossedToo: false, least: 3 },
  { turned: false, crossedToo: false, least: 0 },
  { turned: false, crossedToo: true, least: 3 },
  { turned: true, crossedToo: false, least: 0 },
  { turned: true, crossedToo: true, least: 0 },
] as const;

function turnedBox({ minX, minY, maxX, maxY }: Box): Box {
  return { minX: minY, maxX: maxY, minY: -maxX, maxY: -minX };
}

/** The plane turned a quarter clockwise, so that upright room becomes level room. */
function quarterTurned(points: Ring): Ring {
  const out = new Float64Array(points.length);
  for (let i = 0; i < points.length; i += 2) {
    out[i] = points[i + 1]!;
    out[i + 1] = -points[i]!;
  }
  return out;
}
