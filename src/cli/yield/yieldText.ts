import { type LengthForStraps, lengthForStraps } from "../../core/lay/boxes/straps/lengthForStraps.ts";
import { strapBlocks } from "../../core/lay/boxes/straps/strapBlocks.ts";
import type { StrapOnCloth } from "../../core/lay/boxes/straps/strapProblem.ts";
import { type StrapYield, strapYield } from "../../core/lay/boxes/straps/strapYield.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";

type Texts = CliTexts["yields"];

/** What `yield --length` tells a person. `asked` is the strap as typed; its unit is used for every figure. */
export function yieldText(
  cloth: StrapOnCloth,
  length: number,
  found: StrapYield,
  asked: string,
  language: Language,
): string {
  const texts = CLI_TEXTS[language].yields;
  const style = styleOf(asked);
  const show = (mm: number): string => formatLength(mm, styleAt(mm, style), language);
  const where = texts.onCloth(show(length), show(cloth.clothWidth));
  const strap = strapName(cloth, show);
  if (found.count === 0) return lines(texts.noneFits(strap, where), ...help(cloth, length, show, texts));
  return lines(
    texts.gives(texts.straps(found.count), strap, where),
    found.proven ? texts.provenMost : texts.couldBe(found.bound, found.count),
    ...(cloth.directions === "both" ? [texts.oneWay(found.lengthwise, found.crosswise)] : []),
    "",
    texts.fromTheEnd,
    ...planLines(cloth, found, show, texts),
    ...endLine(length - found.usedLength, show, texts),
  );
}

/** What `yield --count` tells a person. */
export function lengthText(
  cloth: StrapOnCloth,
  count: number,
  found: LengthForStraps,
  asked: string,
  language: Language,
): string {
  const texts = CLI_TEXTS[language].yields;
  const style = styleOf(asked);
  const show = (mm: number): string => formatLength(mm, styleAt(mm, style), language);
  const { plan } = found;
  const where = texts.onCloth(show(found.length), show(cloth.clothWidth));
  return lines(
    texts.need(texts.straps(count), strapName(cloth, show), where),
    found.proven ? texts.provenShortest : texts.couldBeShorter(show(found.bound), show(found.length)),
    ...(plan.count > count ? [texts.alsoGives(texts.straps(plan.count))] : []),
    "",
    texts.fromTheEnd,
    ...planLines(cloth, plan, show, texts),
  );
}

function lines(...all: string[]): string {
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
