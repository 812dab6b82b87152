import { useEffect, useState } from "preact/hooks";
import { shopLength, shopWidth } from "../../../core/buying/shopLength.ts";
import { otherConstructions, SHOP_WIDTHS, type ShopCell, shopRoll } from "../../../core/job/shopping/shopCell.ts";
import type { RowFigures } from "../../../core/job/shopping/shopRow.ts";
import { bestRow, ROW_EFFORT, type ShopWish } from "../../../core/job/shopping/shopTable.ts";
import type { Material } from "../../../core/materials/material.ts";
import type { Project } from "../../../core/project/project.ts";
import { formatLength } from "../../../core/units/formatLength.ts";
import type { Language } from "../../../core/units/language.ts";
import { unbroken, withDecimalSign } from "../../../core/units/numberWords.ts";
import { STRAP_WORDS } from "../../../core/words/words.ts";
import { moneyText } from "../../../export/cutsheet/moneyText.ts";
import { MoneyBlank, Tick } from "../../fields/blanks.tsx";
import { percent } from "../../fields/units.ts";
import type { ShopLine } from "../../shop/protocol.ts";
import { type Shop, useShop } from "../../shop/useShop.ts";
import { routeHash } from "../../state/route.ts";
import { useProject, useWorkbench } from "../../state/workbench.ts";
import { type Texts, useLanguage, useTexts } from "../../texts/texts.ts";
import { FromThisPiece } from "./FromThisPiece.tsx";
import { OneBagMore } from "./OneBagMore.tsx";

/** Rows are looked for side by side on so many workers. */
const WORKERS = 2;
/** A width this near to the project's own roll is the same, mm. */
const SAME = 0.5;

/** What to buy of a cloth that is sold off a roll, and how it grows with the bags. */
export function WhatToBuy({ material }: { material: Material }) {
  const project = useProject();
  const words = useTexts().shop;
  const roll = shopRoll(project, material);
  const isCut = project.panels.some((panel) => panel.materialId === material.id) || strapsOf(project, material) > 0;
  if (!isCut) return null;
  return (
    <section class="stack what-to-buy" aria-label={words.heading}>
      <h2>{words.heading}</h2>
      {roll !== null && (
        <>
          <WidthTable material={material} ownWidth={roll.width} />
          <OneBagMore material={material} ownWidth={roll.width} />
        </>
      )}
      <FromThisPiece material={material} />
      <p class="not-on-paper">
        <a href={routeHash("table", "shopping")}>{words.list.link}</a>
      </p>
    </section>
  );
}

function strapsOf({ straps }: Project, { id }: Material): number {
  return straps.filter(({ materials }) => Object.values(materials).includes(id)).length;
}

function WidthTable({ material, ownWidth }: { material: Material; ownWidth: number }) {
  const project = useProject();
  const language = useLanguage();
  const texts = useTexts();
  const words = texts.shop;
  const { board } = useWorkbench();
  const shop = useShop();
  const [prices, setPrices] = useState<ReadonlyMap<number, number>>(new Map());
  const [asked, setAsked] = useState<Project | null>(null);
  const isLooking = shop.state === "looking";
  useEffect(() => {
    if (!isLooking) return;
    board.hush(true);
    return () => board.hush(false);
  }, [board, isLooking]);
  const widths = [...SHOP_WIDTHS.filter((width) => Math.abs(width - ownWidth) >= SAME), ownWidth].sort(
    (a, b) => a - b,
  );
  const hasStraps = project.straps.some(({ materials }) => materials.outer === material.id);
  const [isCrosswise, setCrosswise] = useState(false);
  const [isJoined, setJoined] = useState(false);
  const ways: readonly ShopCell["construction"][] = hasStraps
    ? [null, ...otherConstructions(project, material)]
    : [null];
  const directions: ShopWish["directions"] = isCrosswise && hasStraps ? [null, "crosswise"] : [null];
  const joins: ShopWish["joins"] = isJoined && hasStraps ? [null, true] : [null];
  const all = widths.length * ways.length * directions.length * joins.length;
  const look = () => {
    const wish: ShopWish = {
      materialId: material.id,
      widths: widths.map((width) => ({ width, amount: prices.get(width) ?? null })),
      constructions: ways,
      ...{ directions, joins, ownStock: false, mode: "free", evaluations: ROW_EFFORT, seed: 1 },
    };
    // Narrow widths help the wide ones of the same way, so a way stays with its worker.
    const parts = Array.from({ length: Math.min(WORKERS, ways.length) }, (_, w) =>
      ways.filter((_, i) => i % WORKERS === w),
    );
    setAsked(project);
    shop.start(
      parts.map((constructions) => ({ kind: "table", project, language, wish: { ...wish, constructions } })),
    );
  };
  return (
    <>
      <p>{words.about}</p>
      {material.price !== null && (
        <details>
          <summary>{words.prices}</summary>
          <p class="soft">
            {words.pricesAbout(
              material.price.basis.kind === "length"
                ? unbroken(shopLength(material.price.basis.mm, material.price, language))
                : texts.cloth.bases[material.price.basis.kind === "area" ? "squareMetre" : "each"],
            )}
          </p>
          <div class="row width-prices">
            {widths.map((width) => (
              <MoneyBlank
                key={width}
                labelled
                label={words.priceOf(unbroken(shopWidth(width, language)))}
                path=""
                value={prices.get(width) ?? null}
                empty={words.asCloth}
                onValue={(amount) => {
                  const next = new Map(prices);
                  if (amount === null) next.delete(width);
                  else next.set(width, amount);
                  setPrices(next);
                }}
              />
            ))}
          </div>
        </details>
      )}
      {hasStraps && (
        <div class="stack">
          <Tick label={words.alsoCrosswise} path="" value={isCrosswise} onValue={setCrosswise} />
          <Tick label={words.alsoJoined} path="" value={isJoined} onValue={setJoined} />
        </div>
      )}
      <div class="row">
        <button type="button" class="press" onClick={isLooking ? shop.stop : look}>
          {isLooking ? words.stop : shop.state === "idle" ? words.look : words.lookAgain}
        </button>
        <span class="soft" role="status">
          {isLooking && words.progress(shop.lines.length, all)}
          {shop.state === "stopped" && words.stopped(shop.lines.length, all)}
          {shop.state === "failed" && words.failed}
          {asked !== null && asked !== project && !isLooking && ` ${words.outdated}`}
        </span>
      </div>
      {shop.lines.length > 0 && asked !== null && (
        <FoundRows
          shop={shop}
          project={asked}
          material={material}
          ownWidth={ownWidth}
          widths={widths}
          ways={ways}
        />
      )}
    </>
  );
}

