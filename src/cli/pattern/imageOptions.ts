import { PAPERS, paperNamed } from "../../core/project/papers.ts";
import { parseLength } from "../../core/units/parseLength.ts";
import type { ImageOptions } from "../../reading/image/readImage.ts";
import { type OptionSpec, type ParsedArgs, UsageError } from "../command.ts";
import { inputProblem } from "../inOut/toldProblem.ts";
import { partsBy } from "../options/optionValues.ts";

/** Options that say how large things in a picture are. */
export const IMAGE_OPTIONS: readonly OptionSpec[] = [
  {
    name: "sheet",
    value: "PAPER",
    help: 'a photograph: the light sheet of known size that the pattern is on, e.g. A4 or "210 mm x 297 mm"; takes the perspective out',
  },
  {
    name: "corners",
    value: "LIST",
    help: 'its corners in pixels, clockwise from the upper left, e.g. "230,160 1380,250 1490,1920 90,1780" (default: found)',
  },
  {
    name: "points",
    value: "LIST",
    help: 'a scan: two points in pixels, e.g. "0,100 1240,100"; the camera looked straight down',
  },
  { name: "apart", value: "L", help: "how far those two points are from each other" },
  { name: "line", value: "L", help: "what the 100 mm line of the photo sheet measures on your print (100 mm)" },
];

const SIZE = { minMm: 20, maxMm: 20_000 };

/** The options as given. Throws `UsageError` or `InputProblem` for what cannot be read. */
export function readImageOptions(args: ParsedArgs): ImageOptions {
  for (const [one, other] of [
    ["corners", "sheet"],
    ["points", "apart"],
    ["apart", "points"],
  ] as const)
    if (args.values.has(one) && !args.values.has(other)) throw new UsageError((say) => say.together(one, other));
  const corners = pointsOf(args, "corners", 4);
  const points = pointsOf(args, "points", 2);
  const apart = args.values.get("apart");
  const line = args.values.get("line");
  return {
    sheet: sheetOf(args.values.get("sheet")),
    corners,
    points: points && [points[0]!, points[1]!],
    lineMm: line === undefined ? undefined : lengthOf(line, "--line"),
    apartMm: apart === undefined ? undefined : lengthOf(apart, "--apart"),
  };
}

function pointsOf(args: ParsedArgs, name: string, count: number): (readonly [number, number])[] | undefined {
  const text = args.values.get(name);
  if (text === undefined) return undefined;
  const pairs = text
    .trim()
    .split(/\s+/u)
    .map((pair) => /^(-?\d+(?:\.\d+)?),(-?\d+(?:\.\d+)?)$/u.exec(pair));
  if (pairs.length !== count || pairs.includes(null)) throw new UsageError((say) => say.pixels(name, count, text));
  return pairs.map((pair) => [Number(pair![1]), Number(pair![2])]);
}

function sheetOf(text: string | undefined): ImageOptions["sheet"] {
  if (text === undefined) return undefined;
  const paper = paperNamed(text);
  if (paper) return { widthMm: paper.width, heightMm: paper.height };
  const sides = partsBy(text);
  if (sides.length !== 2)
    throw new UsageError((say) =>
      say.oneOf(
        "sheet",
        PAPERS.map(({ id }) => id),
        text,
      ),
    );
  const [widthMm, heightMm] = sides.map((side) => lengthOf(side, "--sheet")) as [number, number];
  return { widthMm, heightMm };
}

function lengthOf(text: string, path: string): number {
  const length = parseLength(text, "mm", path, SIZE);
  if (!length.ok) throw inputProblem(length.problems);
  return length.value;
}
