import type { BatchProblem } from "../../problems/batchProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

/** Sentences about a table of orders. */
export const batchSentences: SentenceTable<BatchProblem> = {
  "orders-empty": () => ({
    what: "There is no order in it.",
    remedy: "Write a row of heads, then one row for each order.",
  }),
  "orders-not-a-list": () => ({
    what: "It is no list of orders.",
    remedy: 'Write a list of groups, such as [{ "order": "0412", "bags": 2 }].',
  }),
  "orders-unreadable": ({ line }) => ({
    what: `The table cannot be read from line ${line} on.`,
    remedy: "A cell with a quotation mark in it stands in quotation marks, and each one inside is doubled.",
  }),
  "order-column-missing": () => ({
    what: "There is no column that names the orders.",
    remedy: 'Give one column the head "order".',
  }),
  "order-column-unknown": ({ nearest }) => ({
    what: "This head names nothing in the template.",
    remedy:
      nearest === null
        ? 'Write order, due, shade, bags, or a part and its field, such as "handle.width".'
        : `Did you mean ${quoted(nearest)}?`,
  }),
  "order-column-ambiguous": ({ parts }) => ({
    what: "More than one part of the template has this name.",
    remedy: `Write the id instead: ${parts.map(quoted).join(", ")}.`,
  }),
  "order-column-twice": ({ first }) => ({
    what: `This column says the same as the column ${quoted(first)}.`,
    remedy: "Leave one of them out.",
  }),
  "order-nameless": () => ({ what: "This order has no name.", remedy: "Write its number or name here." }),
  "order-name-twice": ({ name, firstRow }) => ({
    what: `The order ${quoted(name)} stands in row ${firstRow} already.`,
    remedy: "Give each order a name of its own.",
  }),
  "order-too-many-cells": ({ count, most }) => ({
    what: `This row has ${count} cells under ${most} heads.`,
    remedy: "Put cells with a separator in them in quotation marks.",
  }),
  "due-unreadable": ({ value }) => ({
    what: `${quoted(value)} is no date.`,
    remedy: "Write year, month and day, such as 2027-03-31.",
  }),
};
