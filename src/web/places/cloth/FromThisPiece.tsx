import { useEffect, useState } from "preact/hooks";
import { stockName } from "../../../core/drawing/lay/stockName.ts";
import type { OwnedPiece } from "../../../core/job/shopping/fromPiece.ts";
import type { ShopWish } from "../../../core/job/shopping/shopTable.ts";
import type { Material } from "../../../core/materials/material.ts";
import { isBought, type MaterialStock, usableWidth } from "../../../core/materials/stock.ts";
import type { Project } from "../../../core/project/project.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { LengthBlank } from "../../fields/blanks.tsx";
import { useLengths } from "../../fields/units.ts";
import { DrawingPicture } from "../../parts/DrawingPicture.tsx";
import type { MadeShown, PieceShown } from "../../shop/protocol.ts";
import { useShop } from "../../shop/useShop.ts";
import { useProject, useWorkbench } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

const SIDE = { minMm: 10, maxMm: 100_000 };
/** A piece to begin with, mm. */
const USUAL: OwnedPiece = { length: 600, width: 400 };
/** Evaluations for each number that is looked at: about a tenth of a second. */
const NUMBER_EFFORT = 20_000;

/** What a piece of the cloth makes: bags, straps alone, straps beside the bags, each with its plan. */
export function FromThisPiece({ material }: { material: Material }) {
  const project = useProject();
  const language = useLanguage();
  const lengths = useLengths();
  const texts = useTexts();
  const words = texts.shop.piece;
  const { board } = useWorkbench();
  const shop = useShop();
  const rectangles = material.stock.flatMap((stock) => {
    const piece = rectangleOf(stock);
    return piece === null ? [] : [{ id: stock.id, piece }];
  });
  const [piece, setPiece] = useState<OwnedPiece>(rectangles[0]?.piece ?? USUAL);
  const [asked, setAsked] = useState<Project | null>(null);
  const isLooking = shop.state === "looking";
  useEffect(() => {
    if (!isLooking) return;
    board.hush(true);
    return () => board.hush(false);
  }, [board, isLooking]);
  const look = () => {
    const wish: ShopWish = {
      ...{ materialId: material.id, widths: [], constructions: [], directions: [], joins: [], ownStock: false },
      ...{ mode: "free", evaluations: NUMBER_EFFORT, seed: 1 },
    };
    setAsked(project);
    shop.start([{ kind: "piece", project, language, wish, piece }]);
  };
  return (
    <section class="stack from-this-piece" aria-label={words.heading}>
      <h3>{words.heading}</h3>
      <p class="sentence">
        {words.about(
          <LengthBlank
            label={words.along}
            path={`piece.${material.id}.along`}
            value={piece.length}
            range={SIDE}
            onValue={(length) => setPiece((now) => ({ ...now, length }))}
          />,
          <LengthBlank
            label={words.across}
            path={`piece.${material.id}.across`}
            value={piece.width}
            range={SIDE}
            onValue={(width) => setPiece((now) => ({ ...now, width }))}
          />,
        )}
      </p>
      {rectangles.length > 0 && (
        <div class="row not-on-paper">
          {rectangles.map((each) => (
            <button key={each.id} type="button" class="press plain" onClick={() => setPiece(each.piece)}>
              {words.take(unbroken(stockName(material.stock, each.id, lengths.size, language)))}
            </button>
          ))}
        </div>
      )}
      <div class="row">
        <button type="button" class="press" onClick={isLooking ? shop.stop : look}>
          {isLooking ? texts.shop.stop : words.look}
        </button>
        <span class="soft" role="status">
          {isLooking && words.looking}
          {shop.state === "failed" && texts.shop.failed}
          {asked !== null && asked !== project && !isLooking && texts.shop.outdated}
        </span>
      </div>
      {shop.made !== null && asked !== null && <Made made={shop.made} project={asked} />}
    </section>
  );
}

/** A rectangle of the maker's own; null for what is bought and for other outlines. */
function rectangleOf(stock: MaterialStock): OwnedPiece | null {
  if (isBought(stock)) return null;
  if (stock.kind === "roll")
    return stock.length === null ? null : { length: stock.length, width: usableWidth(stock) };
  const { shape } = stock;
  return shape.kind === "rectangle" ? { length: shape.along, width: shape.across } : null;
}

function Made({ made: { bags, straps }, project }: { made: PieceShown; project: Project }) {
  const words = useTexts().shop.piece;
  const named = straps.map((strap) => ({
    ...strap,
    name: project.straps.find(({ id }) => id === strap.strapId)?.name ?? strap.strapId,
  }));
  return (
    <>
      <ul class="stack made">
        <Line said={words.bags(bags.count)} made={bags} />
        {named.map(({ strapId, name, besides }) =>
          bags.count === 0 ? null : (
            <Line key={`besides ${strapId}`} said={words.besides(name, besides.count, bags.count)} made={besides} />
          ),
        )}
        {named.map(({ strapId, name, alone }) => (
          <Line key={strapId} said={words.alone(name, alone.count)} made={alone} />
        ))}
      </ul>
      <p class="soft small">{words.notProven}</p>
    </>
  );
}

/** A sentence, and its plan to look at. */
function Line({ said, made: { count, drawing } }: { said: string; made: MadeShown }) {
  const words = useTexts().shop.piece;
  return (
    <li>
      <strong>{said}</strong>
      {count > 0 && drawing !== null && (
        <details>
          <summary>{words.plan}</summary>
          <DrawingPicture drawing={drawing} name={`${words.plan}: ${said}`} pad={4} class="made-plan" />
        </details>
      )}
    </li>
  );
}
