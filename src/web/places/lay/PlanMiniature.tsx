import type { LayFigures } from "../../../core/lay/alternatives/layFigures.ts";
import type { LayPlan, LayProblem } from "../../../core/lay/problem/layProblem.ts";
import { ringPath } from "../../parts/screenPath.ts";
import { keyOf } from "./moves.ts";
import type { PieceKind } from "./pieceKind.ts";
import { poseMatrix } from "./planPaths.ts";
import { stockLayout, tableBox } from "./stockLayout.ts";

/** A plan as small as a stamp: cloth, pieces, and the largest piece of cloth left over. */
export function PlanMiniature(props: {
  problem: LayProblem;
  plan: LayPlan;
  offcut: LayFigures["offcut"];
  kinds: ReadonlyMap<string, PieceKind>;
  name: string;
}) {
  const { problem, plan, offcut, kinds } = props;
  const stocks = stockLayout(problem, plan).filter(({ used }) => used > 0);
  const box = tableBox(stocks);
  const up = new Map(stocks.map((laid) => [laid.stock.id, laid]));
  return (
    <svg
      class="plan-miniature"
      role="img"
      aria-label={props.name}
      viewBox={`${box.minX} ${-box.maxY} ${box.maxX - box.minX} ${box.maxY - box.minY}`}
      preserveAspectRatio="xMinYMid meet"
    >
      <g transform="scale(1 -1)">
        {stocks.map(({ stock, offsetX, offsetY, box: own }) => (
          <g key={stock.id} transform={`translate(${offsetX} ${offsetY})`}>
            {stock.kind === "roll" ? (
              <path class="cloth" d={`M0 0H${own.maxX}V${stock.width}H0Z`} />
            ) : (
              <path
                class="cloth"
                fill-rule="evenodd"
                d={[stock.outline.outer, ...stock.outline.holes].map(ringPath).join("")}
              />
            )}
            {offcut?.stockId === stock.id && (
              <rect class="kept" x={offcut.box.x} y={offcut.box.y} width={offcut.box.dx} height={offcut.box.dy} />
            )}
          </g>
        ))}
        {plan.placements.map((placement) => (
          <path
            key={keyOf(placement)}
            class="laid"
            d={kinds.get(placement.pieceId)?.cutPath}
            transform={poseMatrix(placement, up.get(placement.stockId))}
          />
        ))}
      </g>
    </svg>
  );
}
