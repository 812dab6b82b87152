import { type BagWish, usualBag } from "./bagWish.ts";

/** Bags to begin from, known by what the trade calls them. */
export const STARTERS = ["tote", "pouch", "crossbody", "bucket"] as const;
export type Starter = (typeof STARTERS)[number];

/** Width, height and depth in mm and in quarter inches (common practice, no source), and what is not usual for the body. */
const OWN: Readonly<Record<Starter, Pick<BagWish, "body"> & { sizes: Sizes; more: Partial<BagWish> }>> = {
  tote: {
    body: "boxed",
    sizes: [
      [380, 360, 120],
      [60, 57, 19],
    ],
    more: { straps: "handles" },
  },
  pouch: {
    body: "pouch",
    sizes: [
      [220, 140, 60],
      [36, 22, 10],
    ],
    more: {},
  },
  crossbody: {
    body: "gusset",
    sizes: [
      [240, 180, 70],
      [38, 28, 11],
    ],
    more: { opening: "flap", pockets: "zip", straps: "shoulder" },
  },
  bucket: {
    body: "bucket",
    sizes: [
      [240, 280, 160],
      [38, 44, 25],
    ],
    more: { straps: "shoulder" },
  },
};

type Three = readonly [number, number, number];
type Sizes = readonly [mm: Three, quarters: Three];

/** What a bag to begin from is: its body, round measures and what it has. mm. */
export function starterBag(starter: Starter, inches: boolean): BagWish {
  const { body, sizes, more } = OWN[starter];
  const [width, height, depth] = inches
    ? (sizes[1].map((quarters) => quarters * 6.35) as unknown as Three)
    : sizes[0];
  return { ...usualBag(body, inches), width, height, depth, ...more };
}
