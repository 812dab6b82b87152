import { useRef } from "preact/hooks";
import { type ClothRoll, type Flaw, flawPolygon } from "../../../core/materials/stock.ts";
import { ringPath } from "../../parts/screenPath.ts";
import { useTexts } from "../../texts/texts.ts";

/** The roll from above: its end on the left, selvedges above and below, the cloth unrolled to the right. */
export function RollPicture({ roll, onFlaw }: { roll: ClothRoll; onFlaw: (flaw: Flaw) => void }) {
  const words = useTexts().cloth;
  const svg = useRef<SVGSVGElement>(null);
  const shown = Math.min(roll.length ?? roll.width * 2, roll.width * 3);
  const { width, selvedge } = roll;
  const core = width * 0.12;
  const onClick = (event: MouseEvent) => {
    const matrix = svg.current?.getScreenCTM()?.inverse();
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
    onFlaw(flawAt(Math.round(point.x), Math.round(-point.y)));
  };
  return (
    <figure>
      <svg
        ref={svg}
        class="drawing roll-picture"
        viewBox={`${-core * 1.1} ${-width * 1.03} ${shown + core * 1.4} ${width * 1.06}`}
        role="img"
        aria-label={words.rollPicture}
      >
        <g transform="scale(1 -1)">
          {/* biome-ignore lint/a11y/noStaticElementInteractions: the flaw list below does the same by keys */}
          <path class="tone-cloth ink-cut pressable" d={`M0 0H${shown}V${width}H0Z`} onClick={onClick} />
          <path class="selvedge" d={`M0 0H${shown}V${selvedge}H0ZM0 ${width - selvedge}H${shown}V${width}H0Z`} />
          <rect class="roll-end" x={-core} y={-width * 0.02} width={core} height={width * 1.04} rx={core * 0.3} />
          {roll.flaws.map(flawPolygon).map((flaw) => (
            <path key={ringPath(flaw.outer)} class="tone-flaw ink-flaw" d={ringPath(flaw.outer)} />
          ))}
        </g>
      </svg>
      <figcaption class="soft small not-on-paper">{words.flawHint}</figcaption>
    </figure>
  );
}

/** Side of a flaw that was only pointed at, mm: a thumb's width, to be corrected in the list. */
const SIDE = 30;

/** A flaw where the pin went in. */
export function flawAt(x: number, y: number): Flaw {
  return { x: x - SIDE / 2, y: y - SIDE / 2, shape: { kind: "rectangle", along: SIDE, across: SIDE } };
}
