import type { Material } from "../materials/material.ts";
import { USUAL_MATERIALS } from "../materials/usualMaterials.ts";
import type { BagMeasure, Measure } from "../panels/measure.ts";
import type { Project } from "../project/project.ts";
import type { PanelWords } from "../words/panelWords.ts";
import { openingOf, pocketsOf, strapsOf } from "./bagExtras.ts";
import { type BagDraft, CLOTH, liningMaker, of, outerMaker } from "./bagPanels.ts";
import type { BagMeasureId, BagPart, BagWish } from "./bagWish.ts";
import { BODIES, type BodyMeasures, hasDepth } from "./bodies.ts";

/** Hem of an upper edge that no lining closes, mm (common practice, no source). */
const TOP_HEM = 25;

/**
 * A bag from its outside measures: the project with its body, lining, opening, pockets, interfacing and straps, every
 * panel following the bag's measures, and the seams between them. What the project had of parts is replaced; its name,
 * units and settings stay.
 */
export function startBag(project: Project, wish: BagWish, words: PanelWords): Project {
  const outer = outerMaker(wish, words);
  const inner = liningMaker(wish, words);
  const body = BODIES[wish.body];
  const drafts = [
    body(outside(wish, outer)),
    openingOf(wish, outer, inner),
    ...(wish.lining === null ? [] : [body(inside(wish, inner))]),
    pocketsOf(wish, inner),
  ];
  const whole: BagDraft = {
    panels: drafts.flatMap(({ panels }) => panels),
    seams: drafts.flatMap(({ seams }) => seams),
  };
  return {
    ...project,
    measures: measuresOf(wish, words),
    materials: clothsOf(project, wish, words),
    straps: strapsOf(wish, words),
    panels: whole.panels,
    seams: whole.seams,
    pins: [],
  };
}

function outside(wish: BagWish, make: BodyMeasures["make"]): BodyMeasures {
  const open = wish.opening === "open" && wish.lining === null;
  const flap: Measure | null =
    wish.opening === "flap" ? (hasDepth(wish) ? [of("depth"), of("height", 0.6)] : [of("height", 0.6)]) : null;
  return {
    width: [of("width")],
    height: [of("height")],
    depth: [of("depth")],
    corner: [of("corner")],
    make,
    part: (part) => part,
    top: open ? { allowance: TOP_HEM, hem: true } : null,
    flap,
  };
}

/** The lining's body is smaller by the ease each way, so that it lies in the bag without folds. */
function inside(wish: BagWish, make: BodyMeasures["make"]): BodyMeasures {
  const parts: Readonly<Record<string, BagPart>> = {
    front: "liningFront",
    back: "liningBack",
    gusset: "liningGusset",
    base: "liningBase",
    body: "liningBody",
    side: "liningSide",
  };
  const { flap } = outside(wish, make);
  const smaller = (measure: BagMeasureId): Measure => [of(measure), of("ease", -1)];
  return {
    width: smaller("width"),
    height: smaller("height"),
    depth: smaller("depth"),
    corner: smaller("corner"),
    make,
    part: (part) => parts[part]!,
    top: null,
    flap: wish.body === "wrap" ? flap : null,
  };
}

function measuresOf(wish: BagWish, words: PanelWords): BagMeasure[] {
  const { body, width, height, depth, allowance, lining } = wish;
  const one = (id: BagMeasureId, length: number): BagMeasure => ({ id, name: words.measures[id], length });
  return [
    one("width", width),
    one("height", height),
    ...(hasDepth(wish) ? [one("depth", depth)] : []),
    // Round enough for a gusset to turn: a quarter of the shorter side, at most 4 cm (common practice, no source).
    ...(body === "gusset" ? [one("corner", Math.min(40, Math.floor(Math.min(width, height) / 4)))] : []),
    one("allowance", allowance),
    ...(lining === null ? [] : [one("ease", lining)]),
  ];
}

/** Cloths to start from; thicknesses and widths from memory. What the project has of the same ids stays. */
function clothsOf(project: Project, wish: BagWish, words: PanelWords): Material[] {
  const names = words.cloths;
  const wanted = [
    { id: CLOTH.outer, name: names.outer, ...USUAL_MATERIALS["canvas-10oz"], width: 1400 },
    ...(wish.lining === null
      ? []
      : [{ id: CLOTH.lining, name: names.lining, ...USUAL_MATERIALS.lining, width: 1400 }]),
    ...(wish.interfacing === "none"
      ? []
      : [{ id: CLOTH.interfacing, name: names.interfacing, ...USUAL_MATERIALS.interfacing, width: 900 }]),
  ];
  return wanted.map(
    ({ id, name, kind, thickness, width }) =>
      project.materials.find((one) => one.id === id) ?? {
        id,
        name,
        kind,
        thickness,
        backing: "none",
        coating: "none",
        polymer: kind === "interfacing" ? "unknown" : "none",
        grain: kind === "interfacing" ? "free" : "either",
        oneWay: false,
        facesAlike: false,
        fold: {},
        shrinkage: { lengthwise: 0, crosswise: 0, when: "before-cutting" },
        repeat: null,
        price: null,
        gap: null,
        margin: null,
        stock: [{ kind: "roll", id: `${id}-roll`, width, selvedge: 15, length: null, squaring: 0, flaws: [] }],
      },
  );
}
