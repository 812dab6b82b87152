import { type Blank, words } from "../words.tsx";

const say = (text: string): string => text;

/** Edges, corners and marks of a panel, and what it is sewn to. */
export const enMarks = {
  picture: (name: string) => `${name} as its outline is drawn`,
  pictureWords: (edge: string, length: string) => `Marked: ${edge}, ${length}. It starts at the dot.`,
  cornerWords: (corner: string) => `Marked: ${corner}.`,
  frame: (along: string, across: string) =>
    `Places are measured from the lower left corner of its box, to the right and up. The box is ${along} wide and ${across} high.`,
  edges: {
    summary: (own: number) =>
      own === 0 ? "Edges, corners and hems" : `Edges, corners and hems (${own} of their own)`,
    drawn: (choice: Blank) => words("Its outline is the ", choice, "."),
    drawnLabel: say("Which line the outline is"),
    drawnAs: { stitch: say("stitch line"), cut: say("cut line") },
    fold: (choice: Blank) => words("On a fold of the cloth lies ", choice, "."),
    foldLabel: say("Edge on the fold"),
    noFold: say("no edge"),
    corners: (choice: Blank) => words("Its corners are ", choice, "."),
    cornersLabel: say("Corners"),
    styles: {
      mitred: say("mitred"),
      square: say("square"),
      blunted: say("blunted"),
      "folded-back": say("folded back"),
    },
    asOthers: say("like the others"),
    list: say("Each edge"),
    edge: (name: Blank, length: string, width: Blank) =>
      words(name, `, ${length} long, has `, width, " of seam allowance."),
    onFold: (name: Blank, length: string) => words(name, `, ${length} long, lies on the fold: no seam allowance.`),
    widthLabel: (edge: string) => `Seam allowance, ${edge}`,
    hem: say("turned in as a hem"),
    hemLabel: (edge: string) => `${edge}: turned in as a hem`,
    asAllRound: say("as all round"),
    asAllRoundLabel: (edge: string) => `${edge}: seam allowance as all round`,
    corner: (choice: Blank) => words("The corner where it starts is ", choice, "."),
    cornerLabel: (edge: string) => `Corner where ${edge} starts`,
  },
  marks: {
    summary: (count: number) =>
      count === 0 ? "Notches, holes, words and grain arrow" : `Notches, holes, words and grain arrow (${count})`,
    cuts: { slit: say("a slit"), in: say("a notch cut in"), out: say("a notch standing out") },
    notch: (cut: Blank, edge: Blank, at: Blank, from: Blank, mark: Blank) =>
      words("On ", edge, " ", cut, ", ", at, " ", from, ", letter ", mark),
    notchCut: (n: number) => `Notch ${n}: how it is made`,
    notchEdge: (n: number) => `Notch ${n}: edge`,
    notchAt: (n: number) => `Notch ${n}: how far along`,
    notchFrom: (n: number) => `Notch ${n}: measured as`,
    notchMark: (n: number) => `Notch ${n}: letter`,
    froms: { length: say("from where the edge starts"), share: say("of the edge’s length") },
    noLetter: say("none"),
    drill: (x: Blank, y: Blank, text: Blank) => words("A hole ", x, " to the right and ", y, " up, called ", text),
    drillX: (n: number) => `Hole ${n}: to the right`,
    drillY: (n: number) => `Hole ${n}: up`,
    drillText: (n: number) => `Hole ${n}: name`,
    text: (x: Blank, y: Blank, text: Blank) => words("The words ", text, " ", x, " to the right and ", y, " up"),
    textX: (n: number) => `Words ${n}: to the right`,
    textY: (n: number) => `Words ${n}: up`,
    textText: (n: number) => `Words ${n}`,
    newText: say("This side up"),
    arrow: (choice: Blank) => words("The grain arrow runs ", choice),
    arrowLabel: say("Grain arrow"),
    arrows: { usual: say("as is usual for the shape."), own: say("from one point to another:") },
    arrowPoints: (x0: Blank, y0: Blank, x1: Blank, y1: Blank) =>
      words("from ", x0, " to the right and ", y0, " up to ", x1, " to the right and ", y1, " up."),
    arrowPoint: [
      say("Grain arrow from: to the right"),
      say("Grain arrow from: up"),
      say("Grain arrow to: to the right"),
      say("Grain arrow to: up"),
    ] as readonly string[],
    addNotch: say("Notch"),
    addDrill: say("Hole"),
    addText: say("Words"),
    removeNotch: (n: number) => `Remove notch ${n}`,
    removeDrill: (n: number) => `Remove hole ${n}`,
    removeText: (n: number) => `Remove words ${n}`,
    changed: say("marks"),
  },
  seams: {
    summary: (count: number) => (count === 0 ? "What it is sewn to" : `What it is sewn to (${count})`),
    meets: (first: Blank, second: Blank) => words(first, " meets ", second),
    edge: (panel: Blank, edge: Blank) => words(panel, ", ", edge),
    panelLabel: (n: number, side: "first" | "second", k: number) =>
      side === "first" ? `Seam ${n}: panel ${k}` : `Seam ${n}: panel ${k} of the other side`,
    edgeLabel: (n: number, side: "first" | "second", k: number) =>
      side === "first" ? `Seam ${n}: edge ${k}` : `Seam ${n}: edge ${k} of the other side`,
    addEdge: (n: number, side: "first" | "second") =>
      side === "first" ? `Seam ${n}: one more edge` : `Seam ${n}: one more edge of the other side`,
    removeEdge: (n: number, side: "first" | "second", k: number) =>
      side === "first" ? `Seam ${n}: without edge ${k}` : `Seam ${n}: without edge ${k} of the other side`,
    ease: (length: Blank) => words("The first side is meant to be ", length, " longer."),
    easeLabel: (n: number) => `Seam ${n}: meant to be longer by`,
    even: (first: string, second: string) => `They fit: ${first} on ${second}.`,
    uneven: (longer: string, shorter: string, over: string) =>
      `${longer} is ${over} longer than ${shorter}: ease it in, or mend one of them.`,
    meantEven: (first: string, second: string) => `They fit with the ease: ${first} on ${second}.`,
    add: say("Seam"),
    remove: (n: number) => `Remove seam ${n}`,
    changed: say("what is sewn together"),
    troubles: say("Seams whose sides differ"),
    open: (name: string) => `Open ${name}`,
  },
};
