import type { Expected, FileProblem, JsonFaultReason } from "../../problems/fileProblems.ts";
import type { SentenceTable } from "../../problems/problem.ts";
import type { Draft } from "../oneLanguage.ts";
import { quoted } from "../phrase.ts";

const listed = (names: readonly string[]): string => names.slice(0, 12).map(quoted).join(", ");
const meant = (nearest: string | null): string =>
  nearest === null ? "" : ` Vouliez-vous dire ${quoted(nearest)}\u00a0?`;

const bounds = (min: number | null, max: number | null): string =>
  min === null ? `Donnez au plus ${max}.` : max === null ? `Donnez au moins ${min}.` : `Donnez de ${min} à ${max}.`;

const FAULTS: Readonly<Record<JsonFaultReason, string>> = {
  "ended-early": "le texte finit avant que tout soit fermé",
  "more-after-end": "quelque chose suit après la fin",
  "value-expected": "il devrait y avoir une valeur ici",
  "key-expected": "il devrait y avoir une clé entre guillemets droits ici",
  "colon-expected": "il devrait y avoir un deux-points après la clé",
  "comma-expected": "il devrait y avoir une virgule ou le crochet fermant ici",
  "comma-too-many": "il y a une virgule de trop avant ceci",
  "bad-number": "ce n’est pas un nombre JSON correct",
  "bad-text": "ce texte n’est pas fermé, ou contient un saut de ligne ou une barre oblique inverse fausse",
  "too-deep": "les crochets sont imbriqués trop profondément",
};

const EXPECTED: Readonly<Record<Expected, string>> = {
  length: 'une longueur comme "12 cm"',
  "length-or-open": 'une longueur comme "2.4 m", ou "open"',
  share: 'un pourcentage comme "3 %"',
  count: "un nombre entier comme 2",
  money: "un montant comme 12.50",
  number: "un nombre",
  text: "un texte entre guillemets droits",
  "yes-or-no": "true ou false",
  "one-way": 'true, false, "up", "down" ou "free"',
  list: "une liste entre [ ]",
  group: "un groupe de clés entre { }",
  place: 'une place [droit-fil, travers], comme ["10 cm", "4 cm"]',
  point: "un point [droit-fil, travers], ou [droit-fil, travers, flèche] quand le bord qui suit est un arc",
  paper: 'un papier comme "A4", ou une taille comme { "width": "13 in", "height": "19 in" }',
  measure: 'une longueur comme "12 cm", ou ce qu’elle suit, comme { "of": "body", "measure": "along" }',
  edge: 'le numéro d’un bord comme 2, ou son nom comme "top"',
  size: 'une longueur comme "25 mm", ou un groupe comme { "cut": "10 cm" }',
};

const GRAINS: Readonly<Record<string, string>> = {
  lengthwise: "dans la longueur",
  crosswise: "dans la largeur",
  either: "dans la longueur ou la largeur",
};
const grainOf = (grain: string): string => GRAINS[grain] ?? grain;

