import type { Orientation } from "../geometry/pose.ts";
import type { PieceGrain } from "./cutPiece.ts";
import type { Material, OneWay } from "./material.ts";

/** Turns a piece may lie at, and whether any turn at all will do. */
export interface AllowedTurns {
  readonly orientations: readonly Orientation[];
  readonly freeTurn: boolean;
}

const ALONG = [0, 180];
const ACROSS = [90, 270];

/**
 * The direction a piece keeps on a material: the piece's own wish where the material leaves it open, else the
 * material's; null when they contradict each other (a crosswise piece on a material used lengthwise only).
 */
export function grainOn(wish: PieceGrain, rule: PieceGrain): PieceGrain | null {
  if (wish === "free" || wish === rule) return rule;
  if (rule === "free" || rule === "either") return wish;
  return wish === "either" ? rule : null;
}

/**
 * Orientations that grain, nap and faces allow: lengthwise 0 and 180, crosswise 90 and 270, either all four; a
 * one-way material keeps one of each two, or leaves both where the way is free (all pieces then have to lie the same); faces alike add the mirror images. A piece turned over about its grain arrow,
 * half a turn after mirroring left to right, keeps the arrow's way; so that is how it lies on a one-way material.
 *
 * On a one-way material a piece that may lie either way lies lengthwise: its nap would else run two ways.
 * Errors: null when piece and material contradict each other.
 * Source: nap either way, one way: common practice, no source.
 */
export function allowedTurns(
  wish: PieceGrain,
  material: Pick<Material, "grain" | "oneWay" | "facesAlike">,
): AllowedTurns | null {
  const grain = grainOn(wish, material.grain);
  if (grain === null) return null;
  const turns = material.oneWay === false ? bothWayTurns(grain) : oneWayTurns(grain, material.oneWay);
  const plain = turns.map((turnDeg) => ({ turnDeg, mirrored: false }));
  const turned = material.facesAlike ? turns.map(turnedOver) : [];
  return { orientations: [...plain, ...turned], freeTurn: grain === "free" && material.oneWay === false };
}

/** The turn of a piece turned over about its grain arrow, which points the same way as before. */
export function turnedOver(turnDeg: number): Orientation {
  return { turnDeg: (turnDeg + 180) % 360, mirrored: true };
}

function oneWayTurns(grain: PieceGrain, way: OneWay): readonly number[] {
  const [up, down] = grain === "crosswise" ? ACROSS : ALONG;
  if (way === "free") return [up!, down!];
  return way === "up" ? [up!] : [down!];
}

function bothWayTurns(grain: PieceGrain): readonly number[] {
  if (grain === "lengthwise") return ALONG;
  return grain === "crosswise" ? ACROSS : [...ALONG, ...ACROSS].sort((a, b) => a - b);
}
