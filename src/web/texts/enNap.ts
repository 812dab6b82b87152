import { type Blank, words } from "./words.tsx";

const say = (text: string): string => text;

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
