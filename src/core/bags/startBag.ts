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
 * units, settings and materials stay. The bag is made of the project's first outer cloth where there is one.
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
  const own = outerOf(project);
  return {
    ...project,
    measures: measuresOf(wish, words),
    materials: clothsOf(project, wish, words, own),
    straps: strapsOf(wish, words).map((strap) => ({
      ...strap,
      materials: { ...strap.materials, outer: own ?? CLOTH.outer },
    })),
    panels: whole.panels.map((panel) =>
      panel.materialId === CLOTH.outer ? { ...panel, materialId: own ?? CLOTH.outer } : panel,
    ),
    seams: whole.seams,
    ...(project.matches && { matches: [] }),
    ...(project.centred && { centred: [] }),
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
/** Kinds that a bag is made of outside. */
const OUTER: readonly Material["kind"][] = ["woven", "vinyl", "leather", "cork", "felt"];

/** The project's cloth for the outside: the one an earlier bag was given, else the first that may be one. */
function outerOf({ materials }: Project): string | null {
  const bags = [CLOTH.lining, CLOTH.interfacing] as readonly string[];
  const mayBe = materials.filter(({ id, kind }) => OUTER.includes(kind) && !bags.includes(id));
  return (mayBe.find(({ id }) => id === CLOTH.outer) ?? mayBe[0])?.id ?? null;
}

/** The project's materials, and those that the bag needs besides. */
function clothsOf(project: Project, wish: BagWish, words: PanelWords, own: string | null): Material[] {
  const names = words.cloths;
  const wanted = [
    ...(own === null
      ? [{ id: CLOTH.outer, name: names.outer, ...USUAL_MATERIALS["canvas-10oz"], width: 1400 }]
      : []),
    ...(wish.lining === null
      ? []
      : [{ id: CLOTH.lining, name: names.lining, ...USUAL_MATERIALS.lining, width: 1400 }]),
    ...(wish.interfacing === "none"
      ? []
      : [{ id: CLOTH.interfacing, name: names.interfacing, ...USUAL_MATERIALS.interfacing, width: 900 }]),
  ];
  const missing = wanted.filter(({ id }) => !project.materials.some((one) => one.id === id));
  const made = missing.map(({ id, name, kind, thickness, width }): Material => {
    return {
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
    };
  });
  return [...project.materials, ...made];
}
