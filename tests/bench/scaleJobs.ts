import { type Rng, seededRng } from "../../src/core/lay/search/rng.ts";
import { panelJob } from "./panelJobs.ts";

type Point = [number, number];

/** Panels of a made-up bag maker, mm: what a studio's batch is made of. */
const SHAPES: readonly ((w: number, h: number) => Point[])[] = [
  (w, h) => [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ],
  (w, h) => [
    [0, 0],
    [w, 0],
    [0.85 * w, h],
    [0.15 * w, h],
  ],
  (w, h) => [
    [0, 0],
    [w, 0],
    [w, 0.4 * h],
    [0.4 * w, 0.4 * h],
    [0.4 * w, h],
    [0, h],
  ],
  (w, h) => arc(w / 2, 0, w / 2, h, 0, Math.PI, 20),
  (w, h) => arc(w / 2, h / 2, w / 2, h / 2, 0, 2 * Math.PI, 28).slice(0, -1),
  (w, h) => roundedCorners(w, h, 0.25 * Math.min(w, h)),
];

function arc(cx: number, cy: number, rx: number, ry: number, from: number, to: number, steps: number): Point[] {
  return Array.from({ length: steps + 1 }, (_, i): Point => {
    const angle = from + ((to - from) * i) / steps;
    return [cx + rx * Math.cos(angle), cy + ry * Math.sin(angle)];
  });
}

function roundedCorners(w: number, h: number, r: number): Point[] {
  const quarter = Math.PI / 2;
  return [
    ...arc(w - r, r, r, r, -quarter, 0, 6),
    ...arc(w - r, h - r, r, r, 0, quarter, 6),
    ...arc(r, h - r, r, r, quarter, 2 * quarter, 6),
    ...arc(r, r, r, r, 2 * quarter, 3 * quarter, 6),
  ];
}

/** `pieces` copies of `kinds` outlines on a roll of 1.4 m, grain either way up. */
function outlineJob(pieces: number, kinds: number, seed: number) {
  const rng: Rng = seededRng(seed);
  const items = Array.from({ length: kinds }, (_, i) => {
    const size = (): number => 60 + 5 * rng.below(60);
    return {
      id: i,
      demand: Math.floor((pieces * (i + 1)) / kinds) - Math.floor((pieces * i) / kinds),
      polygon: SHAPES[i % SHAPES.length]!(size(), size()),
    };
  });
  return {
    name: `outlines-${pieces}-of-${kinds}`,
    kind: "irregular-strip" as const,
    stripWidth: 1400,
    rotations: [0, 180],
    items,
  };
}

/** 10,000 strips of four kinds on a roll of 54 in, in half inches, both straight grains. */
const MANY_STRIPS = {
  name: "strips-10000",
  kind: "rect-strip",
  stripWidth: 108,
  rotate90: true,
  items: [
    { w: 7, h: 61, n: 2500 },
    { w: 5, h: 84, n: 2500 },
    { w: 9, h: 37, n: 2500 },
    { w: 4, h: 22, n: 2500 },
  ],
};

/** Growing jobs: outlines by the hundred and the thousand, detailed ones by the kind, strips by the ten thousand. */
const jobs: readonly unknown[] = [
  outlineJob(40, 10, 6),
  outlineJob(100, 10, 1),
  outlineJob(300, 10, 2),
  outlineJob(300, 40, 3),
  outlineJob(1000, 10, 4),
  outlineJob(1000, 40, 5),
  panelJob(12, 1, "quarter"),
  panelJob(25, 1, "quarter"),
  panelJob(50, 1, "quarter"),
  panelJob(100, 1, "quarter"),
  MANY_STRIPS,
];
export default jobs;
