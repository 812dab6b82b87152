import { encode } from "fast-png";
import { PDFDocument } from "pdf-lib";
import { FIT_TOLERANCE, type UnderstandOptions } from "../../src/core/patterns/understandPattern.ts";
import { describeProblem } from "../../src/core/problems/describeProblem.ts";
import { answerPattern } from "../../src/reading/patternJob.ts";
import type { Draw, Kind } from "./kind.ts";

const SVG = `<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg" width="220mm" height="160mm" viewBox="0 0 220 160">
<defs><style>.cut{fill:none;stroke:#000}</style><path id="leaf" d="M0 0h20v20h-20z"/></defs>
<g transform="translate(10 5) rotate(3)"><path class="cut" id="Front" d="M20 20H170V120C150 130,60 130,20 120Z"/>
<use href="#leaf" x="30" y="40"/><circle cx="60" cy="60" r="12"/><ellipse cx="90" cy="60" rx="12" ry="7"/>
<polygon points="100,40 130,40 115,70"/><polyline points="10,10 20,30 40,10"/><rect x="5" y="130" width="40" height="20" rx="3"/>
<line x1="0" y1="0" x2="200" y2="0"/><path d="m5 5a10 20 30 0 1 30 10q5 5 10 0t10 0s5 5 9 9z"/></g></svg>`;

const PAIRS: readonly (readonly [number, string | number])[] = [
  ...([
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$INSUNITS"],
    [70, 4],
    [0, "ENDSEC"],
  ] as const),
  ...([
    [0, "SECTION"],
    [2, "BLOCKS"],
    [0, "BLOCK"],
    [2, "B"],
    [10, 0],
    [20, 0],
    [0, "LINE"],
    [8, "0"],
  ] as const),
  ...([
    [10, 0],
    [20, 0],
    [11, 9],
    [21, 9],
    [0, "ENDBLK"],
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "ENTITIES"],
  ] as const),
  ...([
    [0, "LINE"],
    [8, "cut"],
    [10, 0],
    [20, 0],
    [11, 90],
    [21, 0],
    [0, "ARC"],
    [8, "cut"],
    [10, 5],
  ] as const),
  ...([
    [20, 5],
    [40, 10],
    [50, 0],
    [51, 90],
    [0, "CIRCLE"],
    [8, "cut"],
    [10, 5],
    [20, 5],
    [40, 3],
  ] as const),
  ...([
    [0, "LWPOLYLINE"],
    [8, "cut"],
    [90, 3],
    [70, 1],
    [10, 0],
    [20, 0],
    [42, 0.5],
    [10, 50],
    [20, 0],
  ] as const),
  ...([
    [10, 50],
    [20, 50],
    [0, "SPLINE"],
    [8, "cut"],
    [71, 3],
    [72, 8],
    [73, 4],
    [40, 0],
    [40, 0],
  ] as const),
  ...([
    [40, 0],
    [40, 0],
    [40, 1],
    [40, 1],
    [40, 1],
    [40, 1],
    [10, 0],
    [20, 0],
    [10, 10],
    [20, 9],
  ] as const),
  ...([
    [10, 20],
    [20, 9],
    [10, 30],
    [20, 0],
    [0, "INSERT"],
    [8, "cut"],
    [2, "B"],
    [10, 7],
    [20, 7],
  ] as const),
  ...([
    [0, "ENDSEC"],
    [0, "EOF"],
  ] as const),
];
const DXF = PAIRS.map(([code, value]) => `${code}\n${value}\n`).join("");

/** A page with lines, as text that can be damaged: nothing in it is packed. */
async function pdf(): Promise<Uint8Array> {
  const made = await PDFDocument.create({ updateMetadata: false });
  const page = made.addPage([300, 200]);
  page.drawRectangle({ x: 20, y: 20, width: 200, height: 120, borderWidth: 1 });
  page.drawSvgPath("M 0 0 C 10 20 30 20 40 0 L 60 60 Z", { x: 60, y: 120, borderWidth: 1 });
  return made.save({ useObjectStreams: false });
}

