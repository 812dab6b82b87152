import { contourBox, poseContour } from "../../core/geometry/contourArcs.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import { PieceArt } from "./PiecePicture.tsx";

/** What every picture of a shelf shows, mm: as wide and as high as the largest of its pieces needs. */
export interface ShelfFrame {
  readonly width: number;
  readonly height: number;
}

/** Width of a card's picture by its height. */
const CARD = 1.6;
/** A strip so many times longer than wide is drawn broken rather than making all others small. */
const STRIP = 4;
/** Room between the two ends of a broken strip, share of the frame. */
const BREAK = 0.07;

type Size = readonly [number, number];

function sizeOf(piece: CutPiece): Size {
  const box = contourBox(piece.contour);
  return [box.maxX - box.minX, box.maxY - box.minY];
}

function isStrip([along, across]: Size): boolean {
  return Math.max(along, across) > STRIP * Math.min(along, across);
}

/** The one frame of all pictures, so that all pieces are seen at one scale. */
export function frameOf(pieces: readonly CutPiece[]): ShelfFrame {
  const sizes = pieces.map(sizeOf);
  const bodies = sizes.filter((size) => !isStrip(size));
  // Of straps alone a strap's length is no measure: a hand's breadth is.
  const counted =
    bodies.length > 0 ? bodies : sizes.map(([along, across]): Size => [Math.min(along, across) * STRIP, 0]);
  const height = Math.max(1, ...counted.map(([along, across]) => Math.max(across, along / CARD))) * 1.04;
  return { width: height * CARD, height };
}

/** A piece on a shelf, at the scale of all; a strip that is longer than the card is drawn with its middle left out. */
export function ShelfPicture(props: { piece: CutPiece; frame: ShelfFrame }) {
  const { piece, frame } = props;
  const lying = sizeOf(piece);
  // A strip that stands across is laid along, so that both its ends are seen.
  const shown = lying[1] > frame.height && isStrip(lying) ? turned(piece) : piece;
  const box = contourBox(shown.contour);
  const { width, height } = frame;
  const middle = (box.minY + box.maxY) / 2;
  const top = -middle - height / 2;
  const art = <PieceArt piece={shown} />;
  const isBroken = box.maxX - box.minX > width;
  const end = (width * (1 - BREAK)) / 2;
  const zig = width * BREAK * 0.3;
  const half = (box.maxY - box.minY) / 2 + zig;
  return (
    <svg class="drawing shelf-picture" viewBox={`0 ${top} ${width} ${height}`} aria-hidden="true">
      {isBroken ? (
        <>
          {[0, width - end].map((x) => (
            // biome-ignore lint/a11y/noSvgWithoutTitle: hidden beside its name
            <svg
              key={x}
              x={x}
              y={top}
              width={end}
              height={height}
              viewBox={`${x === 0 ? box.minX - width * 0.01 : box.maxX - end + width * 0.01} ${top} ${end} ${height}`}
            >
              {art}
            </svg>
          ))}
          {[end, width - end].map((x) => (
            <path
              key={x}
              class="strip-break"
              d={`M${x} ${-middle - half}l${zig} ${half * 0.8}l${-2 * zig} ${half * 0.4}l${zig} ${half * 0.8}`}
            />
          ))}
        </>
      ) : (
        <g transform={`translate(${width / 2 - (box.minX + box.maxX) / 2} 0)`}>{art}</g>
      )}
    </svg>
  );
}

/** The piece turned by a quarter, for looking at: a body that lies along the grain stands upright. */
export function turned(piece: CutPiece): CutPiece {
  const pose = { x: 0, y: 0, turnDeg: 90, mirrored: false };
  return {
    ...piece,
    grain: "free",
    contour: poseContour(piece.contour, pose),
    lines: piece.lines.map((line) => ({ ...line, contour: poseContour(line.contour, pose) })),
  };
}
