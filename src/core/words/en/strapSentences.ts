import type { SentenceTable } from "../../problems/problem.ts";
import type { StrapProblem } from "../../problems/strapProblems.ts";
import { formatLength } from "../../units/formatLength.ts";
import { straps } from "./straps.ts";

const both = (mm: number): string => `${formatLength(mm, "mm")} (${formatLength(mm, "in/16")})`;

const named = (table: object, id: string): string => (table as Readonly<Record<string, string>>)[id] ?? id;

/** A construction by its name, as a maker knows it. */
const nameOf = (id: string): string =>
  (straps.constructions as Readonly<Record<string, { readonly name: string }>>)[id]?.name ?? id;

/** More constructions than this are not listed. */
const MOST_NAMED = 3;

/** Straps in English. */
export const strapSentences: SentenceTable<StrapProblem> = {
  "strap-too-narrow": ({ widthMm, leastMm }) => ({
    what: `A strap ${both(widthMm)} wide is too narrow for its folds.`,
    remedy: `Make it at least ${both(leastMm)} wide, or choose fewer layers or thinner material.`,
  }),
  "strap-strip-too-narrow": ({ cutMm, leastMm }) => ({
    what: `A strip cut ${both(cutMm)} wide is too narrow to be folded this way.`,
    remedy: `Cut it at least ${both(leastMm)} wide, or choose fewer layers or thinner material.`,
  }),
  "strap-too-thick": ({ construction, thicknessMm, mostMm }) => ({
    what: `A layer of ${formatLength(thicknessMm, "mm")} is too thick for this construction (${nameOf(construction)}).`,
    remedy: `It takes up to ${formatLength(mostMm, "mm")}: choose one with fewer folds (${nameOf("bonded")}), skive leather where it folds, or take a thinner material.`,
  }),
  "strap-width-missing": ({ construction }) => ({
    what: `This construction (${nameOf(construction)}) needs a width.`,
    remedy: "Give the finished width, or the cut width of the strip.",
  }),
  "strap-cord-missing": () => ({
    what: "A corded handle needs the diameter of its cord.",
    remedy: "Give the cord's diameter; the handle's width follows from it.",
  }),
  "strap-width-conflict": ({ core, widthMm, followsMm }) => ({
    what: `With this ${core} the strap comes out ${both(followsMm)} wide, not ${both(widthMm)}.`,
    remedy: `Leave the width out, or choose another ${core}.`,
  }),
  "strap-too-short": ({ lengthMm, leastMm }) => ({
    what: `A length of ${both(lengthMm)} is used up by the ends of the strap.`,
    remedy: `Make it longer than ${both(leastMm)}, or choose other ends.`,
  }),
  "strap-hardware-narrow": ({ kind, innerMm, widthMm, leastMm }) => ({
    what: `The ${kind} is ${both(innerMm)} wide inside, too narrow for a strap of ${both(widthMm)}.`,
    remedy: `Use a ${kind} of at least ${both(leastMm)} inside, or a narrower strap.`,
  }),
  "strap-material-missing": ({ role, id }) => ({
    what:
      id === null ? `The strap needs a material for its ${role}.` : `There is no material "${id}" for the ${role}.`,
    remedy: "Name one of the project's materials.",
  }),
  "strap-role-unused": ({ role, construction }) => ({
    what: `This construction (${nameOf(construction)}) has no ${role}.`,
    remedy: `Leave the ${role} out, or choose a construction that has one.`,
  }),
  "strap-choice-out-of-range": ({ value, least, most }) => ({
    what: `${value} is out of range.`,
    remedy: `Use a number from ${least} to ${most}.`,
  }),
  "strap-turned-edge-wide": ({ allowanceMm, mostMm, widthMm }) => ({
    what: `An edge of ${both(allowanceMm)} turned in has no room in a strap ${both(widthMm)} wide.`,
    remedy: `Turn in at most ${both(mostMm)}, or sew it wider and trim it to that.`,
  }),
  "strap-stitch-off": ({ fromEdgeMm, mostMm, widthMm }) => ({
    what: `Stitching ${both(fromEdgeMm)} from each edge meets or crosses on a strap ${both(widthMm)} wide.`,
    remedy: `Stitch at most ${both(mostMm)} from the edge.`,
  }),
  "strap-short-part-short": ({ lengthMm, leastMm }) => ({
    what: `The short part, ${both(lengthMm)}, is used up by what its ends fold back.`,
    remedy: `Cut it ${both(leastMm)} or longer.`,
  }),
  "strap-choice-unused": ({ choice, construction, heededBy }) => {
    const needs = named(straps.choiceNeeds, choice);
    const others = heededBy.length <= MOST_NAMED ? `: ${heededBy.map(nameOf).join("; ")}` : "";
    return {
      what: `This construction (${nameOf(construction)}) has no use for ${named(straps.choices, choice)}.`,
      remedy:
        needs === choice
          ? `Leave it out, or choose another construction${others}.`
          : `Leave it out; it needs ${needs}.`,
    };
  },
  "strap-fold-test-open": ({ construction }) => ({
    what: `This test (${nameOf(construction)}) says nothing: its error is as wide as everything that can be. Nothing is stored.`,
    remedy: "Read with callipers and give --reading-error, or leave thin cloth at its usual values.",
  }),
  "strap-on-bias": () => ({
    what: "A strap cannot be cut on the bias: it would stretch and twist under load.",
    remedy: `Choose "lengthwise", "crosswise" or "either".`,
  }),
  "strap-fold-test-unreadable": ({ neutral, clearance }) => ({
    what: `These readings give K ${neutral.toFixed(2)} and clearance ${clearance.toFixed(2)}, which no material does (K lies between 0 and 1).`,
    remedy:
      "Measure the thickness of the folded stack, then fold and measure again; misreading by one millimetre is enough to cause this.",
  }),
};
