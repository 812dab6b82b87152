import type { LengthForStraps } from "../core/lay/yield/lengthForStraps.ts";
import { lengthForStraps } from "../core/lay/yield/lengthForStraps.ts";
import { strapBlocks } from "../core/lay/yield/strapBlocks.ts";
import type { StrapOnCloth } from "../core/lay/yield/strapProblem.ts";
import type { StrapYield } from "../core/lay/yield/strapYield.ts";
import { formatLength, type LengthStyle } from "../core/units/formatLength.ts";

/** What `yield --length` tells a person. `asked` is the strap as typed; its unit is used for every figure. */
export function yieldText(cloth: StrapOnCloth, length: number, found: StrapYield, asked: string): string {
  const style = styleOf(asked);
  const show = (mm: number): string => formatLength(mm, style);
  const where = `${show(length)} of cloth, ${show(cloth.clothWidth)} usable width`;
  if (found.count === 0)
    return lines(`No strap of ${strapName(cloth, style)} fits on ${where}.`, ...help(cloth, show));
  return lines(
    `${straps(found.count)} of ${strapName(cloth, style)} from ${where}.`,
    found.proven
      ? "Proven: no layout gives more."
      : `At most ${found.bound} could fit; no layout with more than ${found.count} was found.`,
    ...oneWayLine(cloth, found),
    "",
    "From the cut end:",
    ...planLines(cloth, found, show),
    ...endLine(length - found.usedLength, show),
  );
}

/** What `yield --count` tells a person. */
export function lengthText(cloth: StrapOnCloth, count: number, found: LengthForStraps, asked: string): string {
  const style = styleOf(asked);
  const show = (mm: number): string => formatLength(mm, style);
  const { plan } = found;
  return lines(
    `${straps(count)} of ${strapName(cloth, style)} need ${show(found.length)} of cloth, ${show(cloth.clothWidth)} usable width.`,
    found.proven
      ? "Proven: no shorter length is enough."
      : `The shortest possible is at least ${show(found.bound)}; no layout shorter than ${show(found.length)} was found.`,
    ...(plan.count > count ? [`The same length gives ${straps(plan.count)}.`] : []),
    "",
    "From the cut end:",
    ...planLines(cloth, plan, show),
  );
}

function lines(...all: string[]): string {
  return `${all.join("\n")}\n`;
}

function straps(count: number): string {
  return count === 1 ? "1 strap" : `${count} straps`;
}

/** Inches when the strap was typed in inches, feet or yards, else centimetres or millimetres as typed. */
function styleOf(asked: string): LengthStyle {
  if (/in|ft|yd|["'”″′’]/iu.test(asked)) return "in/32";
  return /\d\s*(cm|m)\b/iu.test(asked) ? "cm" : "mm";
}

function strapName(cloth: StrapOnCloth, style: LengthStyle): string {
  return `${formatLength(cloth.strapWidth, style)} x ${formatLength(cloth.strapLength, style)}`;
}

function oneWayLine(cloth: StrapOnCloth, found: StrapYield): string[] {
  if (cloth.directions !== "both") return [];
  return [`All lengthwise: ${found.lengthwise}. All crosswise: ${found.crosswise}.`];
}

function planLines(cloth: StrapOnCloth, found: StrapYield, show: (mm: number) => string): string[] {
  return strapBlocks(cloth, found.placements).map(({ rotation, x, y, along, across }) => {
    const way = rotation === 0 ? "lengthwise" : "crosswise";
    const rows = along === 1 ? `${across} side by side` : `${along} along, ${across} side by side`;
    return `  ${String(along * across).padStart(3)} ${way}: ${rows}, starting ${show(x)} along and ${show(y)} across`;
  });
}

function endLine(left: number, show: (mm: number) => string): string[] {
  return left >= 1 ? [`${show(left)} of the length is not touched.`] : [];
}

/** What would let a strap fit. */
function help(cloth: StrapOnCloth, show: (mm: number) => string): string[] {
  const advice: string[] = [];
  const longer = lengthForStraps(cloth, 1);
  if (longer !== null) advice.push(`${show(longer.length)} of length gives ${straps(longer.plan.count)}.`);
  if (cloth.directions !== "lengthwise" && cloth.strapLength > cloth.clothWidth)
    advice.push(`Crosswise it needs ${show(cloth.strapLength)} of usable width.`);
  if (cloth.directions !== "both") advice.push("With --grain both the other straight grain is tried as well.");
  advice.push("Or join the strap from two shorter pieces; add a seam allowance to each.");
  return ["What would help:", ...advice.map((line) => `  ${line}`)];
}
