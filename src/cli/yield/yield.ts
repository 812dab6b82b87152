import { lengthForStraps } from "../../core/lay/boxes/straps/lengthForStraps.ts";
import type { StrapOnCloth } from "../../core/lay/boxes/straps/strapProblem.ts";
import { strapYield } from "../../core/lay/boxes/straps/strapYield.ts";
import { lengthToBuy, lengthToCut, nextStep, yieldCurve } from "../../core/lay/boxes/straps/yieldCurve.ts";
import type { Language } from "../../core/units/language.ts";
import { type Command, EXIT, JSON_OPTION, type ParsedArgs } from "../command.ts";
import { plainProblem } from "../inOut/toldProblem.ts";
import { numberOption } from "../options/optionValues.ts";
import { LENGTH_RANGE, readYield, type YieldAsked } from "./readYield.ts";
import { checkYieldOptions, YIELD_OPTIONS } from "./yieldOptions.ts";
import { curveText, lengthText, shownIn, type YieldAnswer, yieldText } from "./yieldText.ts";

/** More straps than this are refused rather than waited for. */
const MOST_STRAPS = 20_000;

/** `laywright yield`: how many straps a length of cloth gives, or the length for a number of straps. */
export const yieldCommand: Command = {
  name: "yield",
  synopsis: '--strip "WIDTH x LENGTH" --width W (--length L | --count N) [options]',
  about: [
    "Lays straps of one cut size, or several in proportion, on a length of roll or on cloth out of a project",
    "(leftovers and skins of any outline, with their flaws), on straight grain, and says whether the number is proven",
    "or how far it can be from the best. --curve tells what a little more length gives.",
    "\nWith --json: count, bound and proven; lengthwise and crosswise are the numbers when all straps lie one way;",
    "placements in mm, x along the roll, y across it, the lower-left corner of each strap as it lies; rotation 0 is",
    "lengthwise, 90 crosswise. With --count: lengthMm and boundMm, and the plan on that length. Several straps:",
    "sets in place of count, and each placement names its strip, from 0.",
  ].join(" "),
  options: [...YIELD_OPTIONS, JSON_OPTION],
  operands: [0, 0],
  run: async (args, io) => {
    checkYieldOptions(args);
    const asked = readYield(args);
    const answer = await answerOf(args, asked, io.language);
    const curve = answer.curve ?? null;
    if (args.values.has("picture")) {
      // Fonts and drawings are read for pictures alone.
      const { writeYieldPicture } = await import("./yieldPicture.ts");
      await writeYieldPicture(args.values.get("picture")!, asked, answer, io);
    }
    const steps = curve?.map(({ length, count, proven }) => ({ lengthMm: length, count, proven }));
    const json = steps === undefined ? answer.json : { ...answer.json, curve: steps };
    const text = curve === null ? answer.text : answer.text + curveText(curve, asked, io.language);
    io.out(args.switches.has("json") ? `${JSON.stringify(json)}\n` : text);
    // No strap at all is the same answer however it is asked for.
    return answer.none ? EXIT.input : EXIT.done;
  },
};

async function answerOf(args: ParsedArgs, asked: YieldAsked, language: Language): Promise<YieldAnswer> {
  const [only] = asked.strips;
  if (asked.strips.length > 1 || only!.perSet > 1 || args.values.has("on")) {
    // Searching for outlines and sets is read for those alone.
    const { setAnswer } = await import("./setReport.ts");
    return setAnswer(args, asked, language);
  }
  const cloth: StrapOnCloth = {
    ...{ strapWidth: only!.width, strapLength: only!.length, clothWidth: asked.width },
    ...{ gap: asked.gap ?? 0, directions: asked.directions },
  };
  return Number.isNaN(asked.length)
    ? lengthForCount(args, asked, cloth, language)
    : yieldOnLength(asked, cloth, language);
}

function yieldOnLength(asked: YieldAsked, cloth: StrapOnCloth, language: Language): YieldAnswer {
  const length = lengthToCut(asked.length, asked.loss);
  const most = Math.max(length, lengthToCut(asked.curveTo ?? 0, asked.loss));
  const straps = (most * cloth.clothWidth) / (cloth.strapLength * cloth.strapWidth);
  if (straps > MOST_STRAPS) throw tooMany(Math.floor(straps), "--length");
  if (length <= 0) throw plainProblem("squared-away", "--squaring", ({ yields }) => yields.squaredAway);
  const found = strapYield(cloth, length);
  const { usedLength, ...contract } = found;
  const next = straps < 200 ? nextStep(cloth, { length, count: found.count }) : null;
  const more = next === null ? null : { length: lengthToBuy(next.length, asked.loss), count: next.count };
  const bought = (steps: ReturnType<typeof yieldCurve>) =>
    steps.map((step, i) => ({ ...step, length: i === 0 ? asked.length : lengthToBuy(step.length, asked.loss) }));
  return {
    none: found.count === 0,
    json: {
      ...contract,
      usedLengthMm: usedLength,
      next: more === null ? null : { lengthMm: more.length, count: more.count },
    },
    text: yieldText(cloth, asked, length, found, more, language),
    plan: planOf(asked, cloth, length, found.placements, language),
    count: found.count,
    ...(asked.curveTo === undefined
      ? {}
      : { curve: bought(yieldCurve(cloth, length, lengthToCut(asked.curveTo, asked.loss))) }),
  };
}

function planOf(
  asked: YieldAsked,
  { strapWidth, strapLength, clothWidth }: StrapOnCloth,
  length: number,
  placements: ReturnType<typeof strapYield>["placements"],
  language: Language,
): YieldAnswer["plan"] {
  const show = shownIn(asked.strips[0]!.text, language);
  const label = `${show(strapWidth)} x ${show(strapLength)}`;
  return {
    stock: { kind: "roll", id: "roll", width: clothWidth, length, flaws: [] },
    strips: placements.map(({ x, y, rotation }) => ({
      ...{ x, y, label },
      along: rotation === 0 ? strapLength : strapWidth,
      across: rotation === 0 ? strapWidth : strapLength,
    })),
  };
}

function lengthForCount(args: ParsedArgs, asked: YieldAsked, cloth: StrapOnCloth, language: Language): YieldAnswer {
  const count = numberOption(args, "count", { least: 1, most: MOST_STRAPS, whole: true }, 1);
  const found = lengthForStraps(cloth, count);
  if (found === null)
    throw plainProblem("strap-too-long-for-width", "--width", ({ yields }) => yields.noStrapAcross);
  if (found.length > LENGTH_RANGE.maxMm) throw tooMany(count, "--count");
  const { proven, plan } = found;
  const [length, bound] = [lengthToBuy(found.length, asked.loss), lengthToBuy(found.bound, asked.loss)];
  return {
    none: false,
    json: { lengthMm: length, boundMm: bound, proven, count: plan.count, placements: plan.placements },
    text: lengthText(cloth, asked, count, { ...found, length, bound }, language),
    plan: planOf(asked, cloth, found.length, plan.placements, language),
    count: plan.count,
  };
}

function tooMany(straps: number, path: string): Error {
  return plainProblem("too-many-straps", path, ({ yields }) => yields.tooMany(path, straps, MOST_STRAPS));
}
