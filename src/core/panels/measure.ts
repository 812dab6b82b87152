/**
 * A length in mm, or one that follows others: the sum of its terms. "As wide as Body and 2 cm more" is
 * `[{ of: "body", measure: "along", times: 1 }, 20]`.
 */
export type Measure = number | readonly MeasureTerm[];

export type MeasureTerm = number | MeasureOf;

/** So many times a measure of the bag or of one of its panels. */
export interface MeasureOf {
  /** The panel that is measured, on its stitch line; left out for the bag's own measures. */
  readonly of?: string | undefined;
  /**
   * Id of one of the bag's measures; or of a panel a dimension of its shape, `along` or `across` (its box), `round`
   * (all the way round), or the name or number of one of its edges.
   */
  readonly measure: string;
  readonly times: number;
}

/** One of the bag's own measures, such as its width: what panels can follow. */
export interface BagMeasure {
  readonly id: string;
  readonly name: string;
  /** mm. */
  readonly length: number;
}

/** What a measure follows, in order. */
export function followedBy(measure: Measure): readonly MeasureOf[] {
  return typeof measure === "number" ? [] : measure.filter((term): term is MeasureOf => typeof term !== "number");
}

/** `times` of a panel's measure, as a measure of its own. */
export function following(of: string | undefined, measure: string, times = 1): readonly MeasureTerm[] {
  return [of === undefined ? { measure, times } : { of, measure, times }];
}
