import type { LaidStrip } from "../../core/drawing/lay/yieldPictures.ts";
import { ringBox } from "../../core/geometry/box.ts";
import { poseRing } from "../../core/geometry/pose.ts";
import { layProblemStocks } from "../../core/job/layProblems.ts";
import { lengthForSets, type SetOnCloth, type SetStrip, setYield } from "../../core/lay/alternatives/setYield.ts";
import { lengthToBuy, lengthToCut } from "../../core/lay/boxes/straps/yieldCurve.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import type { LayPlan, LayProblem, Stock } from "../../core/lay/problem/layProblem.ts";
import { allowedTurns } from "../../core/materials/orientations.ts";
import { nearestWord } from "../../core/problems/nearestWord.ts";
import { readProject } from "../../core/project/file/readProject.ts";
import type { Language } from "../../core/units/language.ts";
import type { ParsedArgs } from "../command.ts";
import { readInput, withItsWorkshop } from "../inOut/readInput.ts";
import { inputProblem, plainProblem } from "../inOut/toldProblem.ts";
import { numberOption } from "../options/optionValues.ts";
import { CLI_TEXTS } from "../words/words.ts";
import type { YieldAsked } from "./readYield.ts";
import { lines, shownIn, type YieldAnswer } from "./yieldText.ts";

/** A search that does not ask for more; each try takes so many evaluations. */
const EVALUATIONS = 200_000;
/** Sets in one plan, and so along a curve: each of its steps is a search. */
const MOST_SETS = 2000;
const CLOTH = { grain: "free", oneWay: false, facesAlike: false } as const;
const GRAINS = { both: "either", lengthwise: "lengthwise", crosswise: "crosswise" } as const;

/** Several straps in proportion, or straps on cloth out of a project: whole sets, their plan and what bounds them. */
export function setAnswer(args: ParsedArgs, asked: YieldAsked, language: Language): YieldAnswer {
  const evaluations = numberOption(args, "evaluations", { least: 1000, most: 1e9, whole: true }, EVALUATIONS);
  if (args.values.has("on")) return onLength(asked, ofProject(args, asked), evaluations, language, asked.length);
  const roll = (length: number | null): SetOnCloth =>
    onCloth(asked, { kind: "roll", id: "roll", width: asked.width, length, flaws: [] }, asked.gap ?? 0, 0, CLOTH);
  if (Number.isNaN(asked.length)) return lengthOf(args, asked, roll(null), evaluations, language);
  const answer = onLength(asked, roll(lengthToCut(asked.length, asked.loss)), evaluations, language, asked.length);
  return asked.curveTo === undefined
    ? answer
    : { ...answer, curve: curveOf(asked, roll(null), answer, evaluations) };
}

function onCloth(
  { strips, directions }: YieldAsked,
  stock: Stock,
  gap: number,
  margin: number,
  material: Parameters<typeof allowedTurns>[1],
): SetOnCloth {
  const turns = allowedTurns(GRAINS[directions], material);
  if (turns === null) throw plainProblem("grain-against-cloth", "--grain", ({ yields }) => yields.againstGrain);
  const { orientations } = turns;
  return { stock, gap, margin, strips: strips.map((strip): SetStrip => ({ ...strip, orientations })) };
}

/** The cloth that `--on` and `--stock` name. */
function ofProject(args: ParsedArgs, asked: YieldAsked): SetOnCloth {
  const file = args.values.get("on")!;
  const read = readProject(withItsWorkshop(readInput(file, true), file));
  if (!read.ok) throw inputProblem(read.problems);
  const project = read.value;
  const closed = project.materials.flatMap((material) =>
    layProblemStocks(material)
      .filter((stock) => stock.kind === "remnant" || stock.length !== null)
      .map((stock) => ({ material, stock })),
  );
  const id = args.values.get("stock");
  const ids = closed.map(({ stock }) => stock.id);
  const found = id === undefined && closed.length === 1 ? closed[0] : closed.find(({ stock }) => stock.id === id);
  if (found === undefined)
    throw plainProblem("stock-unknown", "--stock", ({ yields }) =>
      yields.noStock(id ?? null, id === undefined ? null : nearestWord(id, ids), ids.join(", ")),
    );
  const { material, stock } = found;
  return onCloth(
    asked,
    stock,
    asked.gap ?? material.gap ?? project.gap,
    material.margin ?? project.margin,
    material,
  );
}

/** Boxes of the strips as they lie. */
function boxesOf(
  problem: LayProblem,
  plan: LayPlan,
): readonly { strip: number; rotation: number; box: ReturnType<typeof ringBox> }[] {
  const rings = problem.pieces.map(({ outline }) => outline.outer);
  return plan.placements.map((pose) => {
    const strip = problem.pieces.findIndex(({ id }) => id === pose.pieceId);
    return { strip, rotation: pose.turnDeg % 180, box: ringBox(poseRing(rings[strip]!, pose)) };
  });
}

function planJson(problem: LayProblem, plan: LayPlan): object[] {
  return boxesOf(problem, plan).map(({ strip, rotation, box }) => ({ strip, x: box.minX, y: box.minY, rotation }));
}

function stripsJson({ strips }: YieldAsked, sets: number): object[] {
  return strips.map(({ width, length, perSet }) => ({
    ...{ widthMm: width, lengthMm: length, perSet },
    count: sets * perSet,
  }));
}

