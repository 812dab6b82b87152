import type { Measure } from "../panels/measure.ts";
import type { EdgeWish, Panel } from "../panels/panel.ts";
import { as, type BagDraft, edgesOf, type PartMaker, seam } from "./bagPanels.ts";
import type { BagBody, BagPart, BagWish } from "./bagWish.ts";

/** What a body is made from: once for the outside, once, a little smaller, for the lining. */
export interface BodyMeasures {
  readonly width: Measure;
  readonly height: Measure;
  readonly depth: Measure;
  readonly corner: Measure;
  readonly make: PartMaker;
  /** Names of the parts, outside or lining. */
  readonly part: (outside: "front" | "back" | "gusset" | "base" | "body" | "side") => BagPart;
  /** What the upper edges have of their own. */
  readonly top: Omit<EdgeWish, "edge"> | null;
  readonly flap: Measure | null;
}

type BodyMaker = (measures: BodyMeasures) => BagDraft;

/** Body styles, each from the same measures. */
export const BODIES: Readonly<Record<BagBody, BodyMaker>> = {
  flat: (m) => frontAndBack(m, "trapezoid", { bottomWidth: m.width, height: m.height }),
  boxed: boxedBody,
  pouch: boxedBody,
  gusset: gussetBody,
  wrap: wrapBody,
  bucket: bucketBody,
};

/** Whether a body has any depth. */
export function hasDepth({ body }: Pick<BagWish, "body">): boolean {
  return body !== "flat";
}

const topEdge = ({ top }: BodyMeasures, edge: string): { readonly edges?: readonly EdgeWish[] } =>
  top === null ? {} : { edges: [{ edge, ...top }] };

/** Where the middle of an upper edge is. */
const MIDDLE: Panel["notches"] = [{ edge: "top", at: { share: 0.5 } }];

function frontAndBack(m: BodyMeasures, shape: "trapezoid", sizes: Readonly<Record<string, Measure>>): BagDraft {
  const [front, back] = [m.part("front"), m.part("back")];
  const more = { ...topEdge(m, "top"), notches: MIDDLE };
  return {
    panels: [m.make(front, shape, sizes, more), m.make(back, shape, sizes, more)],
    seams: [
      seam(edgesOf(front, "right"), edgesOf(back, "left")),
      seam(edgesOf(front, "bottom"), edgesOf(back, "bottom")),
      seam(edgesOf(front, "left"), edgesOf(back, "right")),
    ],
  };
}

function boxedBody(m: BodyMeasures): BagDraft {
  const [front, back] = [m.part("front"), m.part("back")];
  const sizes = { width: m.width, height: m.height, depth: m.depth };
  const more = { ...topEdge(m, "top"), notches: MIDDLE };
  const corners = [front, back].flatMap((part) => [
    seam(edgesOf(part, "rightBase"), edgesOf(part, "rightSide")),
    seam(edgesOf(part, "leftSide"), edgesOf(part, "leftBase")),
  ]);
  return {
    panels: [m.make(front, "box-corners", sizes, more), m.make(back, "box-corners", sizes, more)],
    seams: [
      seam(edgesOf(front, "right"), edgesOf(back, "left")),
      seam(edgesOf(front, "bottom"), edgesOf(back, "bottom")),
      seam(edgesOf(front, "left"), edgesOf(back, "right")),
      ...corners,
    ],
  };
}

function gussetBody(m: BodyMeasures): BagDraft {
  const [front, back, gusset] = [m.part("front"), m.part("back"), m.part("gusset")];
  const sizes = { width: m.width, height: m.height, radius: m.corner };
  const more = { ...topEdge(m, "top"), notches: MIDDLE };
  const round = ["left", "bottom", "right"];
  const ends = m.top === null ? {} : { edges: ["start", "end"].map((edge) => ({ edge, ...m.top })) };
  return {
    panels: [
      m.make(front, "round-bottom", sizes, more),
      m.make(back, "round-bottom", sizes, more),
      m.make(gusset, "gusset", { length: round.map((edge) => as(front, edge)), width: m.depth }, ends),
    ],
    seams: [
      seam(edgesOf(gusset, "front"), edgesOf(front, ...round)),
      seam(edgesOf(gusset, "back"), edgesOf(back, ...round)),
    ],
  };
}

function wrapBody(m: BodyMeasures): BagDraft {
  const [body, side] = [m.part("body"), m.part("side")];
  const flap = m.flap === null ? {} : { flap: m.flap };
  const upper = m.top === null ? [] : ["frontTop", ...(m.flap === null ? ["backTop"] : [])];
  const edges = upper.map((edge) => ({ edge, ...m.top }));
  return {
    panels: [
      m.make(
        body,
        "wrap",
        { width: m.width, height: m.height, depth: m.depth, ...flap },
        edges.length > 0 ? { edges } : {},
      ),
      m.make(
        side,
        "trapezoid",
        { bottomWidth: m.depth, height: m.height },
        { ...topEdge(m, "top"), count: 2, notches: MIDDLE },
      ),
    ],
    seams: [
      seam(edgesOf(body, "rightFront", "rightBase", "rightBack"), edgesOf(side, "left", "bottom", "right")),
      seam(edgesOf(body, "leftBack", "leftBase", "leftFront"), edgesOf(side, "left", "bottom", "right")),
    ],
  };
}

function bucketBody(m: BodyMeasures): BagDraft {
  const [front, back, base] = [m.part("front"), m.part("back"), m.part("base")];
  const sizes = { bottomWidth: [as(base, "rim", 0.5)], height: m.height };
  const more = { ...topEdge(m, "top"), notches: MIDDLE };
  return {
    panels: [
      m.make(front, "trapezoid", sizes, more),
      m.make(back, "trapezoid", sizes, more),
      m.make(base, "ellipse", { width: m.width, depth: m.depth }),
    ],
    seams: [
      seam(edgesOf(front, "right"), edgesOf(back, "left")),
      seam(edgesOf(front, "left"), edgesOf(back, "right")),
      seam(edgesOf(base, "rim"), [...edgesOf(front, "bottom"), ...edgesOf(back, "bottom")]),
    ],
  };
}
