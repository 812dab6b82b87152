import type { CupboardProblem } from "../../problems/cupboardProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import type { Draft } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";

/** The cupboard in French. */
export const cupboardSentences: Draft<SentenceTable<CupboardProblem>> = {
  "no-such-piece": ({ label, nearest }) => ({
    what: `Il n’y a pas de morceau ${label} dans ce placard.`,
    remedy: nearest === null ? "Regardez encore son étiquette." : `Vouliez-vous dire ${nearest}\u00a0?`,
  }),
  "piece-out-already": ({ label, project, on }) => ({
    what: `Le morceau ${label} a été sorti pour ${quoted(project)} le ${on}.`,
    remedy: "Rendez-le d’abord s’il n’a pas été coupé, ou refaites le placement sans lui.",
  }),
  "project-has-pieces-out": ({ project, labels, on }) => ({
    what: `Des morceaux sont déjà sortis pour un projet nommé ${quoted(project)}\u00a0: ${labels.join(", ")}, depuis le ${on}.`,
    remedy:
      "Si c’est ce projet, prenez ceux-ci en plus. Si c’en est un autre du même nom, donnez d’abord un autre nom à celui-ci.",
  }),
  "photo-unreadable": ({ mostKb }) => ({
    what: "La photo n’est ni le nom d’un fichier ni une petite image.",
    remedy: `Écrivez le nom d’un fichier, ou un JPEG, PNG ou WebP de ${mostKb} ko au plus en adresse data.`,
  }),
  "piece-not-out": ({ label }) => ({
    what: `Le morceau ${label} est déjà dans le placard.`,
    remedy: "Il n’y a rien à rendre.",
  }),
  "piece-twice": ({ label, firstPath }) => ({
    what: `Le code ${label} se trouve déjà à ${firstPath}.`,
    remedy: "Donnez à chaque morceau un code à lui.",
  }),
  "piece-open-ended": ({ label }) => ({
    what: `Le rouleau ${label} n’a pas de longueur.`,
    remedy: "Mesurez ce qu’il en reste et écrivez-le.",
  }),
  "piece-code-taken": ({ label }) => ({
    what: `Le projet a un tissu en stock nommé ${label}, comme un morceau du placard.`,
    remedy: "Renommez-le dans le projet.",
  }),
  "shades-mixed": ({ cloth, shades }) => ({
    what: `Le placard a ${quoted(cloth)} en plusieurs nuances\u00a0: ${shades.join(", ")}.`,
    remedy: "Dites laquelle utiliser.",
  }),
  "plan-kept-already": ({ on }) => ({
    what: `Ce que ce plan laisse a été rangé dans le placard le ${on}.`,
    remedy: "Une fois suffit\u00a0; annulez cette étape si elle était fausse.",
  }),
  "plan-leaves-nothing": () => ({
    what: "Ce plan ne laisse rien qui vaille d’être gardé.",
    remedy: "Une chute se garde à partir de 60 mm de large et de long.",
  }),
  "plan-takes-nothing": () => ({
    what: "Ce plan ne coupe aucun morceau du placard.",
    remedy: "Refaites d’abord le placement avec le placard, pour que ses morceaux servent.",
  }),
  "day-unreadable": ({ value }) => ({
    what: `${quoted(value)} n’est pas une date.`,
    remedy: "Écrivez l’année, le mois et le jour, comme 2027-03-31.",
  }),
  "cupboard-not-stored": () => ({
    what: "Ce navigateur n’a pas pu garder le changement.",
    remedy: "Faites de la place sur l’appareil ou permettez à la page de garder des données, et réessayez.",
  }),
  "nothing-to-undo": () => ({
    what: "Il n’y a rien à annuler.",
    remedy: "Les 100 derniers changements s’annulent, le plus récent d’abord.",
  }),
};
