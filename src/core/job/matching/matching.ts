import type { Orientation } from "../../geometry/pose.ts";
import { apartOn, placeOf, wrapped } from "../../lay/problem/lattice.ts";
import type { LayMatch, LayPattern, LayPhase } from "../../lay/problem/layProblem.ts";
import type { CutPiece } from "../../materials/cutPiece.ts";
import type { Material } from "../../materials/material.ts";
import type { AllowedTurns } from "../../materials/orientations.ts";
import { facesTogether } from "../../materials/spread.ts";
import { spreadOf } from "../../materials/spreadOf.ts";
import type { MatchProblem } from "../../problems/matchProblems.ts";
import type { Project } from "../../project/project.ts";
import { washed } from "../rollStock.ts";
import { turnsOf } from "../turnsAndPins.ts";
import { type Group, inPiece, type Joined, joinedGroups } from "./assembly.ts";

/** How one piece, or its mirror image, is held to the pattern. */
export interface HeldPiece {
  readonly match: LayMatch;
  readonly turns: AllowedTurns;
}

/** What of a cloth's pieces is held to its pattern. */
export interface Matching {
  readonly pattern: LayPattern;
  readonly phases: Readonly<Record<string, LayPhase>>;
  /** By piece of the cut list: as drawn, and its mirror images. */
  readonly held: ReadonlyMap<CutPiece, { readonly drawn: HeldPiece; readonly mirrored: HeldPiece | null }>;
  /** Matches that cannot be kept; what they ask for is left out. */
  readonly problems: readonly MatchProblem[];
}

/**
 * How the pieces of one cloth have to lie on its pattern for the project's matches; null where its pattern does not
 * repeat or nothing of it is matched. All copies of a group share one phase: any front then meets any gusset.
 */
export function matchingOf(project: Project, material: Material, pieces: readonly CutPiece[]): Matching | null {
  const whole = patternOf(material);
  if (whole === null) return null;
  const pattern = isTurnedOver(material) ? alongOnly(whole) : whole;
  const { groups, problems } = joinedGroups(pieces, project.matches ?? [], project.centred ?? []);
  const all: MatchProblem[] = [...problems];
  const phases: Record<string, LayPhase> = {};
  const held = new Map<CutPiece, { drawn: HeldPiece; mirrored: HeldPiece | null }>();
  for (const group of groups) {
    // Of dropped motifs neither way meets without the other.
    const isLost = pattern !== whole && (whole.halfDrop || asksAcross(group, material, whole));
    if (isLost) all.push({ code: "match-on-layers", path: group.path, materialId: material.id });
    if (isLost && whole.halfDrop) continue;
    const turned = turnedGroup(group, material, pattern);
    if ("code" in turned) {
      all.push(turned);
      continue;
    }
    all.push(...contradictions(group, turned, pattern));
    phases[group.id] = phaseOf(group, turned, pattern, all);
    for (const [piece, one] of turned.held) held.set(piece, one);
  }
  return groups.length === 0 && all.length === 0 ? null : { pattern, phases, held, problems: all };
}

/** Whether some layers lie face down, turned over sideways as on a fold: lines across the roll stay in their place there. */
function isTurnedOver(material: Material): boolean {
  const spread = spreadOf(material);
  return spread !== null && facesTogether(spread);
}

function alongOnly(pattern: LayPattern): LayPattern {
  return { ...pattern, across: null, halfDrop: false };
}

function asksAcross(group: Group, material: Material, pattern: LayPattern): boolean {
  const turned = turnedGroup(group, material, pattern);
  return "code" in turned ? pattern.across !== null : turned.across;
}

/** The pattern as it is when the cloth is cut: washed cloth has shrunk with it. */
function patternOf(material: Material): LayPattern | null {
  const { repeat } = material;
  if (repeat === null) return null;
  const { along, across } = washed(material);
  return {
    along: repeat.along === null ? null : repeat.along * along,
    across: repeat.across === null ? null : repeat.across * across,
    firstAlong: repeat.firstAlong * along,
    firstAcross: repeat.firstAcross * across,
    halfDrop: repeat.halfDrop,
    symmetric: repeat.symmetric,
    tolerance: repeat.tolerance,
  };
}

/** A group that is turned on the cloth: whether its own x lies across the roll, and what of it is matched. */
interface Turned {
  readonly isAcross: boolean;
  readonly along: boolean;
  readonly across: boolean;
  readonly held: ReadonlyMap<CutPiece, { readonly drawn: HeldPiece; readonly mirrored: HeldPiece | null }>;
}

