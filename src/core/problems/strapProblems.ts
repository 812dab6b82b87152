/** What can be wrong with the wish for a strap. */
export type StrapProblem = {
  readonly code: "strap-too-narrow";
  readonly path: string;
  readonly widthMm: number;
  readonly leastMm: number;
};
