import type { CupboardProblem } from "../../problems/cupboardProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

/** The cupboard in English. */
export const cupboardSentences: SentenceTable<CupboardProblem> = {
  "no-such-piece": ({ label, nearest }) => ({
    what: `There is no piece ${label} in this cupboard.`,
    remedy: nearest === null ? "Look at its label again." : `Did you mean ${nearest}?`,
  }),
  "piece-out-already": ({ label, project, on }) => ({
    what: `The piece ${label} was taken out for ${quoted(project)} on ${on}.`,
    remedy: "Give it back first if it was not cut, or lay out again without it.",
  }),
  "project-has-pieces-out": ({ project, labels, on }) => ({
    what: `Pieces are out for a project called ${quoted(project)} already: ${labels.join(", ")}, since ${on}.`,
    remedy:
      "If that is this project, take these as more for it. If it is another of the same name, give this one another name first.",
  }),
  "photo-unreadable": ({ mostKb }) => ({
    what: "The photo is neither the name of a file nor a small picture.",
    remedy: `Write a file's name, or a JPEG, PNG or WebP of at most ${mostKb} kB as a data address.`,
  }),
  "piece-not-out": ({ label }) => ({
    what: `The piece ${label} is in the cupboard already.`,
    remedy: "There is nothing to give back.",
  }),
  "piece-twice": ({ label, firstPath }) => ({
    what: `The code ${label} stands at ${firstPath} already.`,
    remedy: "Give every piece a code of its own.",
  }),
  "piece-open-ended": ({ label }) => ({
    what: `The roll ${label} has no length.`,
    remedy: "Measure what is left on it and write that.",
  }),
  "piece-code-taken": ({ label }) => ({
    what: `The project has a stock called ${label}, as a piece of the cupboard is.`,
    remedy: "Rename it in the project.",
  }),
  "shades-mixed": ({ cloth, shades }) => ({
    what: `The cupboard has ${quoted(cloth)} in several shades: ${shades.join(", ")}.`,
    remedy: "Say which one is to be used.",
  }),
  "plan-kept-already": ({ on }) => ({
    what: `What this plan leaves was put into the cupboard on ${on}.`,
    remedy: "Once is enough; undo that step if it was wrong.",
  }),
  "plan-leaves-nothing": () => ({
    what: "This plan leaves nothing that is worth keeping.",
    remedy: "A leftover is kept from 60 mm wide and long.",
  }),
  "plan-takes-nothing": () => ({
    what: "This plan cuts no piece of the cupboard.",
    remedy: "Lay out with the cupboard first, so that its pieces are used.",
  }),
  "day-unreadable": ({ value }) => ({
    what: `${quoted(value)} is no date.`,
    remedy: "Write year, month and day, such as 2027-03-31.",
  }),
  "cupboard-not-stored": () => ({
    what: "This browser could not keep the change.",
    remedy: "Make room on the device or allow the page to keep data, and try again.",
  }),
  "nothing-to-undo": () => ({
    what: "There is nothing to undo.",
    remedy: "The last 100 changes can be undone, the newest first.",
  }),
};
