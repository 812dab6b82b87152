import type { BatchProblem } from "../../problems/batchProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import { quoted } from "../phrase.ts";

/** Sätze über eine Tabelle von Aufträgen. */
export const batchSentences: SentenceTable<BatchProblem> = {
  "orders-empty": () => ({
    what: "Es steht kein Auftrag darin.",
    remedy: "Schreiben Sie eine Zeile mit Spaltenköpfen, darunter je Auftrag eine Zeile.",
  }),
  "orders-not-a-list": () => ({
    what: "Das ist keine Liste von Aufträgen.",
    remedy: 'Schreiben Sie eine Liste von Gruppen, etwa [{ "order": "0412", "bags": 2 }].',
  }),
  "orders-unreadable": ({ line }) => ({
    what: `Die Tabelle ist ab Zeile ${line} nicht zu lesen.`,
    remedy:
      "Eine Zelle mit Anführungszeichen darin steht in Anführungszeichen, und jedes darin wird doppelt geschrieben.",
  }),
  "order-column-missing": () => ({
    what: "Keine Spalte benennt die Aufträge.",
    remedy: 'Geben Sie einer Spalte den Kopf "order".',
  }),
  "order-column-unknown": ({ nearest }) => ({
    what: "Dieser Kopf benennt nichts in der Vorlage.",
    remedy:
      nearest === null
        ? 'Schreiben Sie order, due, shade, bags oder ein Teil und sein Feld, etwa "handle.width".'
        : `Meinen Sie ${quoted(nearest)}?`,
  }),
  "order-column-ambiguous": ({ parts }) => ({
    what: "Mehrere Teile der Vorlage heißen so.",
    remedy: `Schreiben Sie stattdessen die Kennung: ${parts.map(quoted).join(", ")}.`,
  }),
  "order-column-twice": ({ first }) => ({
    what: `Diese Spalte sagt dasselbe wie die Spalte ${quoted(first)}.`,
    remedy: "Lassen Sie eine davon weg.",
  }),
  "order-nameless": () => ({
    what: "Dieser Auftrag hat keinen Namen.",
    remedy: "Schreiben Sie seine Nummer oder seinen Namen hierher.",
  }),
  "order-name-twice": ({ name, firstRow }) => ({
    what: `Der Auftrag ${quoted(name)} steht schon in Zeile ${firstRow}.`,
    remedy: "Geben Sie jedem Auftrag einen eigenen Namen.",
  }),
  "order-too-many-cells": ({ count, most }) => ({
    what: `Diese Zeile hat ${count} Zellen unter ${most} Köpfen.`,
    remedy: "Setzen Sie Zellen, in denen ein Trennzeichen vorkommt, in Anführungszeichen.",
  }),
  "due-unreadable": ({ value }) => ({
    what: `${quoted(value)} ist kein Datum.`,
    remedy: "Schreiben Sie Jahr, Monat und Tag, etwa 2027-03-31.",
  }),
};
