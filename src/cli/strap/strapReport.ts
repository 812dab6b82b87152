import { lengthLabel } from "../../core/drawing/strap/dimensionLine.ts";
import { ringBox } from "../../core/geometry/box.ts";
import { cautionText } from "../../core/materials/caution.ts";
import type { PieceLine } from "../../core/materials/cutPiece.ts";
import type { Consumable, StrapResult } from "../../core/straps/build/strapResult.ts";
import { CONSTRUCTIONS } from "../../core/straps/constructions/catalogue.ts";
import type { ProfileSpan } from "../../core/straps/section/thicknessProfile.ts";
import type { StrapMaterial } from "../../core/straps/wish/strapWish.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { listedNumbers } from "../../core/units/numberWords.ts";
import { phraseText } from "../../core/words/phrase.ts";
import { constructionTitle, hardwareText, type StrapWords } from "../../core/words/strapWords.ts";
import { CAUTION_TABLES, STRAP_WORDS } from "../../core/words/words.ts";
import { wrapRows } from "../inOut/terminal.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";

function signed(mm: number, write: (mm: number) => string): string {
  return mm > 0 ? `+${write(mm)}` : write(mm);
}

function spanJson({ from, to, layers, thickness }: ProfileSpan): object {
  return { fromMm: from, toMm: to, layers, thicknessMm: thickness };
}

/** Heights of the lines of a role on the first strip, from its lower edge. */
function linesOf(result: StrapResult, role: PieceLine["role"]): number[] {
  const lines = result.pieces[0]!.lines.filter((line) => line.role === role);
  return lines.map((line) => line.contour.vertices[1]!).sort((a, b) => a - b);
}

/** The result as the JSON document of `laywright strap --json`; every number in mm. */
export function strapJson(result: StrapResult, materials: readonly StrapMaterial[], language: Language): object {
  const words = STRAP_WORDS[language];
  const write = (mm: number): string => formatLength(mm, "mm", language);
  const named = new Map(materials.map((one) => [one.id, one.name]));
  return {
    construction: result.wish.construction,
    title: constructionTitle(words.constructions[result.wish.construction]),
    pieces: result.pieces.map((piece) => {
      const box = ringBox(piece.outline.outer);
      return {
        name: piece.name,
        widthMm: box.maxY - box.minY,
        lengthMm: box.maxX - box.minX,
        count: piece.count,
        material: named.get(piece.materialId) ?? piece.materialId,
        grain: piece.grain,
      };
    }),
    nominalWidthMm: result.nominalWidth,
    cutWidthMm: result.cutWidth,
    allowanceMm: result.cutWidth - result.nominalWidth,
    finishedWidthMm: result.finishedWidth,
    layers: result.layers,
    thicknessMm: result.thickness,
    foldLinesMm: result.foldLines,
    tapeLinesMm: linesOf(result, "tape"),
    stitchLinesMm: linesOf(result, "stitch"),
    setbackMm: result.setback,
    cutLengthMm: result.lengths.cut,
    finishedLengthMm: result.lengths.finished,
    rollLengthMm: result.rollLength,
    longestMm: result.lengths.longest,
    shortestMm: result.lengths.shortest,
    lengthItems: result.lengths.items.map(({ code, mm }) => ({ code, label: words.lengthItems[code], mm })),
    across: result.across?.map(spanJson) ?? [],
    along: result.along.map(spanJson),
    needle: result.needle.map((one) => ({
      where: words.needle[one.where],
      layers: one.layers,
      thicknessMm: one.thickness,
    })),
    consumables: result.consumables.map((one) => ({
      kind: one.kind,
      label: words.consumables[one.code],
      lengthMm: one.mm,
    })),
    sewnWith: result.sewnWith,
    hardware: result.hardware.map(({ kind, count, innerWidth, opening, named }) => ({
      ...{ kind, count, innerWidthMm: innerWidth, openingMm: opening, named },
    })),
    alternatives: result.alternatives.map((one) => ({
      construction: one.construction,
      cutWidthMm: one.cutWidth,
      layers: one.layers,
      thicknessMm: one.thickness,
      rollLengthMm: one.rollLength,
    })),
    warnings: result.warnings.map((one) => phraseText(one, write, words)),
    steps: result.steps.map((one) => phraseText(one, write, words)),
    cautions: result.cautions.map((one) => cautionText(one, CAUTION_TABLES[language])),
  };
}

/** Writes lengths in both units at once, as makers think in either: as fine as the material, in the language of the words. */
function inBoth({ inches }: StrapResult, { language }: StrapWords): (mm: number) => string {
  return (mm) => lengthLabel(mm, inches, language);
}

function list(title: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : ["", title, ...lines.flatMap((line) => wrapRows(line, "  - ", "    "))];
}

