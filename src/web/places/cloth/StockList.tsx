import { stockName } from "../../../core/drawing/lay/stockName.ts";
import { contourBox } from "../../../core/geometry/contourArcs.ts";
import { shapeContour } from "../../../core/geometry/shape.ts";
import type { Price } from "../../../core/materials/price.ts";
import {
  type ClothRoll,
  flawPolygon,
  isBought,
  type MaterialStock,
  type ShapedStock,
} from "../../../core/materials/stock.ts";
import { freshIdIn } from "../../../core/project/edits.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { CountBlank, LengthBlank, OptionalLengthBlank, Tick } from "../../fields/blanks.tsx";
import { ShapeWords } from "../../fields/ShapeWords.tsx";
import { useLengths } from "../../fields/units.ts";
import { Icon } from "../../parts/Icon.tsx";
import { OutlineDesk } from "../../parts/outline/OutlineDesk.tsx";
import { Term } from "../../parts/Term.tsx";
import { useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { FlawList } from "./FlawList.tsx";
import { LeftoverPhoto } from "./LeftoverPhoto.tsx";
import { PriceFields } from "./PriceFields.tsx";
import type { MaterialBlanks } from "./PriceWords.tsx";
import { flawAt, RollPicture } from "./RollPicture.tsx";

const WIDTH = { minMm: 10, maxMm: 10_000 };
/** An open roll is as long as any roll, mm. */
const LONGEST = 500_000;

/** A quarter of a metre of wide cloth as shops cut it, mm (common practice, no source). */
const PRECUT = { shape: { kind: "rectangle", along: 500, across: 550 }, toBuy: true } as const;

/** What there is of the material: rolls, remnants and skins, in the order they are used up. */
export function StockList({ material, path, set }: MaterialBlanks) {
  const texts = useTexts();
  const language = useLanguage();
  const lengths = useLengths();
  const words = texts.cloth;
  const { stock } = material;
  const project = useProject();
  const put = (next: readonly MaterialStock[], label: string, key?: string) => set({ stock: next }, label, key);
  const leftover = (kind: ShapedStock["kind"]): ShapedStock => {
    const id = freshIdIn(project, kind);
    return { kind, id, shape: { kind: "rectangle", along: 600, across: 400 }, flaws: [], count: 1 };
  };
  const add = (kind: MaterialStock["kind"]) => {
    const id = freshIdIn(project, kind);
    const fresh: MaterialStock =
      kind === "roll"
        ? { kind, id, width: 1400, selvedge: 10, length: null, squaring: 0, flaws: [] }
        : leftover(kind);
    // Leftovers are used up first, so they stand before the rolls.
    put(kind === "roll" ? [...stock, fresh] : [fresh, ...stock], words.addStock[kind]);
  };
  return (
    <section class="stack" aria-label={words.stockHeading}>
      <h2>{words.stockHeading}</h2>
      {stock.length === 0 && <p class="caution">{words.noStock}</p>}
      <ul class="stack stock-list">
        {stock.map((each, i) => {
          const shared = {
            path: (field: string) => path(`stock[${i}].${field}`),
            onStock: (next: MaterialStock, label: string, key?: string) => put(stock.with(i, next), label, key),
          };
          return (
            <li key={each.id} class="stock">
              <h3 class="stock-name">{unbroken(stockName(stock, each.id, lengths.size, language))}</h3>
              {each.kind === "roll" ? (
                <RollWords roll={each} {...shared} />
              ) : (
                <LeftoverWords piece={each} {...shared} />
              )}
              <button type="button" class="press" onClick={() => put(stock.toSpliced(i, 1), words.removeStock)}>
                <Icon name="bin" /> {words.removeStock}
              </button>
            </li>
          );
        })}
      </ul>
      <div class="row">
        <button
          type="button"
          class="press"
          onClick={() => put([...stock, { ...leftover("remnant"), ...PRECUT }], words.addPrecut)}
        >
          <Icon name="plus" /> {words.addPrecut}
        </button>
        {(["roll", "remnant", "skin"] as const).map((kind) => (
          <button key={kind} type="button" class="press" onClick={() => add(kind)}>
            <Icon name="plus" /> {words.addStock[kind]}
          </button>
        ))}
      </div>
    </section>
  );
}

interface StockWords {
  readonly path: (field: string) => string;
  readonly onStock: (next: MaterialStock, label: string, key?: string) => void;
}

function RollWords({ roll, path, onStock }: StockWords & { roll: ClothRoll }) {
  const words = useTexts().cloth;
  const set = (part: Partial<ClothRoll>, label: string, key?: string) => onStock({ ...roll, ...part }, label, key);
  return (
    <>
      <RollPicture roll={roll} onFlaw={(flaw) => set({ flaws: [...roll.flaws, flaw] }, words.addFlaw)} />
      <p class="sentence">
        {words.rollSentence(
          <LengthBlank
            label={words.widthLabel}
            path={path("width")}
            value={roll.width}
            range={WIDTH}
            onValue={(width, key) => set({ width }, words.widthLabel, key)}
          />,
          <Term id="selvedge" />,
          <LengthBlank
            label={words.selvedgeLabel}
            path={path("selvedge")}
            value={roll.selvedge}
            range={{ minMm: 0, maxMm: roll.width / 2 - 1 }}
            onValue={(selvedge, key) => set({ selvedge }, words.selvedgeLabel, key)}
          />,
          <OptionalLengthBlank
            label={words.lengthLabel}
            path={path("length")}
            value={roll.length}
            empty={words.openLength}
            range={{ minMm: 10, maxMm: 500_000 }}
            onValue={(length, key) => set({ length }, words.lengthLabel, key)}
          />,
          <LengthBlank
            label={words.squaringLabel}
            path={path("squaring")}
            value={roll.squaring}
            range={{ minMm: 0, maxMm: 500 }}
            onValue={(squaring, key) => set({ squaring }, words.squaringLabel, key)}
          />,
        )}
      </p>
      {roll.length !== null && (
        <Tick
          label={words.toBuy}
          path={path("toBuy")}
          value={roll.toBuy === true}
          onValue={(toBuy) => set({ toBuy: toBuy ? true : undefined }, words.toBuy)}
        />
      )}
      <OwnPrice stock={roll} path={path} onPrice={(price, label, key) => set({ price }, label, key)} />
      <FlawList
        flaws={roll.flaws}
        box={{ minX: 0, minY: 0, maxX: roll.length ?? LONGEST, maxY: roll.width }}
        path={path("flaws")}
        onFlaws={(flaws, key) => set({ flaws }, words.flawsLabel, key)}
      />
    </>
  );
}

/** What this stock alone costs, where it is bought; as the cloth unless told. */
function OwnPrice(props: {
  stock: MaterialStock;
  path: (field: string) => string;
  onPrice: (price: Price | undefined, label: string, key?: string) => void;
}) {
  const words = useTexts().cloth;
  const { stock, onPrice } = props;
  if (!isBought(stock)) return null;
  return (
    <PriceFields
      price={stock.price ?? null}
      path={props.path("price")}
      label={words.ownPriceLabel}
      empty={words.asCloth}
      each={stock.kind !== "roll"}
      onPrice={(price, label, key) => onPrice(price ?? undefined, label, key)}
    />
  );
}

let visits = 0;

function LeftoverWords({ piece, path, onStock }: StockWords & { piece: ShapedStock }) {
  const words = useTexts().cloth;
  const set = (part: Partial<ShapedStock>, label: string, key?: string) =>
    onStock({ ...piece, ...part }, label, key);
  const box = contourBox(shapeContour(piece.shape));
  return (
    <>
      <p class="sentence">
        {words.leftoverSentence[piece.kind](
          <CountBlank
            label={words.countLabel}
            path={path("count")}
            value={piece.count}
            max={99}
            onValue={(count, key) => set({ count }, words.countLabel, key)}
          />,
        )}{" "}
        <ShapeWords
          shape={piece.shape}
          path={path("shape")}
          boxSentence={words.leftoverBox}
          onShape={(shape, label, key) => set({ shape }, label, key)}
        />
      </p>
      <LeftoverPhoto
        path={path("shape")}
        wide={box.maxX - box.minX}
        onContour={(contour, label) => set({ shape: { kind: "outline", contour } }, label)}
      >
        {(under) => (
          <OutlineDesk
            name={words.leftoverName[piece.kind]}
            path={path("shape.contour")}
            contour={shapeContour(piece.shape)}
            under={under}
            flaws={piece.flaws.map(flawPolygon)}
            insideHint={words.flawHint}
            onInside={(x, y) =>
              set({ flaws: [...piece.flaws, flawAt(x, y)] }, words.addFlaw, `${path("flaws")}@${++visits}`)
            }
            onContour={(contour, key) => set({ shape: { kind: "outline", contour } }, words.outlineLabel, key)}
          />
        )}
      </LeftoverPhoto>
      <FlawList
        flaws={piece.flaws}
        box={box}
        path={path("flaws")}
        onFlaws={(flaws, key) => set({ flaws }, words.flawsLabel, key)}
      />
      <div class="row">
        <Tick
          label={words.toBuy}
          path={path("toBuy")}
          value={piece.toBuy === true}
          onValue={(toBuy) => set({ toBuy: toBuy ? true : undefined }, words.toBuy)}
        />
        <Tick
          label={words.keptBack}
          path={path("keptBack")}
          value={piece.keptBack === true}
          onValue={(keptBack) => set({ keptBack }, words.keptBack)}
        />
      </div>
      <OwnPrice stock={piece} path={path} onPrice={(price, label, key) => set({ price }, label, key)} />
    </>
  );
}
