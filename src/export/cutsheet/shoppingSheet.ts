import { majorOf } from "../../core/buying/money.ts";
import { shopLength, shopWidth } from "../../core/buying/shopLength.ts";
import { listTotals, type PieceToBuy, type ShoppingList } from "../../core/job/shopping/shoppingList.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import { formatLength, type LengthStyle } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import type { ShoppingTexts } from "../../core/words/shoppingTexts.ts";
import { hardwareName } from "../../core/words/strapWords.ts";
import { PAPER_TEXTS, SHOPPING_TEXTS, STRAP_WORDS } from "../../core/words/words.ts";
import { csvText } from "./cutSheetCsv.ts";
import type { PrintedList } from "./listPages.ts";
import { moneyText } from "./moneyText.ts";

type Group = keyof ShoppingTexts["groups"];

/** A line of a shopping list in words. */
interface Row {
  readonly group: Group;
  /** The shop, where it is known. */
  readonly source: string | null;
  readonly what: string;
  readonly amount: string;
  /** Smallest coins; null where no price is known. */
  readonly toPay: number | null;
  readonly currency: string;
  readonly projects: readonly string[];
}

/** A shopping list as it is shown and written. */
export interface ShoppingSheet extends PrintedList {
  readonly language: Language;
  readonly lines: readonly Row[];
}

/** A shopping list in words: groups shop by shop, and what is paid in all. */
export function shoppingSheet(
  list: ShoppingList,
  projects: readonly string[],
  lengths: LengthStyle,
  language: Language,
): ShoppingSheet {
  const texts = SHOPPING_TEXTS[language];
  const lines = rowsOf(list, lengths, language);
  const groups = (Object.keys(texts.groups) as Group[]).flatMap((group) => {
    const own = lines.filter((row) => row.group === group);
    // Shop by shop, what has none at the end.
    const shops = [...new Set(own.map(({ source }) => source))].sort(
      (a, b) => Number(a === null) - Number(b === null),
    );
    return shops.map((shop) => ({
      heading: shop === null ? texts.groups[group] : `${texts.groups[group]}, ${shop}`,
      rows: own
        .filter(({ source }) => source === shop)
        .map(({ what, amount, toPay, currency }) => {
          return [what, amount, toPay === null ? "" : moneyText(toPay, currency, language)] as const;
        }),
    }));
  });
  const sums = [...listTotals(list)].map(([currency, sum]) =>
    sum === null ? texts.noTotal(currency) : texts.total(moneyText(sum, currency, language)),
  );
  const isOpen = list.hardware.length + list.consumables.length > 0 && sums.length > 0;
  const totals = isOpen ? [...sums, texts.onTop] : sums;
  return { title: texts.title(projects), groups, totals, lines, language };
}

function rowsOf(list: ShoppingList, lengths: LengthStyle, language: Language): Row[] {
  const texts = SHOPPING_TEXTS[language];
  const words = STRAP_WORDS[language];
  const write = (mm: number): string => cutLength(mm, lengths, language);
  const style = lengths.startsWith("in") ? "yd/8" : "m";
  const bare = { source: null, toPay: null, currency: "", projects: [] };
  return [
    ...list.cloths.map(({ name, width, buy, price, ...more }): Row => {
      const what = `${name}, ${texts.wide(shopWidth(width, language))}`;
      return { group: "cloth", what, amount: shopLength(buy, price, language), ...more };
    }),
    ...list.pieces.map((piece): Row => {
      const { name, count, length, price, source, toPay, currency, project } = piece;
      return {
        ...{ group: "pieces", source, toPay, currency, projects: [project] },
        what: `${name}, ${pieceSize(piece, write, language)}`,
        amount: length === null ? String(count) : shopLength(length, price, language),
      };
    }),
    ...list.hardware.map((one): Row => {
      return { group: "hardware", what: hardwareName(one, words, write), amount: String(one.count), ...bare };
    }),
    ...list.consumables.map(({ code, mm }): Row => {
      const amount = formatLength(mm, style, language);
      return { group: "consumables", what: words.consumables[code], amount, ...bare };
    }),
    ...list.supplies.map(({ name, packs, pack, ...more }): Row => {
      return { group: "supplies", source: null, what: name, amount: texts.packs(packs, pack), ...more };
    }),
  ];
}

/** What is cut to size by its sides, a skin by its name and sides, a roll by its width. */
function pieceSize({ kind, along, across }: PieceToBuy, write: (mm: number) => string, language: Language): string {
  if (kind === "roll") return SHOPPING_TEXTS[language].wide(shopWidth(across, language));
  const size = `${write(along)} × ${write(across)}`;
  return kind === "skin" ? `${PAPER_TEXTS[language].stocks.kinds.skin} ${size}` : size;
}

/** The list as text, in columns. */
export function shoppingText({ title, groups, totals, language }: ShoppingSheet): string {
  const rows = groups.flatMap((group) => group.rows);
  if (rows.length === 0) return `${SHOPPING_TEXTS[language].nothing}\n`;
  const [what, amount] = [0, 1].map((i) => Math.max(...rows.map((row) => row[i]!.length))) as [number, number];
  const lines = groups.flatMap(({ heading, rows: own }) => [
    "",
    heading,
    ...own.map((row) => `  ${row[0].padEnd(what)}  ${row[1].padEnd(amount)}  ${row[2]}`.trimEnd()),
  ]);
  return `${[title, ...lines, "", ...totals].join("\n").trimEnd()}\n`;
}

/** The list as comma-separated values, a line each. Source: RFC 4180. */
export function shoppingCsv({ lines, language }: ShoppingSheet): string {
  const texts = SHOPPING_TEXTS[language];
  const cells = lines.map(({ group, source, what, amount, toPay, currency, projects }) => [
    ...[texts.groups[group], what, amount, toPay === null ? "" : String(majorOf(toPay, currency))],
    ...[currency, source ?? "", projects.join("; ")],
  ]);
  return csvText([texts.heads, ...cells]);
}