function sizes(result: StrapResult, words: StrapWords, texts: CliTexts["strap"]): string[] {
  const both = inBoth(result, words);
  const rows: [string, string][] = [
    [texts.finishedWidth, both(result.finishedWidth)],
    [texts.cutWidth, both(result.cutWidth)],
    [
      texts.tradeRule,
      `${both(result.nominalWidth)}: ${words.rules[CONSTRUCTIONS[result.wish.construction].rule(result.wish.folds ?? {})]}`,
    ],
    [texts.difference, signed(result.cutWidth - result.nominalWidth, both)],
    [texts.layersRow, texts.thick(result.layers, formatLength(result.thickness, "mm", words.language))],
  ];
  if (result.foldLines.length > 0) {
    rows.push([texts.foldLines, listedNumbers(result.foldLines.map(both), words.language)]);
  }
  if (result.setback > 0) rows.push([texts.heldBack, both(result.setback)]);
  rows.push([texts.cutLength, both(result.lengths.cut)]);
  if (result.lengths.shortPart !== null) rows.push([texts.shortPart, both(result.lengths.shortPart)]);
  if (result.lengths.longest !== null) rows.push([texts.longest, both(result.lengths.longest)]);
  if (result.lengths.shortest !== null) rows.push([texts.shortest, both(result.lengths.shortest)]);
  if (result.rollLength !== null) rows.push([texts.roll, metres(result.rollLength, words.language)]);
  const column = Math.max(...rows.map(([name]) => name.length)) + 2;
  return rows.map(([name, value]) => `  ${name.padEnd(column)}${value}`);
}

/** An eighth of a yard, the least a shop cuts, and a centimetre: mm. */
const BOUGHT = { yards: 914.4 / 8, metres: 10 } as const;

/** A length to buy: rounded up, in each unit by its own step. */
function metres(mm: number, language: string): string {
  const up = (step: number): number => Math.ceil(mm / step - 1e-9) * step;
  return `${formatLength(up(BOUGHT.metres), "m", language)} (${formatLength(up(BOUGHT.yards), "yd/8")})`;
}

function consumable(one: Consumable, words: StrapWords, texts: CliTexts["strap"]): string {
  return texts.of(metres(one.mm, words.language), words.consumables[one.code]);
}

/** The result for a person: sizes in both units, what to cut, buy and do. */
export function strapText(result: StrapResult, materials: readonly StrapMaterial[], language: Language): string {
  const words = STRAP_WORDS[language];
  const texts = CLI_TEXTS[language].strap;
  const both = inBoth(result, words);
  const named = new Map(materials.map((one) => [one.id, one.name]));
  const pieces = result.pieces.map((piece) => {
    const box = ringBox(piece.outline.outer);
    const size = `${both(box.maxY - box.minY)} x ${both(box.maxX - box.minX)}`;
    return `${piece.count} x ${piece.name}: ${size}, ${named.get(piece.materialId) ?? piece.materialId}`;
  });
  const items = result.lengths.items.map((item) => `${both(item.mm)} ${words.lengthItems[item.code]}`);
  const needle = result.needle.map(
    (one) =>
      `${words.needle[one.where]}: ${texts.layers(one.layers)}, ${formatLength(one.thickness, "mm", language)}`,
  );
  const others = result.alternatives.map((one) => {
    const roll = one.rollLength === null ? "" : texts.ofRoll(metres(one.rollLength, language));
    const thickness = formatLength(one.thickness, "mm", language);
    return texts.other(
      words.constructions[one.construction].name,
      one.construction,
      both(one.cutWidth),
      texts.layers(one.layers),
      thickness,
      roll,
    );
  });
  return [
    constructionTitle(words.constructions[result.wish.construction]),
    ...sizes(result, words, texts),
    ...list(texts.cut, pieces),
    ...(items.length > 1 ? list(texts.madeOf, items) : []),
    ...list(texts.needle, needle),
    ...list(texts.ready, [
      ...(result.sewnWith === null ? [] : [words.sewnWith(result.sewnWith.needle, result.sewnWith.thread)]),
      ...result.hardware.map((one) => hardwareText(one, words, both)),
      ...result.consumables.map((one) => consumable(one, words, texts)),
    ]),
    ...list(
      texts.notes,
      result.warnings.map((one) => phraseText(one, both, words)),
    ),
    ...list(texts.others, others),
    "",
    texts.steps,
    ...result.steps.flatMap((one, i) => wrapRows(phraseText(one, both, words), `  ${i + 1}. `, "     ")),
    ...list(
      texts.takeCare,
      result.cautions.map((one) => cautionText(one, CAUTION_TABLES[language])),
    ),
    "",
  ].join("\n");
}
