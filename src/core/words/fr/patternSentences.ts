import type {
  LeftOutThing,
  PatternLimit,
  PatternProblem,
  UnreadableReason,
} from "../../problems/patternProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import type { Draft } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";

const times = (count: number, one: string, many: string): string => (count === 1 ? `1 ${one}` : `${count} ${many}`);

const UNREADABLE: Readonly<Record<UnreadableReason, readonly [what: string, remedy: string]>> = {
  "not-xml": [
    "n’est pas du XML entier",
    "Ouvrez-le dans le programme qui l’a écrit et enregistrez-le encore en SVG simple.",
  ],
  "not-svg": ["est du XML, mais pas un dessin SVG", "Enregistrez le patron en SVG, DXF ou PDF."],
  entities: ["utilise des entités qui ne sont pas du simple texte", "Enregistrez-le encore en SVG simple."],
  "not-dxf": ["n’est pas un dessin DXF entier", "Enregistrez-le encore en DXF texte (R12 ou 2000)."],
  "binary-dxf": ["est un DXF binaire", "Enregistrez-le en DXF texte (ASCII)."],
  packed: ["est compressé", "Décompressez-le d’abord et donnez le fichier du dedans."],
  "not-pdf": ["n’est pas un PDF entier", "Téléchargez-le ou enregistrez-le encore."],
  "no-such-page": ["n’a pas cette page", "Demandez des pages qu’il a."],
  "not-image": ["n’est pas une image lisible", "Enregistrez-la en PNG ou en JPEG."],
  damaged: ["est abîmé ou coupé", "Téléchargez-le ou enregistrez-le encore."],
  "unknown-kind": ["n’est pas une sorte de patron connue ici", "Donnez du SVG, DXF, PDF, PNG ou JPEG."],
};

const LIMITS: Readonly<Record<PatternLimit, (limit: number) => string>> = {
  megabytes: (limit) => `fait plus de ${limit} Mo`,
  lines: (limit) => `a plus de ${limit} lignes`,
  points: (limit) => `a plus de ${limit} points`,
  "style-rules": (limit) => `a plus de ${limit} règles de style`,
  nesting: (limit) => `est imbriqué sur plus de ${limit} niveaux`,
  copies: (limit) => `répète ses parties plus de ${limit} fois`,
  pages: (limit) => `a plus de ${limit} pages`,
  megapixels: (limit) => `a plus de ${limit} millions de pixels`,
  seconds: (limit) => `demande plus de ${limit} s à lire`,
  memory: (limit) => `demande plus de ${limit} Mo de mémoire`,
};

const THINGS: Readonly<Record<LeftOutThing, readonly [one: string, many: string]>> = {
  picture: ["image", "images"],
  script: ["script, qui n’a pas été exécuté", "scripts, qui n’ont pas été exécutés"],
  "outside-reference": [
    "renvoi à un autre fichier, qui n’a pas été ouvert",
    "renvois à d’autres fichiers, qui n’ont pas été ouverts",
  ],
  entity: ["entité", "entités"],
  hidden: ["chose cachée", "choses cachées"],
  "off-layer": ["chose sur un calque éteint", "choses sur des calques éteints"],
  "frame-of-text": ["cadre de texte", "cadres de texte"],
  "unknown-shape": ["chose d’une sorte inconnue", "choses d’une sorte inconnue"],
  solid: ["surface remplie ou volume", "surfaces remplies ou volumes"],
  dimension: ["cote", "cotes"],
};

const UNITS: Readonly<Record<string, string>> = {
  px72: "72 px par pouce",
  px90: "90 px par pouce",
  px96: "96 px par pouce",
  mm: "millimètres",
  cm: "centimètres",
  m: "mètres",
  in: "pouces",
  ft: "pieds",
};
const unitWords = (unit: string): string => UNITS[unit] ?? unit;

