import type { ComponentChildren } from "preact";

/** A field that stands in a sentence. */
type Blank = ComponentChildren;
/** A sentence made of words and blanks. */
const words = (...parts: Blank[]): Blank => parts;

/** English texts. Functions take facts and give a sentence; `say` widens literals so that other languages fit. */
const say = (text: string): string => text;

const shell = {
  appName: say("Laywright"),
  skip: say("Go to the table"),
  places: { bag: say("Bag"), cloth: say("Cloth"), lay: say("Lay"), table: say("Table") },
  placesLabel: say("Places"),
  projectMenu: (name: string) => `Project ${name}: open, save, start another`,
  undo: (label: string | null) => (label === null ? "Nothing to undo" : `Undo: ${label}`),
  redo: (label: string | null) => (label === null ? "Nothing to redo" : `Redo: ${label}`),
  undoWord: say("Undo"),
  redoWord: say("Redo"),
  units: say("Lengths shown in"),
  look: say("Look and language"),
  close: say("Close"),
  dropHere: say("Let go to open the project file"),
};

const keeping = {
  kept: say("Kept on this device"),
  saving: say("Keeping …"),
  full: say(
    "This device has no room left, so newer changes are not kept. Save the project to a file, then remove an old project.",
  ),
  refused: say("This browser does not keep projects here. Save the project to a file before you close the page."),
  takenOver: say(
    "This project was changed in another window, and this window follows it. Undo brings your last state back.",
  ),
  splitOff: say(
    "This project was changed in two windows at once. This window goes on in a copy of its own; both are kept.",
  ),
  tryAgain: say("Try again"),
  saveFile: say("Save to a file"),
  understood: say("Understood"),
};

const project = {
  heading: say("Projects"),
  newName: say("New bags"),
  openShort: say("Open"),
  current: say("open now"),
  savedAt: (when: string) => `last change ${when}`,
  open: (name: string) => `Open ${name}`,
  remove: (name: string) => `Remove ${name}`,
  removeSure: (name: string) => `Remove ${name} from this device? Nothing else keeps it.`,
  removeYes: say("Remove it"),
  removeNo: say("Keep it"),
  startEmpty: say("Start with an empty table"),
  startDemo: say("Look round in the example"),
  openFile: say("Open a file"),
  saveFile: say("Save to a file"),
  savedFile: (name: string) => `Saved ${name}.`,
  name: say("Name of the project"),
  unreadable: (file: string) => `${file} could not be opened. Your open project is as it was.`,
  changes: { started: say("started"), opened: (file: string) => `opened ${file}`, demo: say("example") },
};

const look = {
  heading: say("Look and language"),
  theme: say("Light or dark"),
  themes: { auto: say("as the system says"), light: say("light"), dark: say("dark") },
  language: say("Language"),
  units: say("Lengths shown in"),
  systems: { metric: say("millimetres; switch to inches"), inches: say("inches; switch to millimetres") },
  styles: {
    mm: say("millimetres"),
    cm: say("centimetres"),
    sixteenths: say("inches, to a sixteenth"),
    thirtySeconds: say("inches, to a thirty-second"),
  },
  changedUnits: say("other units"),
};