/** A light card on a dark table. */
function picture(): Uint8Array {
  const [width, height] = [120, 90];
  const data = Uint8Array.from({ length: width * height }, (_, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    return x > 20 && x < 95 && y > 15 && y < 70 ? 230 : 40;
  });
  return encode({ width, height, data, channels: 1, depth: 8 });
}

const OPTIONS: UnderstandOptions = { tolerance: FIT_TOLERANCE, mend: new Set(), roles: new Map() };

let bases: readonly (readonly [string, Uint8Array])[] | null = null;

async function baseFiles(): Promise<readonly (readonly [string, Uint8Array])[]> {
  const [svg, dxf] = [SVG, DXF].map((text) => new TextEncoder().encode(text)) as [Uint8Array, Uint8Array];
  bases ??= [
    ["svg", svg],
    ["svg", svg],
    ["dxf", dxf],
    ["dxf", dxf],
    ["pdf", await pdf()],
    ["image", picture()],
  ];
  return bases;
}

const NUMBERS = ["0", "-1", "1e9", "1e308", "1e-9", "NaN", "99999999999999999999", "0.0001", "-0", "", "1e400"];

/** Bytes changed one by one, or numbers and words of a text changed for others; parts doubled, moved, cut off. */
function damaged(draw: Draw, bytes: Uint8Array, isText: boolean): Uint8Array {
  let file = bytes;
  for (let change = 1 + draw.below(4); change > 0; change--) {
    const [from, to] = [draw.below(file.length + 1), draw.below(file.length + 1)].sort((a, b) => a - b) as [
      number,
      number,
    ];
    const how = draw.below(isText ? 8 : 5);
    if (how === 0) file = file.slice(0, to);
    else if (how === 1) file = joined(file.slice(0, from), file.slice(Math.min(to, from + 40)));
    else if (how === 2) file = joined(file.slice(0, to), file.slice(Math.max(from, to - 400)));
    else if (how <= 4) {
      file = file.slice();
      for (let more = 1 + draw.below(4); more > 0 && file.length > 0; more--)
        file[draw.below(file.length)] = draw.below(256);
    } else {
      // Latin-1 and back keeps every byte.
      const text = Buffer.from(file).toString("latin1");
      const numbers = [...text.matchAll(/-?\d+(?:\.\d+)?/gu)];
      if (numbers.length === 0) continue;
      const found = draw.one(numbers);
      const changed = text.slice(0, found.index) + draw.one(NUMBERS) + text.slice(found.index + found[0].length);
      file = new Uint8Array(Buffer.from(changed, "latin1"));
    }
  }
  return file;
}

function joined(first: Uint8Array, second: Uint8Array): Uint8Array {
  const all = new Uint8Array(first.length + second.length);
  all.set(first);
  all.set(second, first.length);
  return all;
}

/** Damaged SVG, DXF, PDF and image files through the readers, without the thread that stops them: nothing thrown. */
export const patternFiles: Kind = {
  name: "patterns",
  about: "damaged SVG, DXF, PDF and picture files through the readers",
  limitMs: 60_000,
  run: async (draw) => {
    const [name, whole] = draw.one(await baseFiles());
    const bytes = damaged(draw, whole, name !== "image");
    const pattern = await answerPattern({ bytes, options: OPTIONS });
    for (const problem of pattern.problems) {
      const { what, remedy } = describeProblem(problem);
      if (/undefined|\[object|NaN mm/u.test(what + remedy)) throw new Error(`told badly: ${what} ${remedy}`);
    }
    const finite = pattern.outlines.every(({ contour }) => JSON.stringify(contour).includes("null") === false);
    if (!finite) throw new Error(`${name}: an outline with a place that is no number`);
    if (pattern.outlines.length === 0 && pattern.problems.length === 0 && pattern.marks.length === 0)
      return `${name}: nothing in it`;
    return `${name}: ${pattern.outlines.length > 0 ? "read" : "told"}`;
  },
};
