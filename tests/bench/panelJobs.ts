import { type Rng, seededRng } from "../../src/core/lay/search/rng.ts";

type Point = [number, number];

/** What the turns of a family are: with the grain either way and across it, one way only, or any. */
const TURNS = {
  quarter: [0, 90, 180, 270],
  oneWay: [0],
  free: Array.from({ length: 24 }, (_, i) => 15 * i),
} as const;

/** A body of a bag, wavy as traced by hand: a rounded box with a low wave all round and one deep bay. */
function panel(rng: Rng): Point[] {
  const corners = 60 + rng.below(241);
  const [width, height] = [80 + rng.below(421), 80 + rng.below(421)];
  const waves = 2 + rng.below(5);
  const [rise, phase] = [0.02 + 0.06 * rng.unit(), 2 * Math.PI * rng.unit()];
  const [bay, bayAt, bayWidth] = [0.35 * rng.unit(), 2 * Math.PI * rng.unit(), 0.2 + 0.4 * rng.unit()];
  const power = 0.35 + 0.65 * rng.unit();
  const bent = (value: number): number => Math.sign(value) * Math.abs(value) ** power;
  return Array.from({ length: corners }, (_, i): Point => {
    const turn = (2 * Math.PI * i) / corners;
    const off = Math.abs(((turn - bayAt + 3 * Math.PI) % (2 * Math.PI)) - Math.PI);
    const reach = 1 + rise * Math.sin(waves * turn + phase) - bay * Math.exp(-((off / bayWidth) ** 2));
    const round = (value: number): number => Math.round(value * 100) / 100;
    return [round((width / 2) * reach * bent(Math.cos(turn))), round((height / 2) * reach * bent(Math.sin(turn)))];
  });
}

/** `kinds` different panels of 80–500 mm and 60–300 corners, `copies` of each, on a roll of 1.4 m. Made up. */
export function panelJob(kinds: number, copies: number, turns: keyof typeof TURNS) {
  const rng = seededRng(7 * kinds + copies);
  const items = Array.from({ length: kinds }, (_, id) => ({ id, demand: copies, polygon: panel(rng) }));
  return {
    name: `panels-${kinds}x${copies}-${turns}`,
    kind: "irregular-strip" as const,
    stripWidth: 1400,
    rotations: TURNS[turns],
    items,
  };
}

/** Detailed bag panels: ten kinds of ten, fifty of two and a hundred of one, in three sorts of turns. */
const jobs: readonly unknown[] = (["quarter", "oneWay", "free"] as const).flatMap((turns) => [
  panelJob(10, 10, turns),
  panelJob(50, 2, turns),
  panelJob(100, 1, turns),
]);
export default jobs;
