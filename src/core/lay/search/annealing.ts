import type { Rng } from "./rng.ts";

/** How hot a round starts, in mean piece areas. */
const START_TEMPERATURE = 0.1;

/** How a stretch of annealing ended: everything fits, more to come, or the round is spent. */
export type Annealed = "found" | "more" | "over";

/** What is annealed: the order at hand, and a changed one beside it. */
export interface Annealable {
  /** Makes the changed order from the one at hand. */
  change(): void;
  /** Area the changed order leaves out; it may stop counting beyond `most`. */
  decode(most: number): number;
  /** The changed order becomes the one at hand, and the best one if `isLeast`. */
  take(isLeast: boolean): void;
}

/**
 * Rounds of annealing over the area that an order of pieces leaves out: from a tenth of a mean piece's area down to
 * nothing, over as many looks as the round may take.
 */
export class Annealing {
  /** Area that the order at hand leaves out. */
  value: number = Infinity;
  /** Least area left out in this round. */
  least: number = Infinity;
  /** Looks spent in all. */
  spent: number = 0;
  private readonly rng: Rng;
  private readonly meanArea: number;
  private roundLooks = 0;
  private roundSpent = 0;

  constructor(rng: Rng, meanArea: number) {
    this.rng = rng;
    this.meanArea = meanArea;
  }

  /** A new round of `looks` looks. */
  begin(looks: number): void {
    this.roundLooks = looks;
    this.roundSpent = 0;
  }

  /** Looks that a decode took. */
  spend(looks: number): void {
    this.spent += looks;
    this.roundSpent += looks;
  }

  /** Goes on for about `looks` looks. */
  advance(looks: number, order: Annealable): Annealed {
    const until = this.roundSpent + looks;
    while (this.value > 0) {
      if (this.roundSpent >= this.roundLooks) return "over";
      if (this.roundSpent >= until) return "more";
      order.change();
      // Drawn before the decode, so that it can stop once it has lost more cloth than would be taken.
      const heat = Math.max(0, START_TEMPERATURE * this.meanArea * (1 - this.roundSpent / this.roundLooks));
      const most = this.value - heat * Math.log(1 - this.rng.unit());
      const changed = order.decode(most);
      if (changed > most) continue;
      this.value = changed;
      order.take(changed < this.least);
      this.least = Math.min(this.least, changed);
    }
    return "found";
  }
}
