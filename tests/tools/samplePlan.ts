import { readFileSync } from "node:fs";
import { type LaySheet, layDrawing, type PieceArt } from "../../src/core/drawing/lay/layDrawing.ts";
import { pieceArt } from "../../src/core/drawing/lay/pieceArt.ts";
import type { Contour } from "../../src/core/geometry/contour.ts";
import { flattenContour } from "../../src/core/geometry/contourArcs.ts";
import { rectangleContour, segmentContour } from "../../src/core/geometry/contourShapes.ts";
import { solid } from "../../src/core/geometry/ring.ts";
import type { LayPlan, RollStock, StockPlacement } from "../../src/core/lay/problem/layProblem.ts";
import type { CutPiece } from "../../src/core/materials/cutPiece.ts";
import type { FontBytes } from "../../src/export/fonts/faces.ts";

const packaged = (path: string): Uint8Array =>
  new Uint8Array(readFileSync(new URL(`../../node_modules/${path}`, import.meta.url)));

/** The fonts that the CLI embeds. */
export const FONTS: FontBytes = {
  regular: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf"),
  bold: packaged("dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf"),
  fallbacks: [
    async () => packaged("@fontsource/noto-emoji/files/noto-emoji-emoji-400-normal.woff"),
    async () => packaged("@fontsource/unifontex/files/unifontex-latin-400-normal.woff"),
  ],
};

/** A rounded rectangle with its arcs. */
export function roundedContour(width: number, height: number, radius: number): Contour {
  const b = Math.SQRT2 - 1;
  const [r, w, h] = [radius, width, height];
  const corners = [r, 0, 0, w - r, 0, b, w, r, 0, w, h - r, b, w - r, h, 0, r, h, b, 0, h - r, 0, 0, r, b];
  return { vertices: Float64Array.from(corners), closed: true };
}

/** A piece of a cut list with an outline and little else. */
export function samplePiece(id: string, contour: Contour, more: Partial<CutPiece> = {}): CutPiece {
  return {
    id,
    name: id,
    partId: id,
    materialId: "canvas",
    kind: "panel",
    contour,
    outline: solid(flattenContour(contour)),
    lines: [],
    count: 1,
    mirroredCount: 0,
    grain: "lengthwise",
    ...more,
  };
}

const folds = [24, 49, 74].map((y) => ({ role: "fold" as const, contour: segmentContour(0, y, 560, y) }));

/** Two straps, a body with round corners, a flap, and a tab turned a quarter, on a roll 480 mm wide. */
export const PIECES: readonly CutPiece[] = [
  samplePiece("strap", rectangleContour(0, 0, 560, 98), {
    name: "Shoulder strap",
    kind: "strip",
    lines: folds,
    count: 2,
  }),
  samplePiece("body", roundedContour(300, 240, 45), { name: "Body" }),
  samplePiece("flap", roundedContour(240, 180, 80), { name: "Flap" }),
  samplePiece("tab", rectangleContour(0, 0, 60, 40), { name: "Tab" }),
];

export const STOCK: RollStock = { kind: "roll", id: "roll", width: 480, length: null, flaws: [] };

const at = (pieceId: string, copy: number, x: number, y: number, turnDeg = 0): StockPlacement => ({
  pieceId,
  copy,
  x,
  y,
  turnDeg,
  mirrored: false,
  stockId: "roll",
});

export const PLAN: LayPlan = {
  materialId: "canvas",
  placements: [
    at("strap", 0, 5, 5),
    at("strap", 1, 5, 110),
    at("body", 0, 5, 220),
    at("flap", 0, 315, 220),
    at("tab", 0, 620, 30, 90),
  ],
  unplaced: [],
  uses: [{ stockId: "roll", usedLength: 630, bound: null }],
  evaluations: 1,
  seed: 1,
};

/** The sample plan drawn. */
export function sampleSheet(pieces: readonly CutPiece[] = PIECES): LaySheet {
  const art: Map<string, PieceArt> = pieceArt(pieces, "cm");
  return layDrawing(STOCK, PLAN, art, "both");
}
