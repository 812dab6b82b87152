import { pluralOf } from "../../units/numberWords.ts";
import type { StrapWords } from "../strapWords.ts";
import { strapPhrases } from "./strapPhrases.ts";

const plural = pluralOf("en");

/** Words about straps in English. */
export const straps: StrapWords = {
  language: "en",
  phrases: strapPhrases,
  constructions: {
    fourfold: { name: "folded in four", layers: "4 layers", rule: "4 × width" },
    "three-raw": { name: "folded in three, raw edge", layers: "3 layers", rule: "3 × width" },
    "three-hemmed": { name: "folded in three, hemmed edge", layers: "3 layers, 4 at the hem", rule: "3 × width" },
    "two-layer": {
      name: "two strips with turned edges, narrower facing",
      layers: "2 + 2 layers",
      rule: "2 × width of the outer, 2 × width of the facing",
    },
    "sewn-turned": {
      name: "two strips sewn and turned",
      layers: "2 layers, 4 at the edges",
      rule: "width + 2 × seam allowance of each strip",
    },
    tube: { name: "a turned tube", layers: "2 layers, 4 at the seam", rule: "2 × width + 2 × seam allowance" },
    bonded: {
      name: "bonded, raw edges",
      layers: "1 to 3 layers",
      rule: "width of each layer, plus what is trimmed after bonding",
    },
    "webbing-overlay": {
      name: "webbing with a cloth overlay",
      layers: "1 layer on the webbing, 2 at its edges",
      rule: "webbing − 2 × margin + 2 × turn",
    },
    "webbing-sleeve": {
      name: "webbing in a cloth sleeve",
      layers: "4 layers of cloth round it, or 1 on request",
      rule: "4 × webbing + 2 × its thickness (a single cover: 2 × webbing + 2 × turn)",
    },
    corded: {
      name: "a corded handle with flat ends",
      layers: "1 layer round the cord, 2 at the seam",
      rule: "π × cord + 2 × seam allowance",
    },
    tab: {
      name: "a ring tab or connector",
      layers: "4 layers, or 1 to 3 flat",
      rule: "4 × width, cut 3 in long for a 1 in leg",
    },
  },
  lengthItems: {
    finished: "finished strap",
    "drop-twice": "twice the drop",
    "over-shoulder": "over the shoulder",
    "worn-longest": "worn at its longest",
    "worn-longest-less-short": "worn at its longest, less the short part",
    "doubled-at-slider": "doubled at the slider even then",
    "end-raw": "cut off as it is",
    "end-seam": "caught in the seam",
    "end-tucked": "turned inside",
    "end-fold-back": "folded back over hardware",
    "end-doubled": "flat end doubled back",
  },
  consumables: {
    tape: "narrow double-sided tape, wash-away or kept off the stitch line",
    "topstitch-thread": "topstitch thread",
    "topstitch-thread-bobbin": "topstitch thread, half of it on the bobbin",
    "construction-thread": "construction thread",
    "construction-thread-bobbin": "construction thread, half of it on the bobbin",
    "edge-paint": "edge to paint, each coat",
    webbing: "webbing",
    cord: "cord",
  },
  needle: {
    along: "along the strap",
    "doubled-ends": "at the doubled ends",
    "fold-back": "where an end is folded back",
    tucked: "where an end is turned inside",
    "straight-join": "at a straight join",
    "tab-ring": "where the tab is folded over its ring",
  },
  parts: {
    outer: "outer",
    facing: "facing",
    interfacing: "interfacing",
    padding: "padding",
    shortPart: "short part",
    longPart: "long part",
    lengthOf: (number, of) => `length ${number} of ${of}`,
  },
  picture: {
    cutWidth: (size) => `cut width ${size}`,
    cutLength: (size) => `cut length ${size}`,
    flat: (percent) =>
      `flat, wrong side up, ${percent === null ? "true width" : `width drawn ${percent} % of true`}, length broken off`,
    magnified: (times, cut) => `${plural(times, "true size", `${times} times true size`)}; cut ${cut}`,
    rawEdgeHeld: (by) => `raw edge held back ${by}`,
    hemHeld: (by) => `hem held back ${by}`,
    rawEdge: "raw edge",
    stitch: "stitch",
    layers: {
      outer: "outer",
      facing: "facing",
      "own-facing": "facing, same material",
      interfacing: "interfacing",
      padding: "padding, pressed",
      webbing: "webbing",
      cord: "cord",
    },
  },
  lineAt: (line, at) => `${line} at ${at}`,
  laidFlat: (part) => (part === "" ? "laid flat" : `${part}, laid flat`),
};
