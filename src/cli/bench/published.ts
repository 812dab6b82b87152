/** What others reached on a family, fixed grain, any cuts. Gaps in per cent, or heights by instance name. */
export interface Published {
  readonly gap?: number;
  readonly heights?: Readonly<Record<string, number>>;
  readonly source: string;
}

const SVC_LOGS = "Belov, Scheithauer & Mukhacheva 2008, authors' logs";
/** Means of ten instances each at 10 s, over the bar relaxation; ours are two of the ten each. */
const BY_CLASS = [0.27, 0.13, 0.98, 2.02, 0.8, 3.15, 0.24, 3.6, 0.04, 2.01];

/** Published figures by family name, see `familiesOf`. */
export const PUBLISHED: Readonly<Record<string, Published>> = {
  C: { gap: 1.03, source: `${SVC_LOGS}, 300 s` },
  N: { gap: 1.1, source: "Alvarez-Valdés, Parreño & Tamarit 2008, 60 s, from memory" },
  BWMV: { gap: 1.32, source: `${SVC_LOGS}, 10 s, all 500` },
  ...Object.fromEntries(
    BY_CLASS.map((gap, i) => [`BWMV class ${i + 1}`, { gap, source: `${SVC_LOGS}, 10 s, all 50` }]),
  ),
  beng: { heights: numbered("beng", [30, 57, 84, 107, 134, 36, 67, 101, 126, 156]), source: SVC_LOGS },
  cgcut: { heights: numbered("cgcut", [23, 65, 664]), source: SVC_LOGS },
  gcut: { heights: numbered("gcut", [1016, 1204, 1803, 3016]), source: SVC_LOGS },
  ngcut: {
    heights: numbered("ngcut", [23, 30, 28, 20, 36, 31, 20, 34, 51, 80, 52, 87]),
    source: `${SVC_LOGS}, one run of 10 s`,
  },
};

function numbered(name: string, heights: readonly number[]): Record<string, number> {
  return Object.fromEntries(heights.map((height, i) => [`${name}${i + 1}`, height]));
}