/** Makers' own patterns in French. */
export const patternSentences: Draft<SentenceTable<PatternProblem>> = {
  "pattern-unreadable": ({ reason, line }) => ({
    what: `Le fichier ${UNREADABLE[reason][0]}${line > 0 ? ` (ligne ${line})` : ""}.`,
    remedy: UNREADABLE[reason][1],
  }),
  "pattern-encrypted": () => ({
    what: "Le PDF est fermé par un mot de passe.",
    remedy: "Ouvrez-le avec son mot de passe et enregistrez-le ou imprimez-le en PDF sans mot de passe.",
  }),
  "pattern-empty": () => ({
    what: "Il n’y a aucune ligne visible dedans.",
    remedy: "Vérifiez que les lignes ne sont ni cachées, ni sur un calque éteint, ni une image.",
  }),
  "pattern-photo-unscaled": () => ({
    what: "Rien ne dit la taille de l’image\u00a0: ni notre feuille de repère ni une feuille de taille connue n’y a été trouvée, et deux points ne sont pas donnés.",
    remedy:
      "Imprimez notre feuille de repère et posez-la près du patron, les sept anneaux bien en vue\u00a0; ou posez le patron sur une feuille claire de taille connue sur un fond sombre et nommez la feuille\u00a0; ou donnez deux points et leur distance.",
  }),
  "pattern-photo-error": ({ errorMm, hasPerspective }, say) => ({
    what: `Les contours de cette image peuvent s’écarter d’environ ${say(errorMm)}${hasPerspective ? "\u00a0; sa perspective a été redressée" : ""}.`,
    remedy: hasPerspective
      ? "Mesurez une longueur sur le patron et comparez."
      : "Cela ne vaut que si l’appareil regardait droit vers le bas\u00a0; une feuille de taille connue redresse la perspective.",
  }),
  "pattern-pages-apart": ({ count }) => ({
    what: `Les ${count} pages sont côte à côte\u00a0: rien de connu ici ne dit comment elles vont ensemble.`,
    remedy: "Dites combien de feuilles font une rangée et quelle largeur de bord se coupe.",
  }),
  "pattern-too-much": ({ of, limit }) => ({
    what: `Le fichier ${LIMITS[of](limit)}, ce dont aucun patron n’a besoin.`,
    remedy: "N’enregistrez que les lignes du patron, sans remplissages ni images.",
  }),
  "pattern-unit-assumed": ({ unit }) => ({
    what: `Le fichier ne dit pas sa taille\u00a0; il a été lu en ${unitWords(unit)}.`,
    remedy: "Comparez les tailles avec le papier\u00a0; il peut se lire dans une autre unité.",
  }),
  "pattern-scale-doubtful": ({ sideMm, wouldBeMm, unit, mended }, say) => ({
    what: mended
      ? `Lu en ${unitWords(unit)}\u00a0: le plus long côté fait maintenant ${say(wouldBeMm)}, et non ${say(sideMm)}.`
      : `Le plus long côté fait ${say(sideMm)}\u00a0; en ${unitWords(unit)} il ferait ${say(wouldBeMm)}.`,
    remedy: mended
      ? "Comparez un côté avec le papier."
      : `Comparez avec le papier\u00a0; la réparation "scale", ou l’unité ${quoted(unit)}, le lit ainsi.`,
  }),
  "pattern-size-unlikely": ({ sizeMm, unit }, say) => ({
    what: `Le patron entier ne fait que ${say(sizeMm)}.`,
    remedy: `Si c’est faux, l’unité ${quoted(unit)} le lit en ${unitWords(unit)}.`,
  }),
  "pattern-path-broken": ({ at }) => ({
    what: `Le tracé est fautif après ${times(at, "caractère", "caractères")}\u00a0; il est dessiné jusque-là.`,
    remedy: "Regardez s’il manque quelque chose, et dessinez-le ou enregistrez-le encore.",
  }),
  "pattern-numbers-unusable": ({ count }) => ({
    what: `${times(count, "ligne a", "lignes ont")} des nombres qui n’en sont pas ou bien trop grands, et ne peuvent servir.`,
    remedy: "Regardez-les dans le dessin et dessinez-les encore.",
  }),
  "pattern-flat": ({ count }) => ({
    what: `${times(count, "ligne n’entoure", "lignes n’entourent")} rien\u00a0: tous ses points font une ligne ou un point.`,
    remedy: "Regardez si une échelle l’a réduite à rien dans un sens.",
  }),
  "pattern-left-out": ({ thing, count }) => ({
    what: `Laissé de côté\u00a0: ${times(count, ...THINGS[thing])}.`,
    remedy:
      thing === "hidden" || thing === "off-layer"
        ? "Montrez-la dans le dessin si vous la voulez."
        : "Dessinez-la en lignes si vous la voulez.",
  }),
  "pattern-gap": ({ gapMm, xMm, yMm, mended }, say) => ({
    what: `Le contour est ouvert de ${say(gapMm)} près de (${say(xMm)}\u00a0; ${say(yMm)})${mended ? "\u00a0; il a été fermé par une ligne droite" : ""}.`,
    remedy: mended ? "Regardez-le à cet endroit." : 'La réparation "gaps" le ferme par une ligne droite.',
  }),
  "pattern-doubled": ({ other, mended }) => ({
    what: `Elle est tout entière sur ${quoted(other)}${mended ? "\u00a0; elle a été retirée" : ""}.`,
    remedy: mended ? "Rien n’est plus coupé deux fois." : 'La réparation "doubles" retire la seconde.',
  }),
  "pattern-partly-doubled": ({ other, doubledMm, mended }, say) => ({
    what: `${say(doubledMm)} de la ligne ${mended ? "étaient" : "sont"} sur une partie de ${quoted(other)}${mended ? " et ont été retirés" : ""}.`,
    remedy: mended ? "Rien n’est plus coupé deux fois." : 'La réparation "doubles" retire ce bout.',
  }),
  "pattern-crosses-itself": ({ xMm, yMm, count, more, mended }, say) => ({
    what: `Le contour se croise ${more ? "au moins " : ""}${count} fois, d’abord près de (${say(xMm)}\u00a0; ${say(yMm)})${mended ? "\u00a0; sa plus grande surface a été gardée" : ""}.`,
    remedy: mended
      ? "Regardez-le à cet endroit."
      : 'La réparation "crossings" garde la plus grande surface qu’il entoure.',
  }),
  "pattern-sliver": ({ widthMm, lengthMm, mended }, say) => ({
    what: `C’est un éclat, long de ${say(lengthMm)} et large d’environ ${say(widthMm)}${mended ? "\u00a0; il a été retiré" : ""}.`,
    remedy: mended ? "Il n’y a rien à faire." : 'La réparation "slivers" le retire.',
  }),
};