const bag = {
  making: (bags: Blank) => words("I am making ", bags, " of this bag."),
  bags: say("Number of bags"),
  shelf: say("Pieces of the bag"),
  emptyHeading: say("What will the bag be made of?"),
  emptyWords: say(
    "Add a strap or a panel. Say how wide and how long it is when it is finished; the cut size follows from the fold, the seam allowance and your cloth. Then tell what cloth you have, see how it all lies on it, and take the pages to the table.",
  ),
  addStrap: say("Strap"),
  addPanel: say("Panel"),
  newStrap: say("Shoulder strap"),
  newPanel: say("Body"),
  name: say("Name"),
  material: say("Material"),
  copy: say("Copy"),
  copyName: (name: string) => `${name} (copy)`,
  remove: say("Remove"),
  removed: (name: string) => `removed ${name}`,
  closeSpread: say("Back to the shelf"),
  longShort: (length: string) => `${length} long`,
  pictureOf: (name: string, size: string) => `${name}, cut ${size}`,
  cutSize: (size: string) => `cut ${size}`,
  strap: {
    made: (construction: Blank) => words("It is ", construction, ","),
    wide: (width: Blank, kind: Blank) => words(width, " wide ", kind, ","),
    long: (length: Blank, kind: Blank, material: Blank) => words(length, " long ", kind, ", in ", material, "."),
    count: (count: Blank) => words("Each bag has ", count, "."),
    constructionLabel: say("Construction"),
    widthLabel: say("Width"),
    widthKindLabel: say("Where the width is measured"),
    widthKinds: { finished: say("when finished"), cut: say("as cut") },
    lengthLabel: say("Length"),
    lengthKindLabel: say("How the length is measured"),
    lengthKinds: {
      finished: say("when finished"),
      cut: say("as cut"),
      drop: say("of drop"),
      worn: say("worn at its longest"),
    },
    countLabel: say("Straps for each bag"),
    roles: {
      facing: (material: Blank) => words("It is faced with ", material, "."),
      padding: (material: Blank) => words("Inside lies ", material, "."),
      webbing: (material: Blank) => words("The webbing is ", material),
      cord: (material: Blank) => words("The cord is ", material),
    },
    roleLabels: { facing: say("Facing"), padding: say("Padding"), webbing: say("Webbing"), cord: say("Cord") },
    noMaterial: say("nothing"),
    webbingWidth: say("Width of the webbing"),
    webbingThickness: say("Thickness of the webbing"),
    webbingSize: (width: Blank, thickness: Blank) => words(", ", width, " wide and ", thickness, " thick."),
    cordDiameter: say("Diameter of the cord"),
    cordSize: (diameter: Blank) => words(", ", diameter, " thick."),
    interfacingWord: say("Interfacing"),
    interfaced: (term: Blank, choice: Blank) => words(term, ": ", choice),
    interfacingLabel: say("Where interfacing goes"),
    interfacings: {
      none: say("none"),
      full: say("over the full width"),
      reduced: say("three quarters of the width"),
      quarter: say("one quarter of the width"),
    },
    interfacingMaterial: say("Interfacing material"),
    interfacedWith: (material: Blank) => words("of ", material, "."),
    more: say("Ends, rings, grain, joins and machine"),
    adjusted: (choice: Blank) => words("Its length is ", choice, "."),
    adjustmentLabel: say("Adjustment"),
    adjustments: {
      fixed: say("fixed"),
      "one-piece": say("set by a slider, in one piece"),
      "two-part": say("set by a slider, in two parts"),
    },
    endsAre: (first: Blank, second: Blank) => words("One end is ", first, ", the other ", second, "."),
    endLabel: (n: number) => `End ${n}`,
    endUsual: say("as is usual"),
    ends: {
      raw: say("cut off"),
      seam: say("caught in a seam"),
      tucked: say("tucked in"),
      "fold-back": say("folded back and stitched"),
      doubled: say("doubled"),
    },
    hardwareLabel: say("Ring or slider"),
    hardware: (kind: Blank, width: Blank) => words("It runs through ", kind, ", ", width, " wide inside"),
    hardwareKinds: { ring: say("a ring"), slider: say("a slider"), clasp: say("a clasp") },
    innerWidth: say("Inner width"),
    openingLabel: say("Opening of the slider"),
    opening: (mm: Blank) => words("with an opening of ", mm),
    notMeasured: say("not measured"),
    addHardware: say("Ring or slider"),
    removeHardware: (kind: string) => `Remove ${kind}`,
    grain: (term: Blank, choice: Blank) => words(term, ": it may lie ", choice, "."),
    grainLabel: say("Grain"),
    edges: (choice: Blank) => words("Raw edges that show are ", choice, "."),
    edgesLabel: say("Raw edges"),
    edgeFinishes: { "as-cut": say("left as cut"), paint: say("painted"), burnish: say("burnished") },
    cutBy: (choice: Blank) => words("The cut width is ", choice, "."),
    cutByLabel: say("Cut width"),
    cutBys: { fold: say("worked out from the fold"), trade: say("the trade's round multiple") },
    joins: say("It may be joined from shorter strips"),
    joinCaution: say(
      "A join is the weakest and thickest spot of a strap. Keep it away from rings, sliders, the shoulder and the first 10 cm from an end, and never rely on it for a load.",
    ),
    machine: (thickness: Blank) => words("My machine sews through ", thickness, " at most."),
    machineLabel: say("Thickest the machine sews"),
    notSaid: say("not said"),
  },
  panel: {
    boxSentence: (kind: Blank, along: Blank, across: Blank) =>
      words("It is ", kind, ", finished ", along, " along the grain and ", across, " across it."),
    seamLabel: say("Seam allowance"),
    seam: (width: Blank, term: Blank, material: Blank) =>
      words("All round comes ", width, " of ", term, ". It is cut from ", material, "."),
    countLabel: say("Pieces for each bag"),
    mirroredLabel: say("Mirror images for each bag"),
    counts: (count: Blank, mirrored: Blank) =>
      words("Each bag has ", count, " as drawn and ", mirrored, " mirrored."),
    grainLabel: say("Grain"),
    grain: (term: Blank, choice: Blank) => words(term, ": it may lie ", choice, "."),
    interfacing: (term: Blank, material: Blank) => words(term, ": ", material),
    interfacingLabel: say("Interfacing"),
    noInterfacing: say("none"),
    interfacingCut: (choice: Blank) => words("cut ", choice, "."),
    interfacingCutLabel: say("Size of the interfacing"),
    cutFull: say("as large as the panel"),
    cutNet: say("without seam allowance"),
  },
};

