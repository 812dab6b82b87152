import type { RulerTexts } from "./rulerTexts.ts";

/** Ruler cuts in English. */
export const english: RulerTexts = {
  title: (project, cloth) => `${project}: ruler cuts in ${cloth}`,
  byRuler: "By ruler",
  counts: (cuts, settings) =>
    `${cuts} ${cuts === 1 ? "cut" : "cuts"}, ${settings} ruler ${settings === 1 ? "setting" : "settings"}`,
  measure: "Every cut runs from edge to edge of the cloth named. Measure from the fresh edge, along the grain.",
  naming:
    "Lengths are A, B, C from the cut end; A1 is the first strip of length A, A1B the second part of that strip.",
  curved:
    "A piece with other than straight, square edges comes off as a rectangle, “its box”; cut its outline after.",
  boxOf: (name) => `${name}, its box`,
  wholeCloth: "the cloth",
  straighten: (margin) =>
    `Straighten the cut end, square to the selvedge${margin === "" ? "" : `, ${margin} in, and trim one long edge as much`}`,
  crosscut: (cloth, at) => `Crosscut ${cloth} at ${at}`,
  rip: (cloth, at) => `Rip ${cloth} at ${at}`,
  again: (at) => `${at} again`,
  setRuler: "set the ruler",
  rulerStands: "ruler as it stands",
  comesOff: (what) => `off comes ${what}`,
  remains: (what) => `what remains is ${what}`,
  offcut: "offcut",
  cutFurther: (name) => `${name}, to be cut further`,
  freePinned:
    "Laid freely: straight cuts from edge to edge do not part the pinned pieces. Unpin them, or pin them in rows.",
  freeAslant: "Laid freely: some pieces may only lie aslant, where no ruler parts them.",
  freeCramped: "Laid freely: with straight cuts alone not every piece would find room on this cloth.",
  moreStages: (stages) =>
    `Cloth of limited length, with flaws or with pinned pieces is not laid in few stages: this plan takes ${stages}.`,
  skinFirst:
    "This cloth has no straight edge: draw its lengthwise grain, and measure from its outermost points, along and across.",
  page: (number, all) => `${number} of ${all}`,
};
