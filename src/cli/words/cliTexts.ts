import type { PlanValue } from "../../core/job/planDocument/readPlan.ts";
import type { ChoiceTitle } from "../../core/lay/alternatives/choiceTitles.ts";
import type { FoldTestId } from "../../core/straps/foldTest.ts";

/** Why a file cannot be read or written. */
export type FileFault =
  | "missing"
  | "no-rights"
  | "is-folder"
  | "path-through-file"
  | "disk-full"
  | "disk-read-only"
  | "not-utf8";

/**
 * What the commands that makers use say, in one language; a language that lacks a word does not compile. Help pages
 * and `bench` are English; wrong usage has a table of its own.
 */
export interface CliTexts {
  readonly files: {
    readonly faults: Readonly<Record<FileFault, string>>;
    readonly tooLarge: (megabytes: number) => string;
    readonly unreadable: (path: string, reason: string) => string;
    readonly notWritten: (path: string, reason: string) => string;
    readonly written: (path: string) => string;
    readonly noMaterial: (path: string, id: string, nearest: string | null, all: string) => string;
    /** A value of a plan file; `place` is empty for the whole of it. */
    readonly notAPlan: (path: string, place: string, wanted: PlanValue) => string;
  };
  readonly check: {
    readonly plan: (pieces: number, materials: number, leftOut: number) => string;
    readonly project: (name: string, pieces: number, materials: number) => string;
    /** A seam whose sides differ. */
    readonly uneven: (first: string, second: string, over: string) => string;
  };
  readonly lay: {
    readonly bags: (project: string, count: number) => string;
    readonly laying: (material: string, pieces: number, seconds: number) => string;
    readonly laid: (
      material: string,
      metres: string,
      gap: string | null,
      placed: number,
      pieces: number,
      seconds: number,
    ) => string;
    /** How long the search took, on how many threads, and of how many cloths it ended early. */
    readonly searched: (seconds: string, threads: number, quiet: number) => string;
    readonly threePlans: (material: string) => string;
    readonly writing: (what: string, done: number, pages: number) => string;
    readonly ourFault: string;
    readonly keptIn: (path: string) => string;
    readonly noFont: (glyphs: string) => string;
    readonly takenAway: (names: string) => string;
    readonly stays: (names: string) => string;
    readonly heldLengthwise: (names: string) => string;
    readonly cost: string;
    readonly strips: string;
    readonly noStrip: (length: string) => string;
    readonly stripsProven: (count: number) => string;
    readonly stripsBound: (count: number, bound: number) => string;
    readonly written: string;
    readonly toPay: (money: string) => string;
    readonly clothOfBag: (money: string) => string;
    readonly suppliesToPay: (money: string) => string;
    readonly wasted: (money: string) => string;
    readonly costOfBag: (cost: string) => string;
    readonly price: (cost: string, price: string, markup: string, margin: string) => string;
    readonly priceWithTax: (price: string) => string;
    readonly batch: (bags: number, cost: string, price: string, left: string) => string;
    readonly best: Readonly<Record<ChoiceTitle, string>>;
    readonly leftOut: (pieces: number) => string;
    readonly longer: (length: string) => string;
    readonly rulerCuts: (cuts: number, settings: number) => string;
    readonly noRuler: string;
    readonly largestOffcut: (size: string) => string;
    readonly noOffcut: string;
  };
  readonly yields: {
    readonly noStrapAcross: string;
    readonly notASize: (text: string) => string;
    readonly tooMany: (option: string, straps: number, most: number) => string;
    readonly straps: (count: number) => string;
    readonly onCloth: (length: string, width: string) => string;
    readonly noneFits: (strap: string, cloth: string) => string;
    readonly gives: (straps: string, strap: string, cloth: string) => string;
    readonly provenMost: string;
    readonly couldBe: (bound: number, count: number) => string;
    readonly oneWay: (lengthwise: number, crosswise: number) => string;
    readonly fromTheEnd: string;
    readonly untouched: (length: string) => string;
    readonly need: (straps: string, strap: string, cloth: string) => string;
    readonly provenShortest: string;
    readonly couldBeShorter: (bound: string, length: string) => string;
    readonly alsoGives: (straps: string) => string;
    readonly block: (
      count: string,
      isLengthwise: boolean,
      along: number,
      across: number,
      x: string,
      y: string,
    ) => string;
    readonly wouldHelp: string;
    readonly lengthGives: (length: string, straps: string) => string;
    readonly crosswiseNeeds: (width: string) => string;
    readonly otherGrain: string;
    readonly orJoin: string;
    readonly leftToCut: (length: string, width: string) => string;
    readonly squaredAway: string;
    readonly moreGives: (length: string, more: number) => string;
    readonly curve: (from: string, to: string) => string;
    readonly noMore: string;
    readonly againstGrain: string;
    readonly noStock: (id: string | null, nearest: string | null, known: string) => string;
    readonly onStock: (id: string) => string;
    readonly noSet: (cloth: string) => string;
    readonly sets: (sets: string, straps: string, cloth: string) => string;
    readonly setCount: (count: number) => string;
    readonly ofEach: (count: number, strap: string) => string;
    readonly couldBeSets: (bound: number, count: number) => string;
    readonly nothingToDraw: string;
    readonly lengthAxis: string;
    readonly countAxis: string;
    readonly setAxis: string;
  };
  readonly strap: {
    readonly name: string;
    readonly cloth: string;
    readonly finishedWidth: string;
    readonly cutWidth: string;
    readonly tradeRule: string;
    readonly difference: string;
    readonly layersRow: string;
    readonly thick: (layers: number, thickness: string) => string;
    readonly foldLines: string;
    readonly heldBack: string;
    readonly cutLength: string;
    readonly roll: string;
    readonly shortPart: string;
    readonly longest: string;
    readonly shortest: string;
    readonly layers: (count: number) => string;
    readonly of: (length: string, what: string) => string;
    readonly other: (
      name: string,
      id: string,
      cut: string,
      layers: string,
      thickness: string,
      roll: string,
    ) => string;
    /** Kinds of material as they are asked for, by the word of the option. */
    readonly materials: Readonly<Record<string, string>>;
    readonly ofRoll: (length: string) => string;
    readonly cut: string;
    readonly madeOf: string;
    readonly needle: string;
    readonly ready: string;
    readonly notes: string;
    readonly others: string;
    readonly steps: string;
    readonly takeCare: string;
  };
  readonly compare: {
    readonly columns: readonly string[];
    readonly fits: string;
    readonly tooThick: string;
  };
  readonly foldTest: {
    readonly title: (construction: string, thickness: string) => string;
    readonly strip: (width: string) => string;
    readonly how: Readonly<Record<FoldTestId, readonly string[]>>;
    readonly measure: (what: string) => string;
    readonly read: Readonly<Record<FoldTestId, string>>;
    readonly assumed: (width: string, setback: string) => string;
    readonly runAgain: string;
    readonly thickness: string;
    readonly neutral: string;
    readonly clearance: string;
    readonly leaves: (reading: string, cutWidth: string) => string;
    readonly keep: string;
    readonly saysNothing: string;
    readonly together: (count: number, neutral: string, clearance: string) => string;
    readonly stored: (path: string, material: string) => string;
  };
}
