import { pluralOf } from "../../core/units/numberWords.ts";
import type { CliTexts } from "./cliTexts.ts";

const plural = pluralOf("en");

const counted = (count: number, what: string): string => `${count} ${what}${plural(count, "", "s")}`;

/** What the commands say in English. */
export const en: CliTexts = {
  files: {
    faults: {
      missing: "there is no such file",
      "no-rights": "it may not be read or written with your rights",
      "is-folder": "it is a folder",
      "path-through-file": "a part of its path is a file",
      "disk-full": "the disk is full",
      "disk-read-only": "the disk is read-only",
      "not-utf8": "it is not UTF-8 text",
    },
    tooLarge: (megabytes) => `it is larger than ${megabytes} MB`,
    unreadable: (path, reason) => `${path} cannot be read: ${reason}.`,
    notWritten: (path, reason) => `Nothing was written; ${path}: ${reason}.`,
    written: (path) => `wrote ${path}`,
    noMaterial: (path, id, nearest, all) =>
      `${path} has no material "${id}". ${nearest === null ? `It has ${all}.` : `Did you mean "${nearest}"?`}`,
    notAPlan: (path, place, wanted) => {
      const what = {
        object: "an object",
        list: "a list",
        number: "a number",
        text: "a text",
        flag: "true or false",
        version: "1",
        point: "a point [x, y]",
        outline: "an outline of three points or more",
        "stock-kind": '"roll" or "remnant"',
        reason: "a reason to leave a piece out",
      }[wanted];
      return `${place === "" ? path : `${path}: ${place}`} is not ${what}; this is not a plan file that Laywright wrote.`;
    },
  },
  check: {
    plan: (pieces, materials, leftOut) =>
      `The plan is sound: ${counted(pieces, "piece")} on ${counted(materials, "material")}${leftOut > 0 ? `, ${leftOut} left out` : ""}.`,
    project: (name, pieces, materials) =>
      `${name}: the file is sound. ${counted(pieces, "piece")} from ${counted(materials, "material")}.`,
    uneven: (first, second, over) => `${first} is ${over} longer than ${second}: ease it in, or mend one of them.`,
  },
  lay: {
    bags: (project, count) => `${project}, ${counted(count, "bag")}`,
    laying: (material, pieces, seconds) => `${material}: laying ${counted(pieces, "piece")}, ${seconds} s`,
    laid: (material, metres, gap, placed, pieces, seconds) =>
      `${material}: ${metres} m${gap === null ? "" : `, at most ${gap} % too long`}, ${placed} of ${counted(pieces, "piece")}, ${seconds} s`,
    searched: (seconds, threads, quiet) =>
      `Searched ${seconds} s on ${counted(threads, "thread")}${quiet > 0 ? `; stopped early for ${counted(quiet, "cloth")}, as nothing shorter came` : ""}.`,
    threePlans: (material) => `${material}: three plans`,
    writing: (what, done, pages) => `Writing: ${what}${done > 0 ? `, page ${done} of ${pages}` : ""}`,
    ourFault:
      "Internal error: a plan failed the checker. Do not cut from it; please report this and send us your project file.",
    keptIn: (path) => `The plan is kept in ${path}`,
    noFont: (glyphs) => `No font available has ${glyphs}; the pages show their numbers in brackets.`,
    takenAway: (names) => `Removed: not part of this plan: ${names}`,
    stays: (names) => `Left in place: from an earlier plan but changed since. Do not cut from them: ${names}`,
    heldLengthwise: (names) => `Kept lengthwise, because their cloth shrinks differently each way: ${names}.`,
    cost: "Cost",
    strips: "Strips from a metre of roll",
    noStrip: (length) => `none; one strip is ${length} long`,
    stripsProven: (count) => `${count} (proven maximum)`,
    stripsBound: (count, bound) => `${count} (at most ${bound})`,
    written: "Written",
    toPay: (money) => `Cloth to buy: ${money}.`,
    clothOfBag: (money) => `Cloth per bag (own stock at the same price): ${money}.`,
    suppliesToPay: (money) => `Supplies to buy, in whole packs: ${money}.`,
    wasted: (money) => `Cloth that is paid for and ends in no piece: ${money}.`,
    costOfBag: (cost) => `One bag costs ${cost}.`,
    price: (cost, price, markup, margin) =>
      `One bag costs ${cost} including work and sells at ${price}: markup ${markup}, margin ${margin}.`,
    priceWithTax: (price) => `With tax on it one bag sells at ${price}.`,
    batch: (bags, cost, price, left) => `All ${bags} bags cost ${cost} and sell at ${price}, which leaves ${left}.`,
    best: {
      shortest: "shortest",
      most: "fits most",
      leftovers: "all from stock",
      easiest: "easiest to cut",
      offcut: "largest useful offcut for its length",
    },
    leftOut: (pieces) => plural(pieces, "1 piece does not fit", `${pieces} pieces do not fit`),
    longer: (length) => `${length} more`,
    rulerCuts: (cuts, settings) => `ruler cuts: ${cuts}, ruler settings: ${settings}`,
    noRuler: "cannot be cut edge to edge with a ruler",
    largestOffcut: (size) => `largest offcut ${size}`,
    noOffcut: "no useful offcut",
  },
  yields: {
    noStrapAcross:
      "No strap fits across this width on the grain asked for; a wider cloth or the other grain would help.",
    notASize: (text) => `--strip: "${text}" is not a width and a length; write it like "4 in x 28 in".`,
    tooMany: (option, straps, most) =>
      `${option}: room for ${straps} straps is too many for one plan (at most ${most}); ask for a shorter length.`,
    straps: (count) => counted(count, "strap"),
    onCloth: (length, width) => `${length} of cloth, ${width} usable width`,
    noneFits: (strap, cloth) => `No strap of ${strap} fits on ${cloth}.`,
    gives: (straps, strap, cloth) => `${straps} of ${strap} from ${cloth}.`,
    provenMost: "Proven: no layout gives more.",
    couldBe: (bound, count) => `At most ${bound} could fit; no layout with more than ${count} was found.`,
    oneWay: (lengthwise, crosswise) => `All lengthwise: ${lengthwise}. All crosswise: ${crosswise}.`,
    fromTheEnd: "From the cut end:",
    untouched: (length) => `${length} of the length stays uncut.`,
    need: (straps, strap, cloth) => `${straps} of ${strap} need ${cloth}.`,
    provenShortest: "Proven: no shorter length is enough.",
    couldBeShorter: (bound, length) => `No layout can be shorter than ${bound}; the shortest found is ${length}.`,
    alsoGives: (straps) => `The same length gives ${straps}.`,
    block: (count, isLengthwise, along, across, x, y) => {
      const rows = plural(along, `${across} side by side`, `${along} along, ${across} side by side`);
      return `${count} ${isLengthwise ? "lengthwise" : "crosswise"}: ${rows}, starting ${x} along and ${y} across`;
    },
    wouldHelp: "What would help:",
    lengthGives: (length, straps) => `${length} of length gives ${straps}.`,
    crosswiseNeeds: (width) => `Crosswise it needs ${width} of usable width.`,
    otherGrain: "With --grain both the other straight grain is tried as well.",
    orJoin: "Or join the strap from two shorter pieces; add a seam allowance to each.",
    leftToCut: (length, width) => `After squaring and washing, ${length} x ${width} are left to cut from.`,
    squaredAway: "Squaring the ends takes all of this length; give more length or a smaller --squaring.",
    moreGives: (length, more) => `${length} more gives ${more} more`,
    curve: (from, to) => `From ${from} to ${to}:`,
    noMore: "No length up to there gives more.",
    againstGrain: "The cloth may not be used in that direction: ask for the other grain.",
    noStock: (id, nearest, known) =>
      known === ""
        ? "The project has no leftover, skin or limited roll."
        : `${id === null ? "Say which stock." : `There is no stock "${id}"${nearest === null ? "" : `; did you mean ${nearest}`}.`} There are: ${known}.`,
    onStock: (id) => `the stock "${id}"`,
    noSet: (cloth) => `Not one whole set fits on ${cloth}.`,
    sets: (sets, straps, cloth) => `${sets} (${straps}) from ${cloth}.`,
    setCount: (count) => counted(count, "set"),
    ofEach: (count, strap) => `${count} of ${strap}`,
    couldBeSets: (bound, count) =>
      `By its area the cloth could hold ${bound}; no layout with more than ${count} was found.`,
    nothingToDraw: "There is no plan to draw.",
    lengthAxis: "length of cloth",
    countAxis: "straps",
    setAxis: "sets",
  },
  strap: {
    name: "Strap",
    cloth: "cloth",
    finishedWidth: "Finished width",
    cutWidth: "Cut width",
    tradeRule: "Rule of thumb",
    difference: "Difference",
    layersRow: "Layers",
    thick: (layers, thickness) => `${layers}, ${thickness} thick`,
    foldLines: "Fold lines at",
    heldBack: "Raw edge held back",
    cutLength: "Cut length",
    roll: "Off the roll",
    shortPart: "Short part, cut",
    longest: "Longest as worn",
    shortest: "Shortest as worn",
    layers: (count) => counted(count, "layer"),
    of: (length, what) => `${length} of ${what}`,
    other: (name, id, cut, layers, thickness, roll) =>
      `${name} (--construction ${id}): cut ${cut}, ${layers}, ${thickness} thick${roll === "" ? "" : `, ${roll}`}`,
    materials: {},
    ofRoll: (length) => `${length} of roll`,
    cut: "Cut:",
    madeOf: "The length adds up from:",
    needle: "Under the needle:",
    ready: "Have ready:",
    notes: "Notes:",
    others: "These stay within the limits, least cloth first:",
    steps: "Steps:",
    takeCare: "Take care:",
  },
  compare: {
    columns: [
      "construction",
      "cut width",
      "layers",
      "thick",
      "lengthwise",
      "crosswise",
      "cost",
      "machine",
      "slider",
      "raw edges",
    ],
    fits: "fits",
    tooThick: "too thick",
  },
  foldTest: {
    title: (construction, thickness) => `Fold test, ${construction}, ${thickness} a layer`,
    strip: (width) => `Cut a strip ${width} wide and about a hand long, on the same grain as the strap.`,
    how: {
      "three-raw": [
        "Draw a lengthwise line at two thirds of its width.",
        "Fold one long edge over and lay it exactly on that line; press, hammer or roll the fold as you would in the strap.",
        "Wrap the last third round the raw edge and press it down.",
      ],
      fourfold: [
        "Crease it lengthwise in the middle, open it, and fold both long edges in as far as they go without running into the crease when closed.",
        "Fold it in half again and press or hammer it as you would in the strap.",
      ],
    },
    measure: (what) => `Measure over the outside of the folded strip, and ${what}.`,
    read: {
      "three-raw": "how far the raw edge that shows stops short of the opposite fold",
      fourfold: "how far each raw edge lies from the centre crease when the strip is opened once (mean of both)",
    },
    assumed: (width, setback) => `Without a test we assume ${width} and ${setback}.`,
    runAgain: "Then run the same command with --measured-width and --measured-setback.",
    thickness: "Measure the thickness too: fold a stack of eight layers, press it and divide.",
    neutral: "K (neutral)",
    clearance: "clearance",
    leaves: (reading, cutWidth) => `Measured to ${reading}, this settles the cut width to within ± ${cutWidth}.`,
    saysNothing: "This test says nothing: its error is as wide as everything that can be. Do not keep it.",
    together: (count, neutral, clearance) =>
      `All ${count} tests of this material together: K ${neutral}, clearance ${clearance}.`,
    keep: "To keep it, add --into PROJECT --of MATERIAL, or put this into the material in the project file:",
    stored: (path, material) => `Stored with the thickness in ${path}, material ${material}.`,
  },
};