/** The first straight way the whole group may lie, its own x along the roll if it can; else what stands in the way. */
function turnedGroup(group: Group, material: Material, pattern: LayPattern): Turned | MatchProblem {
  let trouble: MatchProblem | null = null;
  for (const isAcross of [false, true]) {
    const way = (ask: Group["asks"][number], axis: "along" | "across"): boolean => {
      if (ask === "x" || ask === "y") return (ask === "x") === (axis === "along") ? !isAcross : isAcross;
      return ask === "both" || ask === axis;
    };
    const isAsked = (axis: "along" | "across"): boolean =>
      pattern[axis] !== null && (pattern.halfDrop || group.asks.some((ask) => way(ask, axis)));
    const [along, across] = [isAsked("along"), isAsked("across")];
    const held = new Map<CutPiece, { drawn: HeldPiece; mirrored: HeldPiece | null }>();
    // Where a pattern has a top, all read it the way the first piece does.
    let reading: readonly [number, number] | null = null;
    let isHeld = true;
    for (const member of group.members) {
      const drawn = heldPiece(member, group, { along, across });
      const turns = straightTurns(turnsOf(member.piece, material), (member.quarter % 2 === 1) !== isAcross);
      const keeps = (match: LayMatch, turn: Orientation): boolean => {
        const { signX, signY } = placeOf(match, turn);
        reading ??= [signX, signY];
        if (pattern.symmetric) return true;
        return (!along || signX === reading[0]) && (!across || signY === reading[1]);
      };
      const allowed = (match: LayMatch): HeldPiece => {
        const orientations = turns.filter((turn) => keeps(match, turn));
        return { match, turns: { orientations, freeTurn: false } };
      };
      const one = {
        drawn: allowed(drawn),
        mirrored: member.piece.mirroredCount > 0 ? allowed(mirroredMatch(member.piece, drawn)) : null,
      };
      const wrong = [
        ...(member.piece.count > 0 ? [one.drawn] : []),
        ...(one.mirrored === null ? [] : [one.mirrored]),
      ].find(({ turns: { orientations } }) => orientations.length === 0);
      if (wrong !== undefined) {
        const isMirrored = wrong === one.mirrored;
        trouble ??= { code: "match-turn-conflict", path: group.path, part: member.piece.partId, isMirrored };
        isHeld = false;
      }
      held.set(member.piece, one);
    }
    if (isHeld) return { isAcross, along, across, held };
  }
  return trouble!;
}

/** Quarter turns with the piece's own x across the roll, or along it. */
function straightTurns({ orientations, freeTurn }: AllowedTurns, isAcross: boolean): readonly Orientation[] {
  const all = freeTurn ? [0, 90, 180, 270].map((turnDeg) => ({ turnDeg, mirrored: false })) : orientations;
  return all.filter(({ turnDeg, mirrored }) => !mirrored && turnDeg % 180 === (isAcross ? 90 : 0));
}

/** All places of a group fall together where the first piece has its own. */
function heldPiece(
  member: Joined,
  group: Group,
  axes: { readonly along: boolean; readonly across: boolean },
): LayMatch {
  const [x, y] = inPiece(member, 0, 0);
  const { quarter } = member;
  return {
    ...{ group: group.id, x, y, ...axes },
    senseX: quarter === 0 || quarter === 1 ? 1 : -1,
    senseY: quarter === 0 || quarter === 3 ? 1 : -1,
  };
}

/** The same for the mirror image across the grain arrow, read across the other way. */
function mirroredMatch(piece: CutPiece, match: LayMatch): LayMatch {
  const ring = piece.outline.outer;
  let [low, high] = [Infinity, -Infinity];
  for (let i = 1; i < ring.length; i += 2) {
    low = Math.min(low, ring[i]!);
    high = Math.max(high, ring[i]!);
  }
  return { ...match, y: low + high - match.y, senseY: match.senseY === 1 ? -1 : 1 };
}

/** A distance in the group as it lies along and across the cloth. */
function onCloth({ isAcross }: Turned, x: number, y: number): { readonly along: number; readonly across: number } {
  return isAcross ? { along: y, across: x } : { along: x, across: y };
}

/** Seams of which the places do not fall together on the pattern, since other seams say otherwise. */
function contradictions(group: Group, turned: Turned, pattern: LayPattern): MatchProblem[] {
  return group.rings.flatMap(({ x, y, part, path }): MatchProblem[] => {
    const apart = onCloth(turned, x, y);
    const off = (axis: "along" | "across"): number => (turned[axis] ? apartOn(apart[axis], 0, pattern[axis]!) : 0);
    const offMm = Math.max(off("along"), off("across"));
    if (offMm <= pattern.tolerance) return [];
    return [{ code: "match-contradicts", path, part, offMm, mostMm: pattern.tolerance }];
  });
}

/** The phase that parts with their own place on the pattern ask for, read as the first piece of the group is. */
function phaseOf(group: Group, turned: Turned, pattern: LayPattern, problems: MatchProblem[]): LayPhase {
  const phase: { along: number | null; across: number | null } = { along: null, across: null };
  for (const { x, y, wish, path } of group.centres) {
    if (wish.on === "same-place") continue;
    const there = onCloth(turned, x, y);
    for (const axis of ["along", "across"] as const) {
      const repeat = pattern[axis];
      const isAsked = (wish.axes ?? "both") === "both" || wish.axes === axis || pattern.halfDrop;
      if (repeat === null || !turned[axis] || !isAsked) continue;
      const wanted = wrapped((wish.on === "between" ? repeat / 2 : 0) - there[axis], repeat);
      const known = phase[axis];
      if (known === null) phase[axis] = wanted;
      else if (apartOn(known, wanted, repeat) > pattern.tolerance)
        problems.push({
          ...{ code: "match-contradicts", path, part: wish.part, mostMm: pattern.tolerance },
          offMm: apartOn(known, wanted, repeat),
        });
    }
  }
  return phase;
}
