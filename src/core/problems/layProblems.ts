/** What can be wrong with a lay problem or with a plan, as the checker finds it. */
export type LayProblemFinding = {
  readonly code: "stock-empty";
  readonly path: string;
  readonly materialId: string;
};
