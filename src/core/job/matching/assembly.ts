import { contourBox } from "../../geometry/contourArcs.ts";
import type { CutPiece, MatchPlace } from "../../materials/cutPiece.ts";
import type { Centred, Match, MatchAxes } from "../../panels/match.ts";
import type { MatchProblem } from "../../problems/matchProblems.ts";

/** A turn of a piece in quarters, counter-clockwise. */
type Quarter = 0 | 1 | 2 | 3;

/** A piece as it lies beside the others of its group when their matched edges are put together: turned, then shifted. */
export interface Joined {
  readonly piece: CutPiece;
  readonly quarter: Quarter;
  readonly x: number;
  readonly y: number;
}

/** Pieces joined by matches, directly or over others. Of `x` and `y` of the group, the first piece's own. */
export interface Group {
  readonly id: string;
  readonly members: readonly Joined[];
  /** Which repeats have to meet: those along or across the cloth, or the one the way of the first piece's own x or y. */
  readonly asks: readonly (MatchAxes | "x" | "y")[];
  /** Where the middle of a member lies, seen in the group, and on what; path of its wish. */
  readonly centres: readonly {
    readonly x: number;
    readonly y: number;
    readonly wish: Centred;
    readonly path: string;
  }[];
  /** Seams whose two places have to fall together modulo the repeat: those that close a ring. */
  readonly rings: readonly {
    readonly x: number;
    readonly y: number;
    readonly part: string;
    readonly path: string;
  }[];
  /** Where each match is asked for in the project, for problems of the whole group. */
  readonly path: string;
}

/** A seam may turn by this much from a quarter, degrees. */
const MOST_SLANT = 30;

const COS = [1, 0, -1, 0] as const;
const SIN = [0, 1, 0, -1] as const;

/** A place of a joined piece as it lies in the group. */
function inGroup({ quarter, x, y }: Joined, px: number, py: number): readonly [number, number] {
  return [COS[quarter] * px - SIN[quarter] * py + x, SIN[quarter] * px + COS[quarter] * py + y];
}

/** A place of the group in a piece's own frame. */
export function inPiece({ quarter, x, y }: Joined, gx: number, gy: number): readonly [number, number] {
  const [c, s] = [COS[quarter], SIN[quarter]];
  return [c * (gx - x) + s * (gy - y), -s * (gx - x) + c * (gy - y)];
}

/**
 * The groups of pieces of one cloth, put together edge to edge: every piece in its place beside the first it meets.
 * Pieces that only have their own place on the pattern are groups of their own.
 *
 * Errors: edges that meet at a slant, told at `matches[i]`; they are left out.
 */
export function joinedGroups(
  pieces: readonly CutPiece[],
  matches: readonly Match[],
  centred: readonly Centred[],
): { readonly groups: readonly Group[]; readonly problems: readonly MatchProblem[] } {
  const problems: MatchProblem[] = [];
  const seams = matches.flatMap((match, index) => {
    const first = sideOf(pieces, index, "first");
    const second = sideOf(pieces, index, "second");
    return first && second ? [{ match, index, first, second, used: false }] : [];
  });
  const groups: Group[] = [];
  const taken = new Set<CutPiece>();
  const wishes = (piece: CutPiece) =>
    centred.flatMap((wish, i) => (wish.part === piece.partId ? [{ wish, path: `centred[${i}]` }] : []));
  for (const root of pieces) {
    const isAsked = seams.some(({ first, second }) => first.piece === root || second.piece === root);
    if (taken.has(root) || (!isAsked && wishes(root).length === 0)) continue;
    taken.add(root);
    const members: Joined[] = [{ piece: root, quarter: 0, x: 0, y: 0 }];
    const asks: Group["asks"][number][] = [];
    const rings: Group["rings"][number][] = [];
    const paths: string[] = [];
    for (let next = 0; next < members.length; next++) {
      const here = members[next]!;
      for (const seam of seams) {
        if (seam.used || (seam.first.piece !== here.piece && seam.second.piece !== here.piece)) continue;
        seam.used = true;
        const path = `matches[${seam.index}]`;
        const isFirst = seam.first.piece === here.piece;
        const [mine, other] = isFirst ? [seam.first, seam.second] : [seam.second, seam.first];
        const { quarter, byDeg } = turnBeside(here, mine.place, other.place);
        if (byDeg > MOST_SLANT) {
          const [first, second] = [seam.match.first.panel, seam.match.second.panel];
          problems.push({ code: "match-aslant", path, first, second, byDeg });
          continue;
        }
        paths.push(path);
        asks.push(seam.match.axes ?? wayOf(here, mine.place));
        const [gx, gy] = inGroup(here, mine.place.x, mine.place.y);
        const known = members.find(({ piece }) => piece === other.piece);
        if (known !== undefined) {
          const [ox, oy] = inGroup(known, other.place.x, other.place.y);
          rings.push({ x: ox - gx, y: oy - gy, part: other.piece.partId, path });
          continue;
        }
        const turned = inGroup({ piece: other.piece, quarter, x: 0, y: 0 }, other.place.x, other.place.y);
        members.push({ piece: other.piece, quarter, x: gx - turned[0], y: gy - turned[1] });
        taken.add(other.piece);
      }
    }
    const centres = members.flatMap((member) =>
      wishes(member.piece).map((wish) => {
        const [x, y] = inGroup(member, ...middleOf(member.piece));
        return { x, y, ...wish };
      }),
    );
    groups.push({
      ...{ id: root.id, members, rings, centres },
      asks: [...asks, ...centres.map(({ wish }) => wish.axes ?? "both")],
      path: paths[0] ?? centres[0]?.path ?? "matches",
    });
  }
  return { groups, problems };
}

function sideOf(
  pieces: readonly CutPiece[],
  match: number,
  side: MatchPlace["side"],
): { readonly piece: CutPiece; readonly place: MatchPlace } | null {
  for (const piece of pieces) {
    const place = piece.matchPlaces?.find((one) => one.match === match && one.side === side);
    if (place) return { piece, place };
  }
  return null;
}

/** How a piece is turned when its edge lies against that of one already there: outward directions point at each other. */
function turnBeside(here: Joined, mine: MatchPlace, other: MatchPlace): { quarter: Quarter; byDeg: number } {
  const [c, s] = [COS[here.quarter], SIN[here.quarter]];
  const wanted = Math.atan2(-(s * mine.out[0] + c * mine.out[1]), -(c * mine.out[0] - s * mine.out[1]));
  const turn = ((wanted - Math.atan2(other.out[1], other.out[0])) * 180) / Math.PI;
  const quarters = Math.round(turn / 90);
  return { quarter: (((quarters % 4) + 4) % 4) as Quarter, byDeg: Math.abs(turn - 90 * quarters) };
}

/** Which way an edge runs in its group. */
function wayOf({ quarter }: Joined, { out }: MatchPlace): "x" | "y" {
  const isUpright = Math.abs(out[0]) > Math.abs(out[1]);
  return isUpright === (quarter % 2 === 0) ? "y" : "x";
}

/** The middle of a piece: of its stitch line where it has one. */
function middleOf(piece: CutPiece): readonly [number, number] {
  const stitch = piece.lines.find(({ role, contour }) => role === "stitch" && contour.closed);
  const { minX, minY, maxX, maxY } = contourBox(stitch?.contour ?? piece.contour);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}