const shape = {
  label: say("Shape"),
  kinds: {
    rectangle: say("a rectangle"),
    rounded: say("a rectangle with round corners"),
    outline: say("an outline of its own"),
  },
  outlineSentence: (kind: Blank) => words("It is ", kind, "."),
  roundSentence: (radius: Blank) => words("Its corners have a radius of ", radius, "."),
  along: say("Along the grain"),
  across: say("Across the grain"),
  radius: say("Corner radius"),
};

const grains = {
  lengthwise: say("lengthwise only"),
  crosswise: say("crosswise only"),
  either: say("lengthwise or crosswise"),
  free: say("any way round"),
};

const constructions = {
  fourfold: { name: say("folded in four") },
  "three-raw": { name: say("folded in three, one raw edge") },
  "three-hemmed": { name: say("folded in three, last edge hemmed") },
  "two-layer": { name: say("two layers, edges turned in") },
  "sewn-turned": { name: say("two layers, sewn and turned") },
  tube: { name: say("a turned tube") },
  bonded: { name: say("bonded, raw edges") },
  "webbing-overlay": { name: say("webbing with an overlay") },
  "webbing-sleeve": { name: say("webbing in a sleeve") },
  corded: { name: say("a corded handle") },
  tab: { name: say("a tab") },
};

const kinds = {
  woven: say("woven cloth"),
  vinyl: say("vinyl or faux leather"),
  leather: say("leather"),
  cork: say("cork cloth"),
  felt: say("felt"),
  interfacing: say("interfacing"),
  padding: say("padding"),
  webbing: say("webbing"),
  cord: say("cord"),
};

