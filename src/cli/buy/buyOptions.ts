import {
  otherConstructions,
  SHOP_WIDTHS,
  type ShopCell,
  type SoldWidth,
  shopRoll,
} from "../../core/job/shopping/shopCell.ts";
import { ROW_EFFORT, type ShopWish } from "../../core/job/shopping/shopTable.ts";
import type { Material } from "../../core/materials/material.ts";
import type { Problem } from "../../core/problems/problem.ts";
import type { Project } from "../../core/project/project.ts";
import { CLOTH_CONSTRUCTIONS } from "../../core/straps/constructions/catalogue.ts";
import type { ConstructionId } from "../../core/straps/wish/strapWish.ts";
import { parseLength } from "../../core/units/parseLength.ts";
import { JSON_OPTION, type OptionSpec, type ParsedArgs, UsageError } from "../command.ts";
import { InputProblem, inputProblem } from "../inOut/toldProblem.ts";
import { numberOption, wordOption } from "../options/optionValues.ts";
import { CUT_OPTION, cutMode } from "../options/searchSettings.ts";
import { BUY_TEXTS, type BuyTexts } from "../words/buyTexts.ts";

const DIRECTIONS = ["either", "lengthwise", "crosswise"] as const;
const WIDTH = { minMm: 50, maxMm: 20_000 };
/** More widths than a shop has. */
const MOST_WIDTHS = 40;
/** A width this near to the project's own roll is the same, mm. */
const SAME = 0.5;

/** Options of `laywright buy`, in the order of its help. */
export const BUY_OPTIONS: readonly OptionSpec[] = [
  { name: "material", value: "NAME", help: "one cloth, by its id or name (default: every cloth sold off a roll)" },
  {
    name: "widths",
    value: "LIST",
    help: 'widths it is sold in, each with its price for the length that the project prices: "110 cm at 12.50, 54 in at 17" (default 110, 137, 142, 150 cm, 44, 54, 60 in and the project\'s own)',
  },
  {
    name: "constructions",
    value: "LIST",
    help: `how its straps are made: own (as in the project), all, or of ${CLOTH_CONSTRUCTIONS.join(", ")} (default: own and the three that take least cloth)`,
  },
  {
    name: "directions",
    value: "LIST",
    help: "how its straps lie: own, all, or of either, lengthwise, crosswise (default own)",
  },
  { name: "joins", value: "HOW", help: "own (default), yes, no or both: whether straps may be joined" },
  { name: "own-stock", help: "use up first what the project has of the cloth (default: all from the new roll)" },
  {
    name: "up-to",
    value: "N",
    help: "instead of the table: what 1 to N bags take, bag by bag, at the first width of --widths (default the project's own) and as planned",
  },
  {
    name: "have",
    value: "L",
    help: 'what a length of the roll or a piece ("45 cm x 60 cm", along the selvedge first) makes: bags, straps alone, straps beside the bags; with --up-to: how many of those bags',
  },
  { name: "picture", value: "FILE", help: "with --up-to: write bags against length as SVG" },
  {
    name: "open",
    help: "instead of the table: which of the project's own stock and of the rolls and panels it can buy to cut into, for least money",
  },
  CUT_OPTION,
  { name: "seconds", value: "N", help: "stop after N seconds; the rows so far stand" },
  { name: "evaluations", value: "N", help: `search for N evaluations a row (default ${ROW_EFFORT})` },
  { name: "seed", value: "N", help: "seed of the search (default 1)" },
  JSON_OPTION,
];

/** What is asked, for one cloth. Throws `UsageError` and `InputProblem`. */
export function shopWish(args: ParsedArgs, project: Project, material: Material): ShopWish {
  const directions = listOption(args, "directions", DIRECTIONS);
  const isGrowth = args.values.has("up-to");
  const joins = wordOption(args, "joins", ["own", "yes", "no", "both"] as const, "own");
  return {
    materialId: material.id,
    widths: soldWidths(args, shopRoll(project, material)?.width ?? Number.NaN),
    // Bag by bag one way is looked at: as planned, unless told.
    constructions:
      isGrowth && !args.values.has("constructions") ? [null] : constructionsOf(args, project, material),
    directions: directions ?? [null],
    joins: JOINS[joins],
    ownStock: args.switches.has("own-stock"),
    mode: cutMode(args),
    evaluations: numberOption(args, "evaluations", { least: 1, most: 1e9, whole: true }, ROW_EFFORT),
    seed: numberOption(args, "seed", { least: 0, most: 2 ** 31 - 1, whole: true }, 1),
  };
}