interface Found {
  readonly shop: Shop;
  readonly project: Project;
  readonly material: Material;
  readonly ownWidth: number;
  readonly widths: readonly number[];
  readonly ways: readonly ShopCell["construction"][];
}

function FoundRows({ shop, project, material, ownWidth, widths, ways }: Found) {
  const language = useLanguage();
  const words = useTexts().shop;
  const place = ({ cell: { sold, construction, direction, joins } }: ShopLine): number =>
    4 * (widths.indexOf(sold.width) * ways.length + ways.indexOf(construction)) +
    (direction === null ? 0 : 2) +
    (joins === null ? 0 : 1);
  const lines = [...shop.lines].sort((a, b) => place(a) - place(b));
  const best = bestRow<RowFigures>(lines, ownWidth);
  const money = (minor: number) => unbroken(moneyText(minor, project.currency, language));
  const length = (row: RowFigures) =>
    row.buyLength > 0 ? unbroken(shopLength(row.buyLength, material.price, language)) : words.nothing;
  return (
    <>
      {best !== null && (
        <p class="best-way">
          <strong>
            {words.bestIs(
              wayText(best.row.cell, words, language),
              length(best.row),
              best.by === "cost" && best.row.toPay !== null ? money(best.row.toPay) : null,
              lines.length,
            )}
          </strong>
          {best.saved !== null && best.saved > 0 && ` ${words.saved(money(best.saved))}`}
          {best.alike > 0 && ` ${words.alike(best.alike)}`}
        </p>
      )}
      <table class={`options shop-table${shop.state === "looking" ? " coming" : ""}`}>
        <thead>
          <tr>
            <th scope="col">{words.way}</th>
            <th scope="col">{words.buy}</th>
            <th scope="col">{words.toPay}</th>
            <th scope="col">{words.bags}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <tr key={place(line)} class={line === best?.row ? "best" : undefined}>
              <th scope="row">
                {wayText(line.cell, words, language)}
                {line === best?.row && <span class="soft small"> · {words.best}</span>}
              </th>
              {line.kind === "barred" ? (
                <td colSpan={3} class="soft small">
                  {line.why}
                </td>
              ) : (
                <Figures row={line} length={length(line)} money={line.toPay === null ? "–" : money(line.toPay)} />
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function Figures({ row, length, money }: { row: RowFigures; length: string; money: string }) {
  const language = useLanguage();
  const words = useTexts().shop;
  const { layers, thickness, utilisation, bagsPerMetre } = row;
  return (
    <>
      <td>
        <strong class="number">{length}</strong>
        {utilisation !== null && <span class="soft small">{words.used(percent(utilisation, language))}</span>}
      </td>
      <td>
        <span class="number">{money}</span>
      </td>
      <td>
        <span class="number">
          {bagsPerMetre === null ? "–" : withDecimalSign(bagsPerMetre.toFixed(2), language)}
        </span>
        {layers !== null && thickness !== null && (
          <span class="soft small">{unbroken(words.bulk(layers, formatLength(thickness, "mm", language)))}</span>
        )}
      </td>
    </>
  );
}

/** A way in words: the width, how the straps are made where not as planned, and how they lie. */
function wayText(
  { sold, construction, direction, joins }: ShopCell,
  words: Texts["shop"],
  language: Language,
): string {
  const straps = construction === null ? words.asPlanned : STRAP_WORDS[language].constructions[construction].name;
  const lie = [direction === null ? null : words.crosswise, joins === null ? null : words.joined];
  return [unbroken(shopWidth(sold.width, language)), straps, ...lie].filter((part) => part !== null).join(", ");
}
