import {
  biasOfSquare,
  clothForBias,
  equalStrips,
  joinLoss,
  squareForBias,
} from "../../core/panels/bias/biasStrips.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import type { LengthRange } from "../../core/units/parseLength.ts";
import {
  type Command,
  EXIT,
  type ExitCode,
  type Io,
  JSON_OPTION,
  type ParsedArgs,
  UsageError,
} from "../command.ts";
import { inputProblem } from "../inOut/toldProblem.ts";
import { requiredOption, wordOption } from "../options/optionValues.ts";
import { LengthReader } from "../strap/strapOptions.ts";
import { BINDING_TEXTS } from "../words/bindingTexts.ts";

const WIDE = { minMm: 1, maxMm: 500 };
const LONG = { minMm: 1, maxMm: 100_000 };
const WIDTH = { minMm: 10, maxMm: 20_000 };
const SMALL = { minMm: 0, maxMm: 50 };

/** `laywright binding`: strips for binding or piping, and the cloth they take. */
export const bindingCommand: Command = {
  name: "binding",
  synopsis: "--length L (--width W | --cord D --seam S) [options]",
  about: [
    "How many strips a length of binding or piping takes, joined end to end, and the cloth for them: on the true bias out of a length of cloth and out of a square, or straight across the cloth.",
    "\nA piping cover is cut as wide as the way round its cord and both seam allowances. On the bias the ends lie along the grain and are joined there.",
    '\nExample: laywright binding --length "3.2 m" --cord "4 mm" --seam "1 cm" --cloth "140 cm"',
  ].join("\n"),
  options: [
    { name: "length", value: "L", help: "finished length, joins sewn" },
    { name: "width", value: "W", help: "width of the strips as cut" },
    { name: "cord", value: "D", help: "piping: how thick its cord is, in place of --width" },
    { name: "seam", value: "S", help: "piping: seam allowance beyond the cord on either side" },
    { name: "cloth", value: "W", help: "usable width of the cloth (default 140 cm)" },
    { name: "join", value: "S", help: "seam allowance of the joins (default 6 mm)" },
    { name: "grain", value: "HOW", help: "bias (default) or straight" },
    JSON_OPTION,
  ],
  operands: [0, 0],
  run: runBinding,
};

interface Asked {
  readonly length: number;
  readonly width: number;
  readonly cloth: number;
  readonly join: number;
  readonly isBias: boolean;
}

/** Cloth for the strips. mm. */
interface ClothFor {
  readonly strips: number;
  /** Longest strip. */
  readonly stripMm: number;
  readonly lengthMm: number;
}

async function runBinding(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const asked = readAsked(args);
  const { length, width, cloth, join, isBias } = asked;
  const lost = isBias ? joinLoss(join) : 2 * join;
  const across = isBias ? biasAcross(asked) : straightAcross(asked);
  const side = isBias ? squareForBias(length, width, join) : null;
  const square = side === null ? null : { sideMm: side, strips: biasOfSquare(side, width, join).strips.length };
  const fromCloth = across && { widthMm: cloth, ...across };
  if (args.switches.has("json")) {
    const answer = { grain: isBias ? "bias" : "straight", widthMm: width, lengthMm: length, joinLossMm: lost };
    io.out(`${JSON.stringify({ laywrightBinding: 1, ...answer, cloth: fromCloth, square })}\n`);
  } else {
    const texts = BINDING_TEXTS[io.language];
    const write = (mm: number): string => cutLength(mm, "mm", io.language);
    const lines = [
      texts.title(isBias, write(width), write(length)),
      texts.joined(write(lost)),
      across === null
        ? texts.tooShort(write(cloth))
        : texts.fromCloth(write(cloth), write(across.lengthMm), across.strips, write(across.stripMm), isBias),
      ...(square === null ? [] : [texts.fromSquare(write(square.sideMm), square.strips)]),
    ];
    io.out(`${lines.join("\n")}\n`);
  }
  return across === null ? EXIT.input : EXIT.done;
}

function readAsked(args: ParsedArgs): Asked {
  requiredOption(args, "length");
  const isPiping = args.values.has("cord");
  if (isPiping && args.values.has("width")) throw new UsageError((say) => say.either("width", "cord"));
  if (isPiping && !args.values.has("seam")) throw new UsageError((say) => say.together("cord", "seam"));
  if (!isPiping) requiredOption(args, "width");
  const lengths = new LengthReader(args);
  const of = (name: string, range: LengthRange, usual = 0): number => lengths.length(name, range) ?? usual;
  const width = isPiping ? Math.PI * of("cord", WIDE) + 2 * of("seam", SMALL) : of("width", WIDE);
  const length = of("length", LONG);
  const cloth = of("cloth", WIDTH, 1400);
  const join = of("join", SMALL, 6);
  // Nothing is worked out from a length that could not be read.
  if (lengths.problems.length > 0) throw inputProblem(lengths.problems);
  const isBias = wordOption(args, "grain", ["bias", "straight"] as const, "bias") === "bias";
  return { length, width, cloth, join, isBias };
}

/** Strips on the true bias, each from selvedge to selvedge. */
function biasAcross({ length, width, cloth, join }: Asked): ClothFor | null {
  const lengthMm = clothForBias(length, cloth, width, join);
  if (lengthMm === null) return null;
  return { strips: Math.round((lengthMm - cloth) / (Math.SQRT2 * width)), stripMm: Math.SQRT2 * cloth, lengthMm };
}

/** Equal strips straight across the cloth. */
function straightAcross({ length, width, cloth, join }: Asked): ClothFor | null {
  const strips = equalStrips(length, cloth, 2 * join);
  return strips && { strips: strips.count, stripMm: strips.length, lengthMm: strips.count * width };
}
