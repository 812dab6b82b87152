/** How a copy's new spot is looked for; shares of the copy's size where lengths are meant. */
export interface SpotTuning {
  /** Samples anywhere in the window, near the spot now, and at corners of no-fit polygons. */
  readonly anywhere: number;
  readonly nearby: number;
  readonly corners: number;
  /** Spread of the nearby samples. */
  readonly spread: number;
  /** First step of the descent, the one from which on only the best spot goes further, and the last. */
  readonly firstStep: number;
  readonly middleStep: number;
  readonly lastStep: number;
  /** How far off an outline still counts for exact contact. */
  readonly snapReach: number;
}

export const SPOT_TUNING: SpotTuning = {
  anywhere: 20,
  nearby: 10,
  corners: 10,
  spread: 0.25,
  firstStep: 0.12,
  middleStep: 0.05,
  lastStep: 0.01,
  snapReach: 0.03,
};
