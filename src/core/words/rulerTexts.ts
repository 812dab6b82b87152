/** Words of a sequence of ruler cuts in one language; a language that lacks one does not compile. */
export interface RulerTexts {
  readonly title: (project: string, cloth: string) => string;
  readonly byRuler: string;
  /** How many cuts of how many settings. */
  readonly counts: (cuts: number, settings: number) => string;
  readonly measure: string;
  readonly naming: string;
  readonly curved: string;
  /** A piece with other than straight, square edges. */
  readonly boxOf: (name: string) => string;
  readonly wholeCloth: string;
  /** `margin` is empty when there is none. */
  readonly straighten: (margin: string) => string;
  readonly crosscut: (cloth: string, at: string) => string;
  readonly rip: (cloth: string, at: string) => string;
  readonly again: (at: string) => string;
  readonly setRuler: string;
  readonly rulerStands: string;
  readonly comesOff: (what: string) => string;
  readonly remains: (what: string) => string;
  readonly offcut: string;
  readonly cutFurther: (name: string) => string;
  /** Why cloth was laid freely though a ruler was asked for. */
  readonly freeMatched: string;
  readonly freePinned: string;
  readonly freeAslant: string;
  readonly freeCramped: string;
  /** Few turns of the cloth were asked for, and it takes more. */
  readonly moreStages: (stages: number) => string;
  /** Strips that the cuts take off although they are narrower than wished. */
  readonly narrowStrips: (count: number, least: string) => string;
  /** The first cuts in cloth that has no straight edge to measure from. */
  readonly skinFirst: string;
  readonly page: (number: number, of: number) => string;
}
