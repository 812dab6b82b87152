import { useMemo } from "preact/hooks";
import type { LaidCloth } from "../../../core/job/laidCloth.ts";
import { laidForms } from "../../../core/materials/laidForms.ts";
import { PageMiniature } from "../../parts/PageMiniature.tsx";
import { PiecePicture } from "../../parts/PiecePicture.tsx";
import { ringPath } from "../../parts/screenPath.ts";
import { useLanguage } from "../../texts/texts.ts";
import { keyOf } from "../lay/moves.ts";
import { kindsOf } from "../lay/pieceKind.ts";
import { poseMatrix } from "../lay/planPaths.ts";
import { stockLayout, tableBox } from "../lay/stockLayout.ts";
import type { CuttingStep } from "./cuttingSteps.ts";
import type { StackInput } from "./tableParts.ts";

/** The cut as it is drawn on the sheets, or the piece alone with its place on the cloth below it. */
export function CuttingPicture(props: {
  step: CuttingStep;
  /** Keys of the pieces that are cut out. */
  done: readonly string[];
  input: StackInput;
  lay: LaidCloth;
}) {
  const { step, input, lay } = props;
  if (step.picture !== null) return <PageMiniature page={step.picture} name={step.heading} />;
  const pieceId = step.piece?.slice(0, step.piece.lastIndexOf("#"));
  const piece = input.pieces
    .flatMap(laidForms)
    .map((form) => form.piece)
    .find(({ id }) => id === pieceId);
  return (
    <>
      {piece !== undefined && <PiecePicture piece={piece} name={step.heading} />}
      <PlaceOnCloth {...props} lay={lay} />
    </>
  );
}

/** The stock with its pieces: the one to cut filled, those that are cut out gone pale. */
function PlaceOnCloth(props: { step: CuttingStep; done: readonly string[]; input: StackInput; lay: LaidCloth }) {
  const { step, done, input, lay } = props;
  const language = useLanguage();
  const kinds = useMemo(() => kindsOf(input.project, language), [input.project, language]);
  const laid = stockLayout(lay.problem, lay.plan).filter(({ stock }) => stock.id === step.stockId);
  const box = tableBox(laid);
  const [own] = laid;
  if (own === undefined) return null;
  const { stock, offsetX, offsetY } = own;
  const cloth =
    stock.kind === "roll"
      ? `M0 0H${own.box.maxX}V${stock.width}H0Z`
      : [stock.outline.outer, ...stock.outline.holes].map(ringPath).join("");
  return (
    <svg
      class="plan-miniature"
      aria-hidden="true"
      viewBox={`${box.minX} ${-box.maxY} ${box.maxX - box.minX} ${box.maxY - box.minY}`}
      preserveAspectRatio="xMidYMid meet"
    >
      <g transform="scale(1 -1)">
        <path class="cloth" fill-rule="evenodd" transform={`translate(${offsetX} ${offsetY})`} d={cloth} />
        {lay.plan.placements
          .filter(({ stockId }) => stockId === step.stockId)
          .map((placement) => {
            const key = keyOf(placement);
            const look = key === step.piece ? "laid lit" : done.includes(key) ? "laid gone" : "laid";
            return (
              <path
                key={key}
                class={look}
                d={kinds.get(placement.pieceId)?.cutPath}
                transform={poseMatrix(placement, own)}
              />
            );
          })}
      </g>
    </svg>
  );
}