const JOINS: Readonly<Record<"own" | "yes" | "no" | "both", readonly ShopCell["joins"][]>> = {
  own: [null],
  yes: [true],
  no: [false],
  both: [false, true],
};

function constructionsOf(
  args: ParsedArgs,
  project: Project,
  material: Material,
): readonly (ConstructionId | null)[] {
  const asked = listOption(args, "constructions", CLOTH_CONSTRUCTIONS);
  const hasStraps = project.straps.some(({ materials }) => materials.outer === material.id);
  if (!hasStraps) return [null];
  return asked ?? [null, ...otherConstructions(project, material)];
}

/** A list of words, of which `own` is null and `all` every one; null when the option is not given. */
function listOption<W extends string>(
  args: ParsedArgs,
  name: string,
  words: readonly W[],
): readonly (W | null)[] | null {
  const text = args.values.get(name);
  if (text === undefined) return null;
  const named = text.split(/[\s,;]+/u).filter((word) => word !== "");
  const list = named.flatMap((word): (W | null)[] => {
    if (word === "own") return [null];
    if (word === "all") return [...words];
    const known = words.find((each) => each === word);
    if (known === undefined) throw new UsageError((say) => say.oneOf(name, ["own", "all", ...words], word));
    return [known];
  });
  if (list.length === 0) throw new UsageError((say) => say.oneOf(name, ["own", "all", ...words], text));
  return [...new Set(list)];
}

/** An input problem in the words of `buy`. */
export function buyProblem(code: string, path: string, say: (texts: BuyTexts) => string): InputProblem {
  return new InputProblem((language) => [{ code, path, message: say(BUY_TEXTS[language]) }]);
}

/** "110 cm at 12.50, 54 in": widths with the prices they have. */
function soldWidths(args: ParsedArgs, own: number): SoldWidth[] {
  const text = args.values.get("widths");
  if (text === undefined && args.values.has("up-to") && Number.isFinite(own)) return [{ width: own, amount: null }];
  if (text === undefined) {
    const usual = SHOP_WIDTHS.filter((width) => !(Math.abs(width - own) < SAME));
    return [...usual, ...(Number.isFinite(own) ? [own] : [])]
      .sort((a, b) => a - b)
      .map((width) => ({ width, amount: null }));
  }
  const parts = listedParts(text).filter((part) => part.trim() !== "");
  const unreadable = (part: string): InputProblem =>
    buyProblem("width-unreadable", "--widths", ({ unreadableWidth }) => unreadableWidth(part));
  if (parts.length === 0 || parts.length > MOST_WIDTHS) throw unreadable(text);
  const problems: Problem[] = [];
  const widths = parts.map((part): SoldWidth => {
    const [size = "", amount, ...rest] = part.split(/\s(?:at|zu)\s/u).map((one) => one.trim());
    const price = amount === undefined ? null : amountOf(amount);
    if (rest.length > 0 || Number.isNaN(price)) throw unreadable(part.trim());
    const width = parseLength(size, "mm", "--widths", WIDTH);
    if (width.ok) return { width: width.value, amount: price };
    problems.push(...width.problems);
    return { width: Number.NaN, amount: price };
  });
  if (problems.length > 0) throw inputProblem(problems);
  return widths.filter(({ width }, i) => widths.findIndex((other) => Math.abs(other.width - width) < SAME) === i);
}

/** Parts between semicolons and commas; a comma between a digit and a digit belongs to a number. */
function listedParts(text: string): string[] {
  const parts: string[] = [];
  let from = 0;
  let before = "";
  for (let i = 0; i < text.length; i++) {
    const sign = text[i]!;
    const isNumber = /\d/u.test(text[i + 1] ?? "") && !/[\p{L}"'″′]/u.test(before);
    if (sign === ";" || (sign === "," && !isNumber)) {
      parts.push(text.slice(from, i));
      from = i + 1;
    }
    if (sign.trim() !== "") before = sign;
  }
  return [...parts, text.slice(from)];
}

function amountOf(text: string): number {
  return /^\d{1,9}(?:[.,]\d{1,4})?$/u.test(text) ? Number(text.replace(",", ".")) : Number.NaN;
}
