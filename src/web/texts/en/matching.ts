import { pluralOf } from "../../../core/units/numberWords.ts";
import { type Blank, words } from "../words.tsx";

const plural = pluralOf("en");
const say = (text: string): string => text;

/** A cloth's pattern and what is to meet on it. */
export const enMatching = {
  summary: (count: number) =>
    count === 0
      ? "Pattern and what is to meet on it"
      : `Pattern, with ${plural(count, "one match", `${count} matches`)}`,
  across: (length: Blank) => words("Across the cloth it repeats every ", length, "."),
  acrossLabel: say("Repeat across"),
  noAcross: say("not at all"),
  firstLine: (along: Blank, across: Blank) =>
    words("A line lies ", along, " from the cut end and ", across, " from the lower edge of a roll."),
  firstAlongLabel: say("First line from the cut end"),
  firstAcrossLabel: say("First line from the lower edge"),
  tolerance: (length: Blank) => words("What meets may be ", length, " off."),
  toleranceLabel: say("How far off"),
  symmetric: say("Looks the same turned by half"),
  halfDrop: say("Every second column is dropped by half"),
  seam: (first: Blank, edge: Blank, second: Blank, other: Blank) =>
    words(first, " ", edge, " meets ", second, " ", other),
  firstPanel: (n: number) => `Match ${n}: panel`,
  firstEdge: (n: number) => `Match ${n}: its edge`,
  secondPanel: (n: number) => `Match ${n}: panel it meets`,
  secondEdge: (n: number) => `Match ${n}: edge it meets`,
  edgeNumber: (n: number) => `edge ${n}`,
  centred: (part: Blank, on: Blank) => words("The middle of ", part, " lies ", on),
  centredPart: (n: number) => `Place ${n}: part`,
  centredOnLabel: (n: number) => `Place ${n}: where`,
  centredOn: {
    line: say("on a line or motif"),
    between: say("midway between two"),
    "same-place": say("anywhere, but alike on every bag"),
  },
  addSeam: say("Two edges that meet"),
  addCentred: say("A part with its place"),
  remove: (n: number) => `Remove match ${n}`,
  removeCentred: (n: number) => `Remove place ${n}`,
  board: say("Edges that meet, pressed in the pictures"),
  pressFirst: say("Press an edge, then the edge that it meets."),
  pressSecond: (edge: string) => `Now press the edge that meets ${edge}. Escape lets it go.`,
  edgeOf: (panel: string, edge: string) => `${panel}, ${edge}`,
  matchedEdge: (edge: string, marks: string) => `${edge}, matched: ${marks}`,
  changed: say("what meets on the pattern"),
};

/** Nap or print that runs one way, and keeping the parts of one bag in one shade. */
export const enNap = {
  waySentence: (way: Blank) => words("Its nap or print lets pieces lie ", way, "."),
  wayLabel: say("Which way pieces lie"),
  ways: {
    both: say("both ways"),
    up: say("one way, arrows up the roll"),
    down: say("one way, arrows down the roll"),
    free: say("one way, whichever takes less"),
  },
  bandSentence: (length: Blank) =>
    words("Length of roll that the parts of one bag come from, for one shade: ", length, "."),
  bandLabel: say("Length of roll for one bag"),
  bandAnywhere: say("anywhere"),
};