const cloth = {
  firstName: say("Canvas"),
  newName: say("Another cloth"),
  swatches: say("Materials"),
  emptyHeading: say("What do you cut from?"),
  emptyWords: say(
    "Add a material, then the rolls, remnants and skins you have of it. Leftovers are used up first.",
  ),
  add: say("Material"),
  remove: say("Remove this material"),
  removed: (name: string) => `removed ${name}`,
  usedBy: (parts: string) => `Used by ${parts}.`,
  name: say("Name of the material"),
  isA: (kind: Blank, thickness: Blank) => words("It is ", kind, ", ", thickness, " thick."),
  kindLabel: say("Kind of material"),
  thicknessLabel: say("Thickness of one layer"),
  grainSentence: (term: Blank, choice: Blank) => words(term, ": pieces may lie ", choice, "."),
  grainLabel: say("Grain"),
  oneWay: say("Nap or print runs one way"),
  facesAlike: say("Both faces can be the outside"),
  stockHeading: say("What there is of it"),
  noStock: say("There is nothing to cut from yet. Add a roll, a remnant or a skin."),
  nothing: say("nothing in stock"),
  rollsWide: (n: number, widths: string) => `${n === 1 ? "roll" : `${n} rolls`} ${widths} wide`,
  leftovers: (n: number) => (n === 1 ? "1 leftover" : `${n} leftovers`),
  addStock: { roll: say("Roll"), remnant: say("Remnant"), skin: say("Skin") },
  removeStock: say("Used up: take it away"),
  rollSentence: (width: Blank, selvedge: Blank, selvedgeWidth: Blank, length: Blank, squaring: Blank) =>
    words(
      "A roll, ",
      width,
      " wide, each ",
      selvedge,
      " ",
      selvedgeWidth,
      ", ",
      length,
      " long. Squaring a cut end takes ",
      squaring,
      ".",
    ),
  rollPicture: say("The roll from above"),
  widthLabel: say("Full width of the roll"),
  selvedgeLabel: say("Width of one selvedge"),
  lengthLabel: say("Length on the roll"),
  openLength: say("as long as needed"),
  squaringLabel: say("Cut off to square an end"),
  leftoverSentence: {
    remnant: (count: Blank) => words(count, " of this remnant."),
    skin: (count: Blank) => words(count, " of this skin."),
  },
  leftoverName: { remnant: say("remnant"), skin: say("skin") },
  leftoverBox: (kind: Blank, along: Blank, across: Blank) =>
    words("It is ", kind, ", ", along, " along the grain and ", across, " across."),
  countLabel: say("How many"),
  outlineLabel: say("outline"),
  flawHint: say("Press on the cloth to push a pin into a flaw."),
  flaws: (n: number) => (n === 0 ? "No flaws" : n === 1 ? "1 flaw" : `${n} flaws`),
  flawsLabel: say("flaws"),
  flawSentence: (x: Blank, y: Blank, along: Blank, across: Blank) =>
    words("At ", x, " along and ", y, " across, ", along, " by ", across, "."),
  flawAlong: say("Place along the grain"),
  flawAcross: say("Place across the grain"),
  flawLong: say("Length of the flaw"),
  flawWide: say("Width of the flaw"),
  addFlaw: say("Flaw"),
  removeFlaw: (n: number) => `Remove flaw ${n}`,
  priceLabel: say("Price"),
  noPrice: say("no price"),
  currencyLabel: say("Currency"),
  basisLabel: say("What the price is for"),
  bases: {
    metre: say("a metre"),
    yard: say("a yard"),
    squareMetre: say("a square metre"),
    squareFoot: say("a square foot"),
    each: say("a piece"),
  },
  costs: (amount: Blank, currency: Blank, basis: Blank) =>
    words("It costs ", amount, " ", currency, " ", basis, "."),
  costsNothingYet: (amount: Blank) => words("Price: ", amount, "."),
  soldIn: (step: Blank) => words("It is sold in steps of ", step, "."),
  stepLabel: say("Step it is sold in"),
  anyLength: say("any length"),
  more: say("Coating, repeat, distances and shrinkage"),
  coatedSentence: (coating: Blank, backing: Blank) => words("Coated with ", coating, " on ", backing, "."),
  coatingLabel: say("Coating"),
  coatings: { unknown: say("something unknown"), pvc: say("PVC"), pu: say("PU"), none: say("nothing") },
  backingLabel: say("Backing"),
  backings: {
    unknown: say("an unknown backing"),
    woven: say("a woven backing"),
    knit: say("a knit backing"),
    none: say("no backing"),
  },
  vinylCaution: say(
    "Never cut PVC, or vinyl of unknown make, with a laser: it gives off hydrogen chloride. Ventilate when you use solvents or glue.",
  ),
  repeatSentence: (term: Blank, length: Blank) => words(term, ": ", length, "."),
  repeatLabel: say("Pattern repeat"),
  noRepeat: say("none to match"),
  distances: (gap: Blank, margin: Blank) => words("Pieces keep ", gap, " apart and ", margin, " from the edge."),
  gapLabel: say("Between pieces"),
  marginLabel: say("From the edge"),
  asProject: say("as the project says"),
  shrinks: (along: Blank, across: Blank) =>
    words("The wash takes ", along, " of its length and ", across, " of its width."),
  shrinksAlong: say("Shrinkage along"),
  shrinksAcross: say("Shrinkage across"),
  washedLabel: say("When it is washed"),
  washed: (when: Blank) => words("It is washed ", when, "."),
  washedBefore: say("before cutting"),
  washedAfter: say("after the bag is made"),
};