/** Nothing is told that the checker has not passed. Throws on a plan of ours that it refuses. */
function checked(problem: LayProblem, plan: LayPlan): void {
  const faults = checkPlan(problem, plan);
  if (faults.length > 0) throw new RangeError(`yield: the checker refuses the plan: ${JSON.stringify(faults[0])}`);
}

function pictured(
  asked: YieldAsked,
  problem: LayProblem,
  plan: LayPlan,
  show: (mm: number) => string,
): LaidStrip[] {
  return boxesOf(problem, plan).map(({ strip, box }) => {
    const { width, length } = asked.strips[strip]!;
    const [along, across] = [box.maxX - box.minX, box.maxY - box.minY];
    return { x: box.minX, y: box.minY, along, across, label: `${show(width)} x ${show(length)}` };
  });
}

function onLength(
  asked: YieldAsked,
  wish: SetOnCloth,
  evaluations: number,
  language: Language,
  bought: number,
): YieldAnswer {
  const texts = CLI_TEXTS[language].yields;
  const show = shownIn(asked.strips[0]!.text, language);
  const empty = wish.stock.kind === "roll" && (wish.stock.length ?? 0) <= 0;
  const found = empty ? null : setYield(wish, evaluations);
  if (found !== null) checked(found.problem, found.plan);
  const { sets, bound, proven } = found ?? { sets: 0, bound: 0, proven: true };
  const where =
    wish.stock.kind === "remnant" || Number.isNaN(bought)
      ? texts.onStock(wish.stock.id)
      : texts.onCloth(show(bought), show(wish.stock.width));
  const used = found?.plan.uses[0]?.usedLength ?? 0;
  return {
    none: sets === 0,
    json: {
      ...{ sets, bound, proven },
      ...(asked.strips.length === 1 ? { count: sets * asked.strips[0]!.perSet } : {}),
      strips: stripsJson(asked, sets),
      placements: found === null ? [] : planJson(found.problem, found.plan),
      usedLengthMm: used,
    },
    text: lines(
      sets === 0
        ? texts.noSet(where)
        : severalOf(asked)
          ? texts.sets(texts.setCount(sets), listOf(asked, sets, show, language), where)
          : texts.gives(texts.straps(sets), stripName(asked, show), where),
      proven ? texts.provenMost : texts.couldBeSets(bound, sets),
    ),
    plan: found === null ? null : { stock: wish.stock, strips: pictured(asked, found.problem, found.plan, show) },
    count: sets,
  };
}

/** Sets are told by what is in them; one strap by its size. */
const severalOf = ({ strips }: YieldAsked): boolean => strips.length > 1 || strips[0]!.perSet > 1;

const stripName = ({ strips: [only] }: YieldAsked, show: (mm: number) => string): string =>
  `${show(only!.width)} x ${show(only!.length)}`;

function listOf({ strips }: YieldAsked, sets: number, show: (mm: number) => string, language: Language): string {
  const { yields } = CLI_TEXTS[language];
  return strips
    .map((one) => yields.ofEach(sets * one.perSet, `${show(one.width)} x ${show(one.length)}`))
    .join(", ");
}

function lengthOf(
  args: ParsedArgs,
  asked: YieldAsked,
  wish: SetOnCloth,
  evaluations: number,
  language: Language,
): YieldAnswer {
  const texts = CLI_TEXTS[language].yields;
  const show = shownIn(asked.strips[0]!.text, language);
  const sets = numberOption(args, "count", { least: 1, most: MOST_SETS, whole: true }, 1);
  const found = lengthForSets(wish, sets, evaluations);
  if (found === null)
    throw plainProblem("strap-too-long-for-width", "--width", ({ yields }) => yields.noStrapAcross);
  checked(found.problem, found.plan);
  const [length, bound] = [lengthToBuy(found.length, asked.loss), lengthToBuy(found.bound, asked.loss)];
  return {
    none: false,
    json: {
      ...{ lengthMm: length, boundMm: bound, proven: found.proven, sets },
      strips: stripsJson(asked, sets),
      placements: planJson(found.problem, found.plan),
    },
    text: lines(
      texts.need(
        texts.setCount(sets),
        listOf(asked, sets, show, language),
        texts.onCloth(show(length), show(asked.width)),
      ),
      found.proven ? texts.provenShortest : texts.couldBeShorter(show(bound), show(length)),
    ),
    plan: {
      stock: { kind: "roll", id: "roll", width: asked.width, length: found.length, flaws: [] },
      strips: pictured(asked, found.problem, found.plan, show),
    },
    count: sets,
  };
}

/** Lengths as bought from which one set more comes, up to the end of the curve. */
function curveOf(
  asked: YieldAsked,
  open: SetOnCloth,
  { count }: YieldAnswer,
  evaluations: number,
): YieldAnswer["curve"] {
  const inSet = asked.strips.reduce((sum, { perSet }) => sum + perSet, 0);
  const steps = [{ length: asked.length, count, proven: false }];
  for (let sets = count + 1; ; sets++) {
    if (sets > MOST_SETS)
      throw plainProblem("too-many-straps", "--curve", ({ yields }) =>
        yields.tooMany("--curve", sets * inSet, MOST_SETS * inSet),
      );
    const found = lengthForSets(open, sets, evaluations);
    if (found === null) break;
    const length = lengthToBuy(found.length, asked.loss);
    if (length > asked.curveTo! + 1e-6) break;
    const last = steps.at(-1)!;
    if (length <= last.length + 1e-6) steps[steps.length - 1] = { ...last, count: sets };
    else steps.push({ length, count: sets, proven: found.proven });
  }
  return steps;
}
