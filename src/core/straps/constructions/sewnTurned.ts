import { phrase } from "../../words/phrase.ts";
import type { Ply, SectionPlan, SlabPlan, StripPlan } from "../section/foldPlan.ts";
import { skivedEnds } from "../section/skiving.ts";
import type { FoldChoices } from "../wish/strapWish.ts";
import {
  allowanceEdge,
  bothEdges,
  type Construction,
  insideBoth,
  PLAIN,
  type SectionInput,
  TRADE,
} from "./construction.ts";
import { topstitchStep } from "./stepPhrases.ts";

function half(
  ply: Ply,
  levels: readonly [allowance: number, main: number],
  allowance: number,
  wrap: number,
  wrapped: readonly number[],
  choices: FoldChoices,
): StripPlan {
  const edge = (from: "left" | "right") =>
    ({ from, mm: allowanceEdge(allowance, ply, choices) + Math.abs(wrap) }) as const;
  return {
    ply,
    levels: [levels[0], levels[1], levels[0]],
    firstFold: "left",
    start: edge("left"),
    end: edge("right"),
    outsides: insideBoth(Math.max(0, -wrap)),
    wraps: [wrapped, wrapped],
    ...skivedEnds(ply, choices),
    face: 1,
  };
}

/**
 * Two strips sewn right sides together along both edges and turned. With a reveal the outer strip is cut wider and
 * wraps to the back by that much on each side, and the facing is narrower by as much. Padding lies inside the outer
 * strip, whose edges wrap it.
 */
function plan({ outer, facing, padding, choices }: SectionInput): SectionPlan {
  const allowance = choices.seamAllowance ?? TRADE.seamAllowance;
  const reveal = choices.reveal ?? 0;
  const slabs: SlabPlan[] = [];
  const lift = padding === null ? 0 : 1;
  if (padding !== null) {
    const inset = outer.thickness;
    slabs.push({
      role: "padding",
      level: 1,
      thickness: padding,
      insetLeft: inset,
      insetRight: inset,
      square: false,
    });
  }
  return {
    strips: [
      half(outer, [1 + lift, 0], allowance, reveal, padding === null ? [] : [1], choices),
      half(facing, [2 + lift, 3 + lift], allowance, -reveal, [], choices),
    ],
    slabs,
    settles: true,
  };
}

export const sewnTurned: Construction = {
  ...PLAIN,
  id: "sewn-turned",
  heeds: () => ["crease", "seamAllowance", "reveal", "paddingPressed", "turnedThickness"],
  turnedEdge: () => ({ choice: "seamAllowance", usual: TRADE.seamAllowance }),
  pulledThrough: true,
  rule: () => "sewn-turned",
  layers: () => 2,
  thickestLayer: 1.5,
  roles: { facing: "optional", padding: "optional" },
  plan,
  rows: (choices, fromEdge) => {
    const allowance = choices.seamAllowance ?? TRADE.seamAllowance;
    return [
      { kind: "construction", from: "left", mm: allowance },
      { kind: "construction", from: "right", mm: allowance },
      ...bothEdges((choices.reveal ?? 0) + fromEdge),
    ];
  },
  steps: (facts) => [
    phrase("turned-sew", {
      allowance: facts.choices.seamAllowance ?? TRADE.seamAllowance,
    }),
    (facts.choices.reveal ?? 0) > 0
      ? phrase("turned-turn-reveal", { width: facts.finishedWidth, reveal: facts.choices.reveal ?? 0 })
      : phrase("turned-turn", { width: facts.finishedWidth }),
    ...(facts.padded ? [phrase("turned-pad")] : []),
    topstitchStep(facts, (facts.choices.reveal ?? 0) > 0 ? "turned-topstitch-facing" : "topstitch-both"),
  ],
};
