/** Every word on drawings and printed sheets in one language; a language that lacks one does not compile. */
export interface PaperTexts {
  readonly pieces: {
    readonly mirrored: (name: string) => string;
    /** Half a piece that lies on the fold of the cloth. */
    readonly onFold: (name: string) => string;
    /** Beside the fold of the cloth. */
    readonly fold: string;
    /** Which copy of how many this is. */
    readonly copy: (number: number, of: number) => string;
    /** What a pattern is cut from and how often; `mirrored` copies with the paper turned over. */
    readonly pattern: (count: number, mirrored: number, material: string) => string;
  };
  /** The pages before the sheets. */
  readonly map: {
    readonly bySize: string;
    /** How to print and to put the sheets together, in order. */
    readonly printFirst: string;
    readonly measure: string;
    readonly printSheets: (count: number) => string;
    readonly overlapped: string;
    readonly butted: string;
    readonly checkTape: string;
    /** Factors the pages are drawn larger by. */
    readonly corrected: (across: string, down: string) => string;
    readonly eachWay: string;
  };
  readonly mats: {
    /** In the check square, which measures `side` both ways and is drawn, not cut. */
    readonly check: (side: string) => string;
  };
  /** What each piece of stock is called; `number` where there are several of its kind. */
  readonly stocks: {
    readonly roll: (number: number | null, width: string) => string;
    readonly remnant: (number: number | null, size: string, copy: string) => string;
    readonly skin: (number: number | null, size: string, copy: string) => string;
    /** A panel or quarter that the shop has cut to a size. */
    readonly precut: (number: number | null, size: string, copy: string) => string;
    /** The kind alone. */
    readonly kinds: Readonly<Record<"roll" | "remnant" | "skin", string>>;
    /** Of several equal ones; follows the size. */
    readonly copy: (number: number, of: number) => string;
  };
  readonly sheets: {
    readonly sheet: (number: number, of: number) => string;
    readonly lengthwise: string;
    readonly oneWay: string;
    /** Beside the ruler of 10 cm. */
    readonly tenCm: string;
    readonly roll: (usableWidth: string, used: string) => string;
    readonly patterns: string;
    readonly oneOfEach: string;
  };
  /** What a measured test square says of the printer; sizes off in per cent, factors that pages are drawn by. */
  readonly printer: {
    readonly isTrue: string;
    readonly fitted: (off: string, papers: readonly [drawn: string, printed: string] | null) => string;
    readonly off: (off: string, across: string, down: string) => string;
    readonly uneven: (across: string, down: string) => string;
  };
}
