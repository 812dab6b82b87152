import type { BatchProblem } from "../../problems/batchProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import type { Draft } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";

/** Sentences about a table of orders, in French. */
export const batchSentences: Draft<SentenceTable<BatchProblem>> = {
  "orders-empty": () => ({
    what: "Il ne contient aucune commande.",
    remedy: "Écrivez une ligne de titres, puis une ligne par commande.",
  }),
  "orders-not-a-list": () => ({
    what: "Ce n’est pas une liste de commandes.",
    remedy: 'Écrivez une liste de groupes, comme [{ "order": "0412", "bags": 2 }].',
  }),
  "orders-unreadable": ({ line }) => ({
    what: `Le tableau est illisible à partir de la ligne ${line}.`,
    remedy: "Une case qui contient un guillemet se met entre guillemets, et chaque guillemet du dedans se double.",
  }),
  "order-column-missing": () => ({
    what: "Aucune colonne ne nomme les commandes.",
    remedy: 'Donnez à une colonne le titre "order".',
  }),
  "order-column-unknown": ({ nearest }) => ({
    what: "Ce titre ne nomme rien dans le modèle.",
    remedy:
      nearest === null
        ? 'Écrivez order, due, shade, bags, ou une partie et son champ, comme "handle.width".'
        : `Vouliez-vous dire ${quoted(nearest)}\u00a0?`,
  }),
  "order-column-ambiguous": ({ parts }) => ({
    what: "Plusieurs parties du modèle portent ce nom.",
    remedy: `Écrivez plutôt l’identifiant\u00a0: ${parts.map(quoted).join(", ")}.`,
  }),
  "order-column-twice": ({ first }) => ({
    what: `Cette colonne dit la même chose que la colonne ${quoted(first)}.`,
    remedy: "Supprimez l’une des deux.",
  }),
  "order-nameless": () => ({
    what: "Cette commande n’a pas de nom.",
    remedy: "Écrivez ici son numéro ou son nom.",
  }),
  "order-name-twice": ({ name, firstRow }) => ({
    what: `La commande ${quoted(name)} est déjà à la ligne ${firstRow}.`,
    remedy: "Donnez à chaque commande un nom à elle.",
  }),
  "order-too-many-cells": ({ count, most }) => ({
    what: `Cette ligne a ${count} cases sous ${most} titres.`,
    remedy: "Mettez entre guillemets les cases qui contiennent un séparateur.",
  }),
  "due-unreadable": ({ value }) => ({
    what: `${quoted(value)} n’est pas une date.`,
    remedy: "Écrivez l’année, le mois et le jour, comme 2027-03-31.",
  }),
};