/** Project files in French. */
export const fileSentences: Draft<SentenceTable<FileProblem>> = {
  "file-empty": () => ({
    what: "Le fichier est vide.",
    remedy: 'Un projet commence par { "laywright": 1, "name": … }\u00a0; copiez-en un des exemples pour commencer.',
  }),
  "workshop-missing": ({ name }) => ({
    what: `Le projet nomme l’atelier ${quoted(name)}, qui n’est pas là.`,
    remedy:
      "Mettez ce fichier à côté du projet, ou ouvrez-le d’abord dans la page\u00a0; ou ôtez le nom du projet.",
  }),
  "workshop-material-unknown": ({ id, known }) => ({
    what: `L’atelier n’a pas de matière ${quoted(id)}.`,
    remedy: known.length === 0 ? "Il n’en a aucune." : `Il a\u00a0: ${known.join(", ")}.`,
  }),
  "file-not-json": ({ line, column, reason }) => ({
    what: `Le fichier n’est pas du JSON correct à la ligne ${line}, colonne ${column}\u00a0: ${FAULTS[reason]}.`,
    remedy: "Cherchez là, et juste avant, une virgule, un guillemet ou un crochet qui manque ou qui est de trop.",
  }),
  "file-too-large": ({ characters, limit }) => ({
    what: `Le fichier a ${characters} caractères\u00a0; un projet en a au plus ${limit}.`,
    remedy: "Vérifiez que c’est un fichier de projet\u00a0; partagez une grande série en plusieurs projets.",
  }),
  "file-too-deep": ({ limit }) => ({
    what: `Des listes ou des groupes sont imbriqués sur plus de ${limit} niveaux.`,
    remedy: "Un projet en demande bien moins\u00a0; vérifiez que c’est un fichier de projet.",
  }),
  "file-newer": ({ version, known }) => ({
    what: `Le fichier est de la version ${version}\u00a0; ce programme lit jusqu’à la version ${known}.`,
    remedy:
      "Il a été enregistré par un Laywright plus récent\u00a0: mettez celui-ci à jour, et le fichier s’ouvrira.",
  }),
  "file-version-unknown": ({ value, known }) => ({
    what: value === null ? "Le fichier ne dit pas de version." : `La version du fichier est ${value}.`,
    remedy: `Un fichier de projet dit "laywright": ${known} tout en haut.`,
  }),
  "unknown-key": ({ key, nearest }) => ({
    what: `La clé ${quoted(key)} n’est pas connue ici.`,
    remedy: nearest === null ? "Ôtez-la." : `Vouliez-vous dire ${quoted(nearest)}\u00a0? Sinon, ôtez-la.`,
  }),
  "key-missing": ({ key }) => ({ what: `La clé ${quoted(key)} manque.`, remedy: "Ajoutez-la." }),
  "key-repeated": ({ key }) => ({
    what: `La clé ${quoted(key)} est deux fois ici.`,
    remedy: "Gardez l’une des deux.",
  }),
  "wrong-type": ({ expected, value }) => ({
    what: `${value} ne peut pas être ici.`,
    remedy: `Écrivez ${EXPECTED[expected]}.`,
  }),
  "not-one-of": ({ value, choices, nearest }) => ({
    what: `${value} n’est pas un choix ici.${meant(nearest)}`,
    remedy: `Prenez l’un de ceux-ci\u00a0: ${listed(choices)}.`,
  }),
  "number-out-of-range": ({ value, min, max }) => ({
    what: `Le nombre ${value} est hors limites.`,
    remedy: bounds(min, max),
  }),
  "more-problems": ({ count }) => ({
    what: count === 1 ? "Il y a encore 1 problème." : `Il y a encore ${count} problèmes.`,
    remedy: "Réglez d’abord ceux d’au-dessus\u00a0; c’est peut-être le mauvais fichier.",
  }),
  "text-empty": () => ({ what: "Le texte est vide.", remedy: "Écrivez un nom." }),
  "text-too-long": ({ characters, limit }) => ({
    what: `Le texte a ${characters} caractères.`,
    remedy: `N’en mettez pas plus de ${limit}.`,
  }),
  "text-unprintable": ({ value }) => ({
    what: `Le texte ${value} contient des caractères qui ne s’impriment pas.`,
    remedy: "Tapez-le de nouveau sans sauts de ligne ni caractères de contrôle.",
  }),
  "list-length": ({ count, least, most }) => ({
    what: `La liste a ${count} entrées.`,
    remedy: bounds(least, most),
  }),
  "duplicate-id": ({ id, firstPath }) => ({
    what: `L’identifiant ${quoted(id)} est déjà pris à ${firstPath}.`,
    remedy: "Donnez à chaque matière, stock, sangle et pièce un identifiant à elle.",
  }),
  "unknown-material": ({ id, nearest, known }) => ({
    what: `Il n’y a pas de matière ${quoted(id)}.${meant(nearest)}`,
    remedy:
      known.length === 0
        ? "Ajoutez-la aux matières."
        : `Ajoutez-la aux matières, ou prenez l’une de celles-ci\u00a0: ${listed(known)}.`,
  }),
  "color-unreadable": ({ value }) => ({
    what: `${quoted(value)} n’est pas une couleur lisible ici.`,
    remedy:
      'Écrivez # et six chiffres de 0 à 9 ou de a à f, deux pour le rouge, deux pour le vert et deux pour le bleu, comme "#1e5ac8".',
  }),
  "layer-name-unusable": ({ value }) => ({
    what: `${quoted(value)} ne peut pas nommer un calque dans tous les fichiers.`,
    remedy: "Prenez de 1 à 31 lettres a à z, chiffres, traits d’union, traits bas ou $, sans espaces.",
  }),
  "layer-is-cut": ({ layer, role }) => ({
    what: `Le rôle ${quoted(role)} partagerait le calque ${quoted(layer)} avec les coupes, et tout ce qui est sur ce calque est coupé.`,
    remedy: "Donnez deux calques différents.",
  }),
  "laser-has-no-blade": ({ key }) => ({
    what: `Un laser n’a pas de lame, ${quoted(key)} n’a donc pas de sens.`,
    remedy: "Ôtez-le, ou dites que l’outil est une lame (knife). Ce qu’un laser brûle est son trait de coupe.",
  }),
  "knife-takes-no-kerf": ({ kerfMm }, say) => ({
    what: `Un trait de coupe de ${say(kerfMm)} ne va pas avec le déport ou le dépassement d’une lame.`,
    remedy:
      "Une lame n’enlève pas de matière\u00a0: mettez le trait de coupe à 0, ou dites que l’outil est un laser.",
  }),
  "grip-eats-bed": ({ gripMm, sideMm }, say) => ({
    what: `Des bords tenus de ${say(gripMm)} des deux côtés ne laissent rien d’un plateau de ${say(sideMm)}.`,
    remedy: "Réduisez le bord tenu, ou corrigez la taille du plateau.",
  }),
  "paper-too-small": ({ sideMm, marginMm, overlapMm }, say) => ({
    what: `Il reste trop peu de place sur un papier large de ${say(sideMm)} avec des marges de ${say(marginMm)} et un recouvrement de ${say(overlapMm)}.`,
    remedy: "Prenez un papier plus grand, une marge plus petite ou un recouvrement plus petit.",
  }),
  "bias-refused": () => ({
    what: "Les pièces ne se placent pas dans le biais.",
    remedy:
      'Des sangles et des pièces coupées dans le biais s’étirent et se tordent. Prenez le droit-fil "lengthwise", "crosswise" ou "either".',
  }),
  "outline-crosses-itself": ({ edges, xMm, yMm }, say) => ({
    what: `Le contour se croise ou se touche près de (${say(xMm)}\u00a0; ${say(yMm)})\u00a0: les bords ${edges[0] + 1} et ${edges[1] + 1} se rencontrent, comptés depuis le premier point.`,
    remedy: "Mettez les points dans l’ordre autour de la forme, une fois chacun.",
  }),
  "outline-no-area": ({ points }) => ({
    what: `Le contour de ${points} points n’entoure rien.`,
    remedy: "Donnez au moins trois points qui ne sont pas sur une ligne.",
  }),
  "outline-repeats-point": ({ point, xMm, yMm }, say) => ({
    what: `Le point ${point} à (${say(xMm)}\u00a0; ${say(yMm)}) est le même que celui d’avant.`,
    remedy: "Ôtez-le\u00a0; un contour se ferme tout seul, ne répétez donc pas le premier point à la fin.",
  }),
  "selvedges-eat-width": ({ widthMm, selvedgeMm }, say) => ({
    what: `Deux lisières de ${say(selvedgeMm)} ne laissent rien d’une largeur de ${say(widthMm)}.`,
    remedy: 'Donnez la pleine largeur à "width" et la largeur d’une lisière à "selvedge".',
  }),
  "layers-not-in-twos": ({ count }) => ({
    what: `${count} couches ne peuvent pas se poser endroit contre endroit deux par deux.`,
    remedy: `Donnez un nombre pair, comme ${count + 1}, ou posez-les toutes l’endroit dessus.`,
  }),
  "flaws-under-layers": () => ({
    what: "Un rouleau avec des défauts ne peut pas se poser en couches\u00a0: les défauts seraient cachés sous d’autres.",
    remedy: "Coupez d’abord les défauts et donnez le rouleau comme les longueurs qui restent, ou pliez-le en long.",
  }),
  "repeat-without-length": () => ({
    what: "Le rapport ne dit ni de combien le motif se répète en long ni de combien en travers.",
    remedy: "Donnez along, across ou les deux, ou ôtez le rapport.",
  }),
  "half-drop-one-way": () => ({
    what: "Des motifs décalés de moitié se répètent dans les deux sens, mais un seul rapport est donné.",
    remedy: "Donnez along et across, ou ôtez halfDrop.",
  }),
  "tolerance-eats-repeat": ({ toleranceMm, repeatMm }, say) => ({
    what: `Un écart admis de ${say(toleranceMm)} est la moitié d’un rapport de ${say(repeatMm)} ou plus\u00a0: tout se raccorderait.`,
    remedy: "Donnez un écart plus petit, 1 mm pour la plupart des tissus.",
  }),
  "radius-too-large": ({ radiusMm, mostMm }, say) => ({
    what: `Un rayon de coin de ${say(radiusMm)} ne tient pas.`,
    remedy: `Donnez au plus ${say(mostMm)}\u00a0: la moitié du côté le plus court.`,
  }),
  "bow-too-large": ({ bowMm, mostMm }, say) => ({
    what: `Une flèche de ${say(bowMm)} est plus d’un demi-cercle.`,
    remedy: `Donnez au plus ${say(mostMm)}, la moitié de la distance au point suivant, ou ajoutez un point sur l’arc.`,
  }),
  "grain-conflict": ({ wish, materialId, rule }) => ({
    what: `Une pièce ${grainOf(wish)} ne peut pas se couper dans ${quoted(materialId)}, qui ne s’utilise que ${grainOf(rule)}.`,
    remedy: `Placez la pièce ${grainOf(rule)} ou dans les deux sens, ou changez le droit-fil de la matière.`,
  }),
  "too-many-pieces": ({ count, most }) => ({
    what: `Le projet demande ${count} pièces.`,
    remedy: `Placez-en au plus ${most} à la fois\u00a0: faites moins de sacs dans un projet.`,
  }),
};
