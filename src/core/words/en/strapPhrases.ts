/** Steps and notes in English. Parts that begin with a comma or a blank follow another part. */
export const strapPhrases = {
  "cut-pieces": "Cut every piece of the list on the straight grain, never on the bias; the strip is {cut} wide.",
  "interface-strip": "Fuse or baste the interfacing to the whole strip before folding.",
  "interface-facing": "Fuse or baste the interfacing to the whole facing before folding.",
  "interface-strip-reduced":
    "Fuse or baste the interfacing to the middle three quarters of the strip before folding.",
  "interface-facing-reduced":
    "Fuse or baste the interfacing to the middle three quarters of the facing before folding.",
  "interface-strip-quarter":
    "Fuse or baste the interfacing to the part of the strip that becomes its face, between the fold lines, before folding.",
  "interface-facing-quarter":
    "Fuse or baste the interfacing to the part of the facing that becomes its face, between the fold lines, before folding.",
  "how-pressed": "; press and pin or clip.",
  "how-taped": "; hold with narrow double-sided tape kept off the stitch line, and roll the fold flat (no iron).",
  "from-the-edge": ", {topstitch} from the edge.",
  "tie-off": " Holes stay: do not backstitch, tie the ends off.",

  "fourfold-centre": "Crease or draw the centre line, wrong sides together, and open it again.",
  "fourfold-edges": "Fold both long edges in; each raw edge stops {setback} short of the centre line",
  "fourfold-halve": "Fold in half along the centre line and clip; the strap should measure {width}.",
  "fourfold-topstitch": "Topstitch the open edge first, then the folded one",

  "bonded-bond": "Bond the layers wrong sides together, press them and let the adhesive cure.",
  "bonded-stitch-layers": "Stitch along both edges as well: a bond alone can part with flexing",
  "bonded-stitch": "Stitch along both edges",
  "bonded-trim": "Trim both edges true to {width} with a sharp blade and a ruler.",
  "bonded-finish": "Sand or bevel the edges, then paint or burnish them in thin coats.",

  "corded-measure":
    "Wrap a piece of this very material round this very cord and measure it before cutting; trust the wrap over any formula.",
  "corded-ends": "Double the flat ends back on themselves, bond and stitch them.",
  "corded-wrap":
    "Lay the cord on the middle of the strip between the flat ends, wrap, and clip the edges together.",
  "corded-stitch": "Stitch close against the cord, {allowance} from the raw edges, by hand or with a narrow foot.",
  "corded-trim": "Trim the fin and finish its edges.",

  "turned-sew":
    "Sew both strips right sides together along both long edges, {allowance} from the raw edges; leave a gap to turn through if both ends are closed.",
  "turned-turn": "Turn right side out and roll the seams to the very edge; the strap should measure {width}.",
  "turned-pad": "Pull the padding in with a cord or a turning tool before the last end is closed.",
  "topstitch-both": "Topstitch both edges",

  "hemmed-hem": "Turn the long edge that will show under by {hem} and press or tape it",
  "hemmed-pad": "Lay the padding on the middle third.",
  "hemmed-fold": "Fold the raw long edge over, then the hemmed edge over it; the strap should measure {width}.",
  "hemmed-setback": "The hemmed edge stops {setback} short of the opposite fold.",
  "hemmed-topstitch": "Topstitch along the hemmed edge, then along the fold",

  "three-colour": "Colour or paint the long edge that will show before folding, and let it dry.",
  "three-first": "Fold the other long edge over by a third and press the fold down",
  "three-wrap":
    "Wrap the last third over the raw edge; the strap should measure {width} and the edge that shows stop {setback} short of the opposite fold.",
  "three-topstitch":
    "Topstitch from the side with the raw edge, {topstitch} from it, then {topstitch} from the fold.",

  "tube-sew": "Fold in half lengthwise, right sides together, and sew {allowance} from the raw edges.",
  "tube-turn":
    "Turn right side out and press or finger-press with the seam on one edge; the tube should measure {width}.",

  "two-layer-edges": "Fold both long edges of each strip to its middle; the raw edges must not overlap",
  "two-layer-lay":
    "Lay the facing on the outer strip, wrong sides together, {reveal} in from each edge, and tape or clip it.",
  "two-layer-topstitch": "Topstitch from the facing side, from its edges",

  "overlay-edges": "Turn both long edges under by {turn} and press or tape them",
  "overlay-lay": "Lay the strip on the webbing, {margin} in from each edge, and tape or clip it.",
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

  "end-tucked":
    "Turn {tucked} of each end to be closed to the wrong side before the long edges are folded or sewn.",
  "end-tab": "Fold the tab over the ring, legs of {leg}, and stitch across both, 3/4 to 1 in below it.",
  "end-thread":
    "Thread it: one end over the slider's centre bar and stitched; the other through the ring, back over both outer bars of the slider, and then to its own hardware. Try the slide before the last end is stitched.",
  "end-fold-back":
    "Fold {back} of the end over its hardware and stitch across it twice; turn the wheel by hand over the doubled layers.",
  "end-seam": "Baste the end into the bag's seam with {seam} inside it, and stitch over it twice.",

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
    "No join can be placed clear of the anchored ends, the shoulder and the slider's travel: use longer stock or a strap in two parts.",
  joined: "A join is bulky and the weakest spot of a strap that carries: avoid it where you can.",
  "join-loss": "Each join of square ends loses {loss}; ends cut at 45° before they are joined lose only {preCut}.",
} as const;