const outline = {
  label: (name: string) => `Outline of ${name}`,
  hint: say("Drag a corner; press a plus for a new one. Arrow keys move a corner, Delete takes it away."),
  addAfter: (n: number) => `New corner after corner ${n}`,
  corner: (n: number, x: string, y: string) => `Corner ${n}, ${x} along, ${y} across`,
  type: say("Type the corners"),
  along: (n: number) => `Corner ${n} along`,
  across: (n: number) => `Corner ${n} across`,
  removeCorner: (n: number) => `Remove corner ${n}`,
};

const terms = {
  seamAllowance: {
    word: say("seam allowance"),
    meaning: say("The strip between the stitch line and the cut edge. It is added all round the finished size."),
  },
  grain: {
    word: say("Grain"),
    meaning: say(
      "Lengthwise runs along the roll, with the selvedge; crosswise runs from selvedge to selvedge. Pieces never lie on the bias, where cloth stretches.",
    ),
  },
  interfacing: {
    word: say("Interfacing"),
    meaning: say(
      "A cloth fused or sewn to the back to stiffen the piece. It is laid and cut as a material of its own.",
    ),
  },
  selvedge: {
    word: say("selvedge"),
    meaning: say(
      "The woven edge of the roll, with holes or print, that is not used. What lies between the two is the usable width.",
    ),
  },
  repeat: {
    word: say("Repeat"),
    meaning: say("The length after which a stripe or print comes again along the roll, when pieces are to match."),
  },
  bound: {
    word: say("bound"),
    meaning: say("A length that is proven: no plan for these pieces on this cloth can be shorter."),
  },
  utilisation: {
    word: say("utilisation"),
    meaning: say("The area of the pieces as a share of the cloth they use up."),
  },
  offcut: {
    word: say("offcut"),
    meaning: say("A leftover that is large enough to be worth keeping."),
  },
  overlap: {
    word: say("overlap"),
    meaning: say(
      "The strip that two neighbouring pages both show, so that they can be laid on each other and taped.",
    ),
  },
  kerf: {
    word: say("kerf"),
    meaning: say("The width of material that the cut itself takes away. Half of it is added outside the cut line."),
  },
};
const termLabel = (word: string) => `${word}: what does it mean?`;

const lay = {
  plan: (material: string) => `Lay plan for ${material}`,
  zoomIn: say("Closer"),
  zoomOut: say("Further away"),
  zoomAll: say("All of it"),
  pieces: say("Pieces on the cloth"),
};

/** The catalogue. */
export const en = {
  shell,
  keeping,
  project,
  look,
  bag,
  shape,
  grains,
  constructions,
  kinds,
  cloth,
  outline,
  terms,
  termLabel,
  lay,
};
