import { pluralOf } from "../../units/numberWords.ts";
import type { RulerTexts } from "../rulerTexts.ts";

const plural = pluralOf("en");

/** Ruler cuts in English. */
export const ruler: RulerTexts = {
  title: (project, cloth) => `${project}: ruler cuts in ${cloth}`,
  byRuler: "By ruler",
  counts: (cuts, settings) =>
    `${cuts} ${plural(cuts, "cut", "cuts")}, ${settings} ruler ${plural(settings, "setting", "settings")}`,
  measure: "Every cut runs from edge to edge of the piece named. Measure from the last cut edge, along the grain.",
  naming:
    "Lengths are A, B, C from the cut end; A1 is the first strip of length A, A1B the second part of that strip.",
  curved: "A piece with curved or slanting edges is first cut out as a rectangle, “its box”; then cut its outline.",
  boxOf: (name) => `${name}, its box`,
  wholeCloth: "the cloth",
  straighten: (margin) =>
    `Straighten the cut end, square to the selvedge${margin === "" ? "" : `, ${margin} in, and trim one long edge as much`}`,
  crosscut: (cloth, at) => `Cut ${cloth} crosswise at ${at}`,
  rip: (cloth, at) => `Cut ${cloth} lengthwise at ${at}`,
  again: (at) => `${at} again`,
  setRuler: "set the ruler",
  rulerStands: "same ruler setting",
  comesOff: (what) => `gives ${what}`,
  remains: (what) => `leaves ${what}`,
  offcut: "offcut",
  cutFurther: (name) => `${name}, to be cut further`,
  freeMatched: "Laid freely: no plan for straight cuts was found in which every piece keeps the pattern.",
  freePinned:
    "Laid freely: straight cuts from edge to edge cannot separate the pinned pieces. Unpin them, or pin them in rows.",
  freeAslant: "Laid freely: some pieces may only lie at a slant, where edge-to-edge cuts cannot separate them.",
  freeCramped: "Laid freely: with straight cuts alone, not every piece fits on this cloth.",
  moreStages: (stages) =>
    `Cloth of limited length, with flaws or with pinned pieces is not laid in few stages: this plan takes ${stages}.`,
  narrowStrips: (count, least) =>
    count === 1
      ? `One cut takes off a strip narrower than ${least}: no plan nearly as good was found that does without.`
      : `${count} cuts take off a strip narrower than ${least}: no plan nearly as good was found that does without.`,
  skinFirst:
    "This cloth has no straight edge: draw its lengthwise grain on it, and measure along and across from its outermost points.",
  page: (number, all) => `${number} of ${all}`,
};
