import { contourBox } from "../../core/geometry/contourArcs.ts";
import type { CutPiece } from "../../core/materials/cutPiece.ts";
import { contourPath } from "./screenPath.ts";

/** A piece as it is cut, with its lines and its grain arrow, in true proportion. */
export function PiecePicture({ piece, name }: { piece: CutPiece; name?: string }) {
  const box = contourBox(piece.contour);
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const pad = Math.max(width, height) * 0.02;
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: named by aria-label, or hidden beside its name
    <svg
      class="drawing piece-picture"
      viewBox={`${box.minX - pad} ${-box.maxY - pad} ${width + 2 * pad} ${height + 2 * pad}`}
      preserveAspectRatio="xMidYMid meet"
      {...(name === undefined ? { "aria-hidden": "true" as const } : { role: "img" as const, "aria-label": name })}
    >
      <PieceArt piece={piece} />
    </svg>
  );
}

/** The lines of a piece and its grain arrow, in mm, y down. */
export function PieceArt({ piece }: { piece: CutPiece }) {
  const box = contourBox(piece.contour);
  const middle = (box.minY + box.maxY) / 2;
  const half = (box.maxX - box.minX) * 0.25;
  const head = Math.min(half * 0.3, (box.maxY - box.minY) * 0.2);
  const at = (box.minX + box.maxX) / 2;
  const arrow = `M${at - half} ${middle}H${at + half}m${-head} ${head / 2}L${at + half} ${middle}l${-head} ${-head / 2}`;
  return (
    <g transform="scale(1 -1)">
      <path class="tone-piece ink-cut" d={contourPath(piece.contour)} />
      {piece.lines.map((line, i) => (
        <path key={i} class={`ink-${line.role}`} d={contourPath(line.contour)} />
      ))}
      {piece.grain !== "free" && <path class="ink-grain" d={arrow} />}
    </g>
  );
}
