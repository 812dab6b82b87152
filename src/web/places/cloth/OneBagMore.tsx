import { useEffect, useState } from "preact/hooks";
import { shopLength } from "../../../core/buying/shopLength.ts";
import { yieldCurvePicture } from "../../../core/drawing/lay/yieldPictures.ts";
import { ROW_EFFORT, type ShopWish } from "../../../core/job/shopping/shopTable.ts";
import type { Material } from "../../../core/materials/material.ts";
import type { Project } from "../../../core/project/project.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { moneyText } from "../../../export/cutsheet/moneyText.ts";
import { CountBlank } from "../../fields/blanks.tsx";
import { DrawingPicture } from "../../parts/DrawingPicture.tsx";
import type { Growth } from "../../shop/protocol.ts";
import { useShop } from "../../shop/useShop.ts";
import { useProject, useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/** Bags looked at unless told, and at most. */
const USUAL = 8;
const MOST = 40;
/** Width of the curve where letters of 3 mm are to be read on a phone, mm. */
const PHONE = 84;

/** How cloth and money grow with the bags: a sentence, a table and a curve. */
export function OneBagMore({ material, ownWidth }: { material: Material; ownWidth: number }) {
  const project = useProject();
  const language = useLanguage();
  const texts = useTexts();
  const words = texts.shop;
  const { board } = useWorkbench();
  const shop = useShop();
  const [most, setMost] = useState(USUAL);
  const [asked, setAsked] = useState<Project | null>(null);
  const isLooking = shop.state === "looking";
  useEffect(() => {
    if (!isLooking) return;
    board.hush(true);
    return () => board.hush(false);
  }, [board, isLooking]);
  const look = () => {
    const cell = { sold: { width: ownWidth, amount: null }, construction: null, direction: null, joins: null };
    const wish: ShopWish = {
      ...{ materialId: material.id, widths: [cell.sold], constructions: [null], directions: [null], joins: [null] },
      ...{ ownStock: false, mode: "free", evaluations: ROW_EFFORT, seed: 1 },
    };
    setAsked(project);
    shop.start([{ kind: "growth", project, language, wish, cell, most }]);
  };
  return (
    <>
      <h3>{words.growHeading}</h3>
      <p class="sentence">
        {words.growAbout(
          <CountBlank label={words.growBags} path="" value={most} min={2} max={MOST} onValue={setMost} />,
        )}
      </p>
      <div class="row">
        <button type="button" class="press" onClick={isLooking ? shop.stop : look}>
          {isLooking ? words.stop : words.grow}
        </button>
        <span class="soft" role="status">
          {isLooking && words.growing(most)}
          {shop.state === "failed" && words.failed}
          {asked !== null && asked !== project && !isLooking && words.outdated}
        </span>
      </div>
      {shop.barred !== null && <p class="caution">{shop.barred}</p>}
      {shop.growth !== null && asked !== null && <Curve growth={shop.growth} project={asked} material={material} />}
    </>
  );
}

function Curve({
  growth: { steps, free },
  project,
  material,
}: {
  growth: Growth;
  project: Project;
  material: Material;
}) {
  const language = useLanguage();
  const words = useTexts().shop;
  const length = (mm: number) => unbroken(shopLength(mm, material.price, language));
  const money = (minor: number) => unbroken(moneyText(minor, project.currency, language));
  const said = steps.map((step) => ({
    length: step.toPay === null ? length(step.length) : `${length(step.length)} (${money(step.toPay)})`,
    bags: step.bags,
  }));
  const drawing = (width?: number) =>
    yieldCurvePicture(
      steps.map((step) => ({ length: step.length, count: step.bags, label: length(step.length) })),
      steps.at(-1)!.length * 1.05,
      { length: words.curveLength, count: words.curveBags },
      width,
    );
  return (
    <>
      <p class="grown">
        <strong>{words.makes(said)}</strong> {free.length > 0 && words.free(free)}
      </p>
      <div class="growth on-wide">
        <DrawingPicture drawing={drawing()} name={words.curve} class="growth-curve" />
      </div>
      <div class="on-narrow">
        <DrawingPicture drawing={drawing(PHONE)} name={words.curve} class="growth-curve" />
      </div>
    </>
  );
}
