/** Steps and notes in English. Parts that begin with a comma or a blank follow another part. */
export const strapPhrases = {
  "cut-pieces": "Cut every piece of the list on the straight grain, never on the bias; the strip is {cut} wide.",
  "cut-tube":
    "Cut every piece of the list on the straight grain; a narrow tube alone may lie on the bias. The strip is {cut} wide.",
  "cut-sheet": "Cut every piece of the list in the same direction; the strip is {cut} wide.",
  "cut-leather":
    "Cut every piece of the list along the backbone, where the skin is firm, and none from the belly; the strip is {cut} wide.",
  "interface-fuse": "Before folding, fuse or baste the interfacing",
  "interface-glue": "Before folding, glue the interfacing with a thin adhesive (no iron melts it on)",
  "interface-strip-full": " to the whole strip.",
  "interface-facing-full": " to the whole facing.",
  "interface-strip-reduced": " to the middle three quarters of the strip.",
  "interface-facing-reduced": " to the middle three quarters of the facing.",
  "interface-strip-quarter": " to the part of the strip that becomes its face, between the fold lines.",
  "interface-facing-quarter": " to the part of the facing that becomes its face, between the fold lines.",
  "how-pressed": "; press and pin or clip.",
  "how-taped": "; hold with narrow double-sided tape kept off the stitch line, and roll the fold flat (no iron).",
  "how-rolled":
    "; hold with narrow double-sided tape kept off the stitch line, and let the fold stay round: creased sharply, cork cracks.",
  "held-clipped": ", and clip it.",
  "held-taped": ", and tape it off the stitch line or clip it.",
  "from-the-edge-before-trimming":
    ", {raw} from the edge as it is now: {topstitch} from the edge once it is trimmed.",
  "extra-rows": "Stitch {rows} more between those rows, {apart} from one to the next.",
  "from-the-edge": ", {topstitch} from the edge.",
  "tie-off": " Holes stay: do not backstitch, tie the ends off.",

  "fourfold-centre": "Crease or draw the centre line, wrong sides together, and open it again.",
  "fourfold-centre-drawn": "Draw the centre line on the wrong side; do not crease it.",
  "fourfold-edges": "Fold both long edges in; each raw edge stops {setback} short of the centre line",
  "fourfold-halve": "Fold in half along the centre line and clip; the strap should measure {width}.",
  "fourfold-topstitch": "Topstitch the open edge first, then the folded one",

  "bonded-bond": "Bond the layers wrong sides together, press them and let the adhesive cure.",
  "bonded-stitch-layers": "Stitch along both edges as well: a bond alone can part with flexing",
  "bonded-stitch": "Stitch along both edges",
  "bonded-trim": "Trim both edges true to {width} with a sharp blade and a ruler.",
  "bonded-finish": "Sand or bevel the edges, then paint or burnish them in thin coats.",

  "edge-as-cut": "Leave the raw edges as cut; take off loose threads and fluff with sharp scissors.",
  "edge-paint": "Sand or bevel the raw edges and paint them in thin coats; let each coat dry.",
  "edge-burnish": "Bevel the raw edges, dampen them and rub them smooth with wood or bone.",

  "corded-measure":
    "Wrap a piece of this very material round this very cord and measure it before cutting; trust the wrap over any formula.",
  "corded-ends": "Double {back} of each flat end back on itself, bond and stitch it.",
  "corded-wrap":
    "Lay the cord on the middle of the strip between the flat ends, wrap, and clip the edges together.",
  "corded-stitch": "Stitch close against the cord, {allowance} from the raw edges, by hand or with a narrow foot.",
  "corded-trim": "Trim the fin beside the stitches.",
  "corded-finish": "Paint, bind or overcast the edges of the fin.",

  "turned-sew":
    "Sew both strips right sides together along both long edges, {allowance} from the raw edges; leave a gap to turn through if both ends are closed.",
  "turned-turn": "Turn right side out and roll the seams to the very edge; the strap should measure {width}.",
  "turned-turn-reveal":
    "Turn right side out and roll the seams to the back, so that {reveal} of the outer strip shows beside the facing; the strap should measure {width}.",
  "turned-pad": "Pull the padding in with a cord or a turning tool before the last end is closed.",
  "turned-topstitch-facing": "Topstitch both edges from the facing side, measured from the facing's edges",
  "topstitch-both": "Topstitch both edges",

  "hemmed-hem": "Turn the long edge that will show under by {hem}",
  "hemmed-pad": "Lay the padding on the middle third.",
  "hemmed-fold": "Fold the raw long edge over, then the hemmed edge over it; the strap should measure {width}.",
  "hemmed-setback": "The hemmed edge stops {setback} short of the opposite fold.",
  "hemmed-topstitch": "Topstitch along the hemmed edge, then along the fold",

  "three-colour": "Colour or paint the long edge that will show before folding, and let it dry.",
  "three-paint": "Paint the long edge that will show in thin coats before folding, and let each dry.",
  "three-burnish": "Bevel, dampen and rub smooth the long edge that will show, before folding.",
  "three-first": "Fold the other long edge over by a third and press the fold down",
  "three-wrap":
    "Wrap the last third over the raw edge; the strap should measure {width} and the edge that shows stop {setback} short of the opposite fold.",
  "three-topstitch":
    "Topstitch from the side with the raw edge, {topstitch} from it, then {topstitch} from the fold.",

  "tube-sew": "Fold in half lengthwise, right sides together, and sew {allowance} from the raw edges.",
  "tube-turn":
    "Turn right side out and press or finger-press with the seam on one edge; the tube should measure {width}.",

  "two-layer-edges": "Fold both long edges of each strip to its middle; the raw edges must not overlap",
  "two-layer-lay": "Lay the facing on the outer strip, wrong sides together, {reveal} in from each edge",
  "two-layer-topstitch": "Topstitch from the facing side, from its edges",

  "overlay-edges": "Turn both long edges under by {turn}",
  "overlay-lay": "Lay the strip on the webbing, {margin} in from each edge",
  "overlay-topstitch": "Topstitch the overlay from its edges, both rows in the same direction",

  "sleeve-edges": "Fold both long edges to the centre line; the raw edges must not overlap",
  "sleeve-wrap":
    "Lay the webbing against the centre line, wrap the sleeve round it and clip; wrap a hand's length first to test the fit.",
  "sleeve-topstitch": "Topstitch the open edge through the webbing first, then the folded one",
  "cover-edges": "Turn both long edges under by {turn}",
  "cover-wrap":
    "Wrap the cover round the webbing so that its edges meet in the middle of the back, and slip-stitch or zigzag them together.",
  "cover-topstitch": "Topstitch both edges through the webbing",

  "join-diagonal":
    "Lay the square ends of two strips right sides together at right angles, sew corner to corner, trim to 1/4 in and press open; repeat for every join.",
  "join-straight": "Sew the strips end to end right sides together and press the seams open.",
  "join-lapped": "Skive both ends, overlap and bond them, and stitch across the overlap.",

  "edges-skived":
    "Skive the edges that are turned to {skived}, on the wrong side, from the raw edge to the fold line and no further.",

  "end-reduced":
    "Skive or trim layers away at the ends that are folded back or turned in, so that the strap is {end} thick there.",
  "end-tucked":
    "Turn {tucked} of each end to be closed to the wrong side before the long edges are folded or sewn.",
  "end-tab": "Fold the tab over the ring, legs of {leg}, and stitch across both, 3/4 to 1 in below it.",
  "end-thread":
    "Thread it: one end over the slider's centre bar and stitched; the other through the ring, back over both outer bars of the slider, and then to its own hardware. Try the slide before the last end is stitched.",
  "end-fold-back":
    "Fold {back} of the end over its hardware and stitch across it twice; turn the wheel by hand over the doubled layers.",
  "end-fold-back-under":
    "Turn {under} of the end under, fold {back} over its hardware and stitch across it twice; turn the wheel by hand over the humps.",
  "end-spare": "Trim {spare}, what was sewn too long.",
  "end-short-part":
    "Make the short part, {short} long as cut, in the same way; fold one of its ends over the ring and stitch across it.",
  "end-seam": "Baste the end into the bag's seam with {seam} inside it, and stitch over it twice.",

  "strap-stout":
    "{thickness} thick at a width of {width}, the strap is as stout as a cord: hard to fold, and it rolls.",
  "hard-to-turn":
    "A tube {length} long and {width} wide is hard to turn in this material: make it wider, of thinner cloth, or in two.",
  "tube-bias": "A narrow tube that carries nothing may be cut on the bias by hand: it turns and bends more easily.",
  "burnish-leather": "Only vegetable-tanned leather burnishes: paint or bind the edges of other materials.",
  "home-machine":
    "{layers} layers, {thickness} thick {where}: a home machine takes about {limit}. If yours takes more, say so.",
  "machine-skive": "Skive the leather where it folds and at its ends: half the thickness there is usual.",
  "ring-length-unknown": "The ring's own length adds to the worn length: measure it and give it after the width.",
  "clasp-length-unknown": "The clasp's own length adds to the worn length: measure it and give it after the width.",
  "no-interfacing":
    "Woven cloth without interfacing warps and twists when it is folded and topstitched: interface it.",
  "raw-edge-frays": "A raw edge of woven cloth shows and will fray.",
  "knit-backing": "Knit backing gives across its width: straps are laid along the roll unless you say otherwise.",
  "unknown-backing":
    "Stretch of vinyl differs by make: pull it both ways first, and cut all straps in one direction.",
  "no-thickness": "Thickness 0 gives the round rule of the trade; measure a folded stack for a true size.",
  "ring-loose": "The ring is {inner} wide inside: a strap of {width} wanders in it (±{tolerance} is usual).",
  "slider-loose": "The slider is {inner} wide inside: a strap of {width} wanders in it (±{tolerance} is usual).",
  "clasp-loose": "The clasp is {inner} wide inside: a strap of {width} wanders in it (±{tolerance} is usual).",
  "slider-opening-unknown": "Measure the slider's inner height: this strap needs about {needed}.",
  "slider-tight": "The slider opens {opening}; a strap {thickness} thick needs about {needed}.",
  "slider-slips": "The slider opens {opening}, far more than a strap {thickness} thick needs: it will slip.",
  "slider-fixed-bar":
    "A strap {thickness} thick slips on a slider with a fixed bar: use one whose bar moves, or a thicker strap.",
  "machine-thickness": "{layers} layers, {thickness} thick {where}: more than the machine's {limit}.",
  "machine-layers": "{layers} layers {where}: more than the machine's {most}.",
  "edges-collide": "Raw edges {gap} from the centre crease run into the fold: hold them back at least {least}.",
  "stitch-short": "Stitches of {stitch} perforate vinyl: use {least} or longer.",
  "webbing-width":
    "The webbing comes out {width} wide; the nearest trade width is {nearest}. Name the webbing to fit the cloth to it.",
  "tab-short": "Legs of {leg} are too short to be stitched below the ring: they should be {least} or more.",
  "longer-than-stock":
    "The strip is {cut} long and the longest piece of stock gives {longest}. A strap in two parts with a ring between needs no join; allow joins only if neither it nor longer stock will do.",
  "longer-than-stock-parts":
    "The strip is {cut} long and the longest piece of stock gives {longest}: allow joins only if longer stock will not do.",
  "no-place-for-join":
    "No join can be placed clear of the anchored ends, the shoulder, and where ring and slider travel: use longer stock.",
  joined: "A join is bulky and the weakest spot of a strap that carries: avoid it where you can.",
  "join-loss": "Each join of square ends loses {loss}; ends cut at 45° before they are joined lose only {preCut}.",
} as const;
