import type { Draft } from "../oneLanguage.ts";
import type { PhraseCode } from "../strapWords.ts";

/** Steps and notes in French. Parts that begin with a comma or a blank follow another part. */
export const strapPhrases: Draft<Readonly<Record<PhraseCode, string>>> = {
  "cut-pieces":
    "Coupez chaque pièce de la liste dans le droit-fil, jamais dans le biais\u00a0; la bande est large de {cut}.",
  "cut-tube":
    "Coupez chaque pièce de la liste dans le droit-fil\u00a0; seul un tube étroit peut être dans le biais. La bande est large de {cut}.",
  "cut-sheet": "Coupez chaque pièce de la liste dans le même sens\u00a0; la bande est large de {cut}.",
  "cut-leather":
    "Coupez chaque pièce de la liste le long de l’échine, où la peau est ferme, et aucune dans le ventre\u00a0; la bande est large de {cut}.",
  "interface-fuse": "Avant de plier, thermocollez ou bâtissez l’entoilage",
  "interface-glue": "Avant de plier, collez l’entoilage avec une colle fine (aucun fer ne le fait fondre dessus)",
  "interface-strip-full": " sur toute la bande.",
  "interface-facing-full": " sur toute la parementure.",
  "interface-strip-reduced": " sur les trois quarts du milieu de la bande.",
  "interface-facing-reduced": " sur les trois quarts du milieu de la parementure.",
  "interface-strip-quarter": " sur la partie de la bande qui devient sa face, entre les lignes de pli.",
  "interface-facing-quarter": " sur la partie de la parementure qui devient sa face, entre les lignes de pli.",
  "how-pressed": "\u00a0; repassez et épinglez ou pincez.",
  "how-taped":
    "\u00a0; tenez avec un double face étroit hors de la ligne de piqûre, et aplatissez le pli au rouleau (pas de fer).",
  "how-rolled":
    "\u00a0; tenez avec un double face étroit hors de la ligne de piqûre, et laissez le pli rond\u00a0: plié vif, le liège casse.",
  "held-clipped": ", et pincez-la.",
  "held-taped": ", et collez-la au double face hors de la ligne de piqûre ou pincez-la.",
  "from-the-edge-before-trimming":
    ", à {raw} du bord tel qu’il est maintenant\u00a0: à {topstitch} du bord une fois rogné.",
  "extra-rows": "Piquez {rows} de plus entre ces rangs, à {apart} l’un de l’autre.",
  "from-the-edge": ", à {topstitch} du bord.",
  "tie-off": " Les trous restent\u00a0: pas de point arrière, nouez les fils.",

  "fourfold-centre": "Marquez ou tracez la ligne du milieu, envers contre envers, et rouvrez.",
  "fourfold-centre-drawn": "Tracez la ligne du milieu sur l’envers\u00a0; ne la pliez pas.",
  "fourfold-edges":
    "Rabattez les deux bords longs\u00a0; chaque bord brut s’arrête {setback} avant la ligne du milieu",
  "fourfold-halve": "Pliez en deux sur la ligne du milieu et pincez\u00a0; la sangle doit mesurer {width}.",
  "fourfold-topstitch": "Surpiquez d’abord le bord ouvert, puis le bord plié",

  "bonded-bond": "Collez les couches envers contre envers, pressez-les et laissez prendre la colle.",
  "bonded-stitch-layers": "Piquez aussi le long des deux bords\u00a0: un collage seul peut lâcher à force de plier",
  "bonded-stitch": "Piquez le long des deux bords",
  "bonded-trim": "Rognez les deux bords à {width} juste, avec une lame affûtée et une règle.",
  "bonded-finish": "Poncez ou chanfreinez les bords, puis peignez-les ou lissez-les en couches fines.",

  "edge-as-cut":
    "Laissez les bords bruts tels quels\u00a0; ôtez les fils et les peluches avec des ciseaux bien coupants.",
  "edge-paint":
    "Poncez ou chanfreinez les bords bruts et peignez-les en couches fines\u00a0; laissez sécher chaque couche.",
  "edge-burnish": "Chanfreinez les bords bruts, humectez-les et lissez-les au bois ou à l’os.",

  "corded-measure":
    "Enroulez un morceau de cette matière même autour de ce cordon même et mesurez-le avant de couper\u00a0; fiez-vous à cet essai plus qu’à toute formule.",
  "corded-ends": "Repliez {back} de chaque bout plat sur lui-même, collez et piquez.",
  "corded-wrap":
    "Posez le cordon au milieu de la bande entre les bouts plats, enroulez, et pincez les bords ensemble.",
  "corded-stitch": "Piquez tout contre le cordon, à {allowance} des bords bruts, à la main ou avec un pied étroit.",
  "corded-trim": "Rognez l’ailette à côté de la piqûre.",
  "corded-finish": "Peignez, bordez ou surjetez les bords de l’ailette.",

  "turned-sew":
    "Cousez les deux bandes endroit contre endroit le long des deux bords longs, à {allowance} des bords bruts\u00a0; laissez une ouverture pour retourner si les deux bouts sont fermés.",
  "turned-turn":
    "Retournez sur l’endroit et roulez les coutures tout au bord\u00a0; la sangle doit mesurer {width}.",
  "turned-turn-reveal":
    "Retournez sur l’endroit et roulez les coutures vers l’arrière, pour que {reveal} de la bande extérieure se voient à côté de la parementure\u00a0; la sangle doit mesurer {width}.",
  "turned-pad": "Tirez le rembourrage dedans avec un cordon ou un retourne-biais avant de fermer le dernier bout.",
  "turned-topstitch-facing":
    "Surpiquez les deux bords du côté de la parementure, en mesurant depuis les bords de la parementure",
  "topstitch-both": "Surpiquez les deux bords",

  "hemmed-hem": "Rentrez de {hem} le bord long qui se verra dessous",
  "hemmed-pad": "Posez le rembourrage sur le tiers du milieu.",
  "hemmed-fold": "Rabattez le bord long brut, puis le bord ourlé par-dessus\u00a0; la sangle doit mesurer {width}.",
  "hemmed-setback": "Le bord ourlé s’arrête {setback} avant le pli d’en face.",
  "hemmed-topstitch": "Surpiquez le long du bord ourlé, puis le long du pli",

  "three-colour": "Teintez ou peignez avant de plier le bord long qui se verra, et laissez sécher.",
  "three-paint": "Peignez en couches fines, avant de plier, le bord long qui se verra, et laissez sécher chacune.",
  "three-burnish": "Chanfreinez, humectez et lissez le bord long qui se verra, avant de plier.",
  "three-first": "Rabattez l’autre bord long d’un tiers et appuyez le pli",
  "three-wrap":
    "Rabattez le dernier tiers sur le bord brut\u00a0; la sangle doit mesurer {width} et le bord visible s’arrêter {setback} avant le pli d’en face.",
  "three-topstitch": "Surpiquez du côté du bord brut, à {topstitch} de lui, puis à {topstitch} du pli.",

  "tube-sew": "Pliez en deux en long, endroit contre endroit, et cousez à {allowance} des bords bruts.",
  "tube-turn":
    "Retournez sur l’endroit et repassez ou marquez au doigt, la couture sur un bord\u00a0; le tube doit mesurer {width}.",

  "two-layer-edges":
    "Rabattez les deux bords longs de chaque bande vers son milieu\u00a0; les bords bruts ne doivent pas se chevaucher",
  "two-layer-lay": "Posez la parementure sur la bande extérieure, envers contre envers, à {reveal} de chaque bord",
  "two-layer-topstitch": "Surpiquez du côté de la parementure, depuis ses bords",

  "overlay-edges": "Rentrez les deux bords longs de {turn}",
  "overlay-lay": "Posez la bande sur la sangle tissée, à {margin} de chaque bord",
  "overlay-topstitch": "Surpiquez la bande depuis ses bords, les deux rangs dans le même sens",

  "sleeve-edges":
    "Rabattez les deux bords longs vers la ligne du milieu\u00a0; les bords bruts ne doivent pas se chevaucher",
  "sleeve-wrap":
    "Posez la sangle tissée contre la ligne du milieu, enveloppez-la de la gaine et pincez\u00a0; essayez d’abord sur une longueur de main.",
  "sleeve-topstitch": "Surpiquez d’abord le bord ouvert à travers la sangle tissée, puis le bord plié",
  "cover-edges": "Rentrez les deux bords longs de {turn}",
  "cover-wrap":
    "Enveloppez la sangle tissée de la gaine pour que ses bords se rejoignent au milieu du dos, et fermez-les à points coulés ou au zigzag.",
  "cover-topstitch": "Surpiquez les deux bords à travers la sangle tissée",

  "join-diagonal":
    "Posez les bouts droits de deux bandes endroit contre endroit à angle droit, cousez de coin à coin, recoupez à 1/4 in et ouvrez la couture\u00a0; de même pour chaque raccord.",
  "join-straight": "Cousez les bandes bout à bout, endroit contre endroit, et ouvrez les coutures.",
  "join-lapped": "Parez les deux bouts, superposez-les et collez-les, et piquez en travers.",

  "edges-skived":
    "Parez à {skived} les bords rentrés, sur l’envers, du bord brut jusqu’à la ligne de pli et pas plus loin.",

  "end-reduced":
    "Parez ou recoupez des couches aux bouts repliés ou rentrés, pour que la sangle y soit épaisse de {end}.",
  "end-tucked":
    "Rentrez sur l’envers {tucked} de chaque bout à fermer avant de plier ou de coudre les bords longs.",
  "end-tab":
    "Repliez la patte sur l’anneau, branches de {leg}, et piquez à travers les deux, 3/4 à 1 in au-dessous.",
  "end-thread":
    "Enfilez-la\u00a0: un bout sur la barre du milieu du coulant et piqué\u00a0; l’autre par l’anneau, de retour sur les deux barres extérieures du coulant, puis à sa propre boucle. Essayez le coulant avant de piquer le dernier bout.",
  "end-fold-back":
    "Repliez {back} du bout sur sa boucle et piquez deux fois en travers\u00a0; passez les couches doublées en tournant le volant à la main.",
  "end-fold-back-under":
    "Rentrez {under} du bout, repliez {back} sur sa boucle et piquez deux fois en travers\u00a0; passez les bosses en tournant le volant à la main.",
  "end-spare": "Recoupez {spare}, ce qui a été cousu trop long.",
  "end-short-part":
    "Faites de même la partie courte, coupée longue de {short}\u00a0; repliez un de ses bouts sur l’anneau et piquez en travers.",
  "end-seam": "Bâtissez le bout dans la couture du sac, {seam} à l’intérieur, et piquez deux fois par-dessus.",

  "strap-stout":
    "Épaisse de {thickness} pour une largeur de {width}, la sangle est ronde comme un cordon\u00a0: dure à plier, et elle roule.",
  "hard-to-turn":
    "Un tube long de {length} et large de {width} est dur à retourner dans cette matière\u00a0: faites-le plus large, d’un tissu plus fin, ou en deux.",
  "tube-bias":
    "Un tube étroit qui ne porte rien peut se couper dans le biais à la main\u00a0: il se retourne et se courbe mieux.",
  "burnish-leather":
    "Seul le cuir à tannage végétal se lisse\u00a0: peignez ou bordez les bords d’autres matières.",
  "home-machine":
    "{layers} couches, épaisseur {thickness} {where}\u00a0: une machine familiale prend environ {limit}. Si la vôtre prend plus, dites-le.",
  "machine-skive": "Parez le cuir là où il se plie et à ses bouts\u00a0: moitié de l’épaisseur y est d’usage.",
  "ring-length-unknown":
    "La longueur de l’anneau s’ajoute à la longueur portée\u00a0: mesurez-la et donnez-la après la largeur.",
  "clasp-length-unknown":
    "La longueur du fermoir s’ajoute à la longueur portée\u00a0: mesurez-la et donnez-la après la largeur.",
  "no-interfacing":
    "Un tissu sans entoilage se déforme et se tord quand il est plié et surpiqué\u00a0: entoilez-le.",
  "raw-edge-frays": "Un bord brut de tissu se voit et s’effilochera.",
  "knit-backing":
    "Un support tricoté cède en largeur\u00a0: les sangles se placent le long du rouleau sauf si vous dites autrement.",
  "unknown-backing":
    "L’élasticité d’un vinyle dépend de sa marque\u00a0: tirez-le d’abord dans les deux sens, et coupez toutes les sangles dans un seul.",
  "no-thickness":
    "L’épaisseur 0 donne la règle ronde du métier\u00a0; mesurez une pile pliée pour une taille vraie.",
  "ring-loose":
    "L’anneau est large de {inner} à l’intérieur\u00a0: une sangle de {width} s’y promène (±{tolerance} d’usage).",
  "slider-loose":
    "Le coulant est large de {inner} à l’intérieur\u00a0: une sangle de {width} s’y promène (±{tolerance} d’usage).",
  "clasp-loose":
    "Le fermoir est large de {inner} à l’intérieur\u00a0: une sangle de {width} s’y promène (±{tolerance} d’usage).",
  "slider-opening-unknown":
    "Mesurez la hauteur intérieure du coulant\u00a0: cette sangle demande environ {needed}.",
  "slider-tight":
    "Le coulant s’ouvre de {opening}\u00a0; une sangle épaisse de {thickness} demande environ {needed}.",
  "slider-slips":
    "Le coulant s’ouvre de {opening}, bien plus que ne demande une sangle épaisse de {thickness}\u00a0: elle glissera.",
  "slider-fixed-bar":
    "Une sangle épaisse de {thickness} glisse sur un coulant à barre fixe\u00a0: prenez-en un dont la barre bouge, ou une sangle plus épaisse.",
  "machine-thickness": "{layers} couches, épaisseur {thickness} {where}\u00a0: plus que les {limit} de la machine.",
  "machine-layers": "{layers} couches {where}\u00a0: plus que les {most} de la machine.",
  "edges-collide":
    "Des bords bruts à {gap} du pli du milieu entrent dans le pli\u00a0: retenez-les d’au moins {least}.",
  "stitch-short": "Des points de {stitch} perforent le vinyle\u00a0: prenez {least} ou plus.",
  "webbing-width":
    "La sangle tissée vient large de {width}\u00a0; la largeur courante la plus proche est {nearest}. Nommez la sangle tissée pour y ajuster le tissu.",
  "tab-short":
    "Des branches de {leg} sont trop courtes pour être piquées sous l’anneau\u00a0: il en faut {least} ou plus.",
  "longer-than-stock":
    "La bande est longue de {cut} et le plus long morceau en stock donne {longest}. Une sangle en deux parties avec un anneau entre elles se passe de raccord\u00a0; ne permettez les raccords que si ni elle ni un tissu plus long ne va.",
  "longer-than-stock-parts":
    "La bande est longue de {cut} et le plus long morceau en stock donne {longest}\u00a0: ne permettez les raccords que si un tissu plus long ne va pas.",
  "no-place-for-join":
    "Aucun raccord ne peut se placer loin des bouts fixés, de l’épaule, et de la course de l’anneau et du coulant\u00a0: prenez un tissu plus long.",
  joined:
    "Un raccord est épais et c’est l’endroit le plus faible d’une sangle qui porte\u00a0: évitez-le quand vous pouvez.",
  "join-loss":
    "Chaque raccord de bouts droits perd {loss}\u00a0; des bouts coupés à 45° avant de se joindre ne perdent que {preCut}.",
};
