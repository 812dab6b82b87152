import type { LaidStrip } from "../../core/drawing/lay/yieldPictures.ts";
import type { LengthForStraps } from "../../core/lay/boxes/straps/lengthForStraps.ts";
import { lengthForStraps } from "../../core/lay/boxes/straps/lengthForStraps.ts";
import { strapBlocks } from "../../core/lay/boxes/straps/strapBlocks.ts";
import type { StrapOnCloth } from "../../core/lay/boxes/straps/strapProblem.ts";
import { type StrapYield, strapYield } from "../../core/lay/boxes/straps/strapYield.ts";
import type { YieldStep } from "../../core/lay/boxes/straps/yieldCurve.ts";
import type { Stock } from "../../core/lay/problem/layProblem.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";
import type { YieldAsked } from "./readYield.ts";

type Texts = CliTexts["yields"];

/** What a question of `yield` comes to: for programs, for people, and as a plan to draw. */
export interface YieldAnswer {
  readonly json: object;
  readonly text: string;
  /** Not one strap or set. */
  readonly none: boolean;
  readonly count: number;
  readonly plan: { readonly stock: Stock; readonly strips: readonly LaidStrip[] } | null;
  /** Lengths as bought. */
  readonly curve?: readonly YieldStep[] | undefined;
}

/** Writes lengths in the unit of a size as it was typed; from a metre on metric ones in metres. */
export function shownIn(asked: string, language: Language): (mm: number) => string {
  const style = styleOf(asked);
  return (mm) => formatLength(mm, styleAt(mm, style), language);
}

/** What is left after squaring and washing, where anything is lost. */
function lossLine({ loss, width, strips }: YieldAsked, cut: number, texts: Texts, language: Language): string[] {
  if (loss.squaring === 0 && loss.lengthwise === 0 && loss.crosswise === 0) return [];
  const show = shownIn(strips[0]!.text, language);
  return [texts.leftToCut(show(cut), show(width))];
}

/** What `yield --length` tells a person; lengths as bought but for `length`, which is left to cut from. */
export function yieldText(
  cloth: StrapOnCloth,
  asked: YieldAsked,
  length: number,
  found: StrapYield,
  next: { readonly length: number; readonly count: number } | null,
  language: Language,
): string {
  const texts = CLI_TEXTS[language].yields;
  const show = shownIn(asked.strips[0]!.text, language);
  const where = texts.onCloth(show(asked.length), show(asked.width / (1 - asked.loss.crosswise)));
  const strap = strapName(cloth, show);
  const lost = lossLine(asked, length, texts, language);
  if (found.count === 0) return lines(texts.noneFits(strap, where), ...lost, ...help(cloth, length, show, texts));
  const more =
    next === null || next.length <= asked.length
      ? []
      : [`${texts.moreGives(show(next.length - asked.length), next.count - found.count)}.`];
  return lines(
    texts.gives(texts.straps(found.count), strap, where),
    ...lost,
    found.proven ? texts.provenMost : texts.couldBe(found.bound, found.count),
    ...(cloth.directions === "both" ? [texts.oneWay(found.lengthwise, found.crosswise)] : []),
    ...more,
    "",
    texts.fromTheEnd,
    ...planLines(cloth, found, show, texts),
    ...endLine(length - found.usedLength, show, texts),
  );
}

/** What `yield --count` tells a person; the length and its bound as bought. */
export function lengthText(
  cloth: StrapOnCloth,
  asked: YieldAsked,
  count: number,
  found: LengthForStraps,
  language: Language,
): string {
  const texts = CLI_TEXTS[language].yields;
  const show = shownIn(asked.strips[0]!.text, language);
  const { plan } = found;
  const where = texts.onCloth(show(found.length), show(asked.width / (1 - asked.loss.crosswise)));
  return lines(
    texts.need(texts.straps(count), strapName(cloth, show), where),
    ...lossLine(asked, plan.usedLength, texts, language),
    found.proven ? texts.provenShortest : texts.couldBeShorter(show(found.bound), show(found.length)),
    ...(plan.count > count ? [texts.alsoGives(texts.straps(plan.count))] : []),
    "",
    texts.fromTheEnd,
    ...planLines(cloth, plan, show, texts),
  );
}

/** How the number grows with the length, a step a line. */
export function curveText(curve: readonly YieldStep[], asked: YieldAsked, language: Language): string {
  const texts = CLI_TEXTS[language].yields;
  const show = shownIn(asked.strips[0]!.text, language);
  const rows = curve.map(({ length, count }, i) => {
    const before = curve[i - 1];
    const gain = before === undefined ? "" : texts.moreGives(show(length - before.length), count - before.count);
    return [show(length), String(count), gain] as const;
  });
  const wide = (column: 0 | 1): number => Math.max(...rows.map((row) => row[column].length));
  const [first, second] = [wide(0), wide(1)];
  return lines(
    "",
    texts.curve(show(asked.length), show(asked.curveTo!)),
    ...rows.map(([length, count, gain]) =>
      `  ${length.padStart(first)}  ${count.padStart(second)}  ${gain}`.trimEnd(),
    ),
    ...(rows.length === 1 ? [texts.noMore] : []),
  );
}

export function lines(...all: string[]): string {
  return `${all.join("\n")}\n`;
}

/** Inches when the strap was typed in inches, feet or yards, else centimetres or millimetres as typed. */
function styleOf(asked: string): LengthStyle {
  if (/in|ft|yd|["'”″′’]/iu.test(asked)) return "in/32";
  return /\d\s*(cm|m)\b/iu.test(asked) ? "cm" : "mm";
}

/** From a metre on, metric lengths are said in metres. */
function styleAt(mm: number, style: LengthStyle): LengthStyle {
  return style !== "in/32" && mm >= 1000 ? "m" : style;
}

function strapName(cloth: StrapOnCloth, show: (mm: number) => string): string {
  return `${show(cloth.strapWidth)} x ${show(cloth.strapLength)}`;
}

function planLines(cloth: StrapOnCloth, found: StrapYield, show: (mm: number) => string, texts: Texts): string[] {
  return strapBlocks(cloth, found.placements).map(({ rotation, x, y, along, across }) => {
    const count = String(along * across).padStart(3);
    return `  ${texts.block(count, rotation === 0, along, across, show(x), show(y))}`;
  });
}

function endLine(left: number, show: (mm: number) => string, texts: Texts): string[] {
  return left >= 1 ? [texts.untouched(show(left))] : [];
}

/** What would let a strap fit. */
function help(cloth: StrapOnCloth, length: number, show: (mm: number) => string, texts: Texts): string[] {
  const advice: string[] = [];
  const longer = lengthForStraps(cloth, 1);
  if (longer !== null) advice.push(texts.lengthGives(show(longer.length), texts.straps(longer.plan.count)));
  if (cloth.directions !== "lengthwise" && cloth.strapLength > cloth.clothWidth)
    advice.push(texts.crosswiseNeeds(show(cloth.strapLength)));
  if (cloth.directions !== "both" && strapYield({ ...cloth, directions: "both" }, length).count > 0)
    advice.push(texts.otherGrain);
  advice.push(texts.orJoin);
  return [texts.wouldHelp, ...advice.map((line) => `  ${line}`)];
}
