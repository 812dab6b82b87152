import type { CutPiece, PieceGrain, PieceLine } from "../materials/cutPiece.ts";

/** Every word of the cut sheet and its labels in one language; a language that lacks one does not compile. */
export interface SheetTexts {
  readonly title: string;
  readonly forBags: (bags: number) => string;
  readonly columns: {
    readonly number: string;
    readonly cut: string;
    readonly piece: string;
    readonly size: string;
    readonly inches: string;
    readonly grain: string;
  };
  /** Heads and words of the table for a spreadsheet; lengths in mm, then in inches. */
  readonly table: {
    readonly heads: readonly [
      number: string,
      name: string,
      material: string,
      kind: string,
      count: string,
      mirrored: string,
      alongMm: string,
      acrossMm: string,
      alongInches: string,
      acrossInches: string,
      grain: string,
      notes: string,
    ];
    readonly kinds: Readonly<Record<CutPiece["kind"], string>>;
  };
  readonly toBuy: string;
  readonly alsoNeeded: string;
  readonly pictures: string;
  readonly takeCare: string;
  /** A cut width on her ruler, and what the strap comes out at. */
  readonly onRuler: (cut: string, finished: string) => string;
  readonly grains: Readonly<Record<PieceGrain, string>>;
  readonly counted: (count: number, mirrored: number) => string;
  readonly asDrawn: (count: number, mirrored: number) => string;
  readonly copy: (number: number, of: number) => string;
  readonly mirroredCopy: (number: number, of: number) => string;
  readonly labelNumber: (number: number) => string;
  readonly page: (number: number, of: number) => string;
  /** Where lines along a strip lie, from its long edge; lists of numbers in mm and, where they are wanted, inches. */
  readonly linesAt: (role: PieceLine["role"], mm: string, inches: string | null) => string;
  readonly nothingLaid: string;
  /** `stock` is empty where there is only one. */
  readonly used: (length: string, stock: string) => string;
  /** Of a plan in which some pieces have no place. */
  readonly usedByPlaced: (length: string, stock: string) => string;
  readonly usedProven: (length: string, stock: string) => string;
  readonly usedBound: (length: string, stock: string, least: string, gap: string) => string;
  /** How to spread the cloth before the plan is laid on it; `oneWay`: the nap or print must run one way. */
  readonly spreadFolded: string;
  readonly spreadLayers: (layers: number, length: string, faces: "up" | "together", oneWay: boolean) => string;
  /** What comes of one piece on the plan, where the pieces have hands. */
  readonly givesPairs: string;
  /** Follows the sentence above: halves on the fold open out. */
  readonly givesOnFold: string;
  /** That lengths begin at the same place of the pattern. */
  readonly spreadRepeat: (repeat: string) => string;
  /** How layers of a cloth whose pattern is matched come to lie line on line. */
  readonly spreadOnLines: string;
  /** What comes out besides what is asked for. */
  readonly spare: (list: string) => string;
  readonly sparePiece: (count: number, name: string, mirrored: boolean) => string;
  /** Leftovers and skins of a cloth that is spread. */
  readonly leftoversSingly: string;
  readonly buy: (length: string, cost: string) => string;
  /** `layers` of each size. */
  readonly offcuts: (sizes: string, smaller: number, layers: number) => string;
  /** That a pattern is not matched, and what to buy more when it must be (common practice, no source). */
  readonly repeat: (repeat: string) => string;
  /** Names of pieces that are matched on the pattern. */
  readonly matched: (names: string) => string;
  /** Where the first line lies on the roll, from its cut end and its lower edge; null where nothing repeats that way. */
  readonly firstLine: (along: string | null, across: string | null) => string;
  /** Title of a lay's picture with the cloth's pattern; `scale` as in 1 : scale. */
  readonly onPattern: (name: string, scale: number) => string;
  readonly boundUnmatched: string;
  /** What a rule costs; `more` null where it costs nothing. */
  readonly ruleMatch: (first: string, second: string, more: string | null) => string;
  readonly ruleCentred: (part: string, more: string | null) => string;
  readonly ruleOneWay: (more: string | null) => string;
  readonly ruleBand: (more: string | null) => string;
  /** That all pieces lie one way, which the search has chosen. */
  readonly sameWay: (way: "up" | "down") => string;
  /** Within which length of roll the parts of each bag lie; of two bags that are cut at once; of each bag of a layer. */
  readonly shadeBand: (length: string, each: "one" | "twos" | "layer") => string;
  /** That the proven shortest does not mind the bands. */
  readonly boundUnbanded: string;
  /** That the parts of each bag are not kept together, why, and what helps. */
  readonly bandNotKept: (why: "uneven" | "layers" | "twos" | "hands" | "fold", layers: number) => string;
}
