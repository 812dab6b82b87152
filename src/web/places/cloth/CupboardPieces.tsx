import type { ComponentChildren } from "preact";
import { type CupboardPiece, isPicture } from "../../../core/cupboard/cupboard.ts";
import { contourBox } from "../../../core/geometry/contourArcs.ts";
import { rectangleContour } from "../../../core/geometry/contourShapes.ts";
import { shapeContour } from "../../../core/geometry/shape.ts";
import { useLengths } from "../../fields/units.ts";
import { contourPath } from "../../parts/screenPath.ts";
import { useTexts } from "../../texts/texts.ts";

/** Pieces of the cupboard on cards, each with its outline, its code and what can be done with it. */
export function CupboardPieces(props: {
  pieces: readonly CupboardPiece[];
  children: (piece: CupboardPiece) => ComponentChildren;
}) {
  const words = useTexts().cupboard;
  return (
    <ul class="shelf cupboard">
      {props.pieces.map((piece) => (
        <li key={piece.code} data-code={piece.code}>
          <div class="card">
            {piece.photo !== null && isPicture(piece.photo) && (
              <img class="cupboard-photo" src={piece.photo} alt={words.photoOf(piece.code)} />
            )}
            <Outline piece={piece} />
            <span class="card-name">{piece.code}</span>
            <PieceWords piece={piece} />
          </div>
          <div class="row">{props.children(piece)}</div>
        </li>
      ))}
    </ul>
  );
}

function PieceWords({ piece }: { piece: CupboardPiece }) {
  const words = useTexts().cupboard;
  const lengths = useLengths();
  const { largest, strip, taken, photo } = piece;
  return (
    <span class="soft small">
      {[
        piece.material,
        ...(piece.shade === null ? [] : [piece.shade]),
        ...(piece.source === null ? [] : [piece.source]),
        ...(largest === null ? [] : [words.largest(lengths.box(largest.along, largest.across))]),
        ...(strip === null ? [] : [words.strip(lengths.box(strip.along, strip.across))]),
        ...(photo === null || isPicture(photo) ? [] : [photo]),
        ...(taken === null ? [] : [words.outFor(taken.project)]),
      ].join(" · ")}
    </span>
  );
}

/** The outline with its largest rectangle, as it lies: the lengthwise grain from left to right. */
function Outline({ piece: { stock, largest } }: { piece: CupboardPiece }) {
  const contour =
    stock.kind === "roll"
      ? rectangleContour(0, 0, stock.length ?? stock.width, stock.width)
      : shapeContour(stock.shape);
  const { minX, minY, maxX, maxY } = contourBox(contour);
  const stroke = Math.max(maxX - minX, maxY - minY) / 80;
  const box = [minX - stroke, -maxY - stroke, maxX - minX + 2 * stroke, maxY - minY + 2 * stroke];
  return (
    <svg class="cupboard-outline" viewBox={box.join(" ")} aria-hidden="true">
      <g transform="scale(1 -1)" fill="none" stroke="currentColor" stroke-width={stroke}>
        <path d={contourPath(contour)} fill="var(--cloth, #e8e2d4)" />
        {stock.flaws.map((flaw, i) => (
          <path
            key={String(i)}
            transform={`translate(${flaw.x} ${flaw.y})`}
            d={contourPath(shapeContour(flaw.shape))}
            fill="var(--paper, #fff)"
          />
        ))}
        {largest !== null && (
          <rect
            x={largest.x}
            y={largest.y}
            width={largest.along}
            height={largest.across}
            stroke-dasharray={`${3 * stroke} ${2 * stroke}`}
          />
        )}
      </g>
    </svg>
  );
}
