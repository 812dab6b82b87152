/** How a bag's body is built. */
export const BAG_BODIES = ["flat", "boxed", "gusset", "wrap", "bucket", "pouch"] as const;

export type BagBody = (typeof BAG_BODIES)[number];

/** The bag's own measures that its panels follow. */
export type BagMeasureId = "width" | "height" | "depth" | "allowance" | "ease" | "corner";

export type BagPart =
  | "front"
  | "back"
  | "gusset"
  | "base"
  | "body"
  | "side"
  | "flap"
  | "zipPanel"
  | "slipPocket"
  | "zipPocket"
  | "liningFront"
  | "liningBack"
  | "liningGusset"
  | "liningBase"
  | "liningBody"
  | "liningSide"
  | "liningFlap";

/** What else a bag can have, for the command line and the page alike. */
export const BAG_CHOICES = {
  opening: ["open", "zip", "flap"],
  pockets: ["none", "slip", "zip", "both"],
  interfacing: ["none", "full", "inset"],
  straps: ["none", "handles", "shoulder", "wrist"],
} as const;

type Choice<K extends keyof typeof BAG_CHOICES> = (typeof BAG_CHOICES)[K][number];

export type BagOpening = Choice<"opening">;
export type BagPockets = Choice<"pockets">;
export type BagStraps = Choice<"straps">;

/** A bag by its outside measures, mm, and what it has. */
export interface BagWish {
  readonly body: BagBody;
  readonly width: number;
  readonly height: number;
  /** From front to back; a flat bag has none. */
  readonly depth: number;
  readonly allowance: number;
  readonly opening: BagOpening;
  /** How much smaller the lining is than the bag, each way; null for no lining. */
  readonly lining: number | null;
  readonly pockets: BagPockets;
  readonly interfacing: Choice<"interfacing">;
  readonly straps: BagStraps;
}

/** Least and greatest of a bag's measures, mm. */
export const BAG_LIMITS = {
  width: { minMm: 80, maxMm: 1500 },
  height: { minMm: 80, maxMm: 1500 },
  depth: { minMm: 20, maxMm: 800 },
  allowance: { minMm: 3, maxMm: 40 },
  lining: { minMm: 0, maxMm: 8 },
} as const;

/** What a bag of a body starts with, in a round number of mm or of inches. */
export function usualBag(body: BagBody, inches: boolean): BagWish {
  const mm = (metric: number, quarters: number): number => (inches ? quarters * 6.35 : metric);
  const small = body === "pouch";
  return {
    body,
    width: small ? mm(220, 36) : mm(300, 48),
    height: small ? mm(140, 22) : mm(250, 40),
    depth: small ? mm(60, 10) : mm(100, 16),
    allowance: mm(10, 1.5),
    opening: small ? "zip" : "open",
    lining: mm(2, 0.25),
    pockets: small ? "none" : "slip",
    interfacing: "full",
    straps: small ? "wrist" : body === "wrap" ? "shoulder" : "handles",
  };
}
