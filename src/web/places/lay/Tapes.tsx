import type { RefObject } from "preact";
import { useEffect, useState } from "preact/hooks";
import { withDecimalSign } from "../../../core/units/numberWords.ts";
import { useLanguage } from "../../texts/texts.ts";
import { type Frame, toTable } from "./frame.ts";
import { tapeTicks } from "./tapeTicks.ts";

/** How wide a tape is, px: the upright one has room for three figures beside its short marks. */
const WIDE = { level: 26, upright: 30 } as const;
/** More figures than these stand smaller on the upright tape. */
const FIGURES = 3;
/** Room for the unit at the end of the tape, px. */
const UNIT = 64;
const LONG = { long: 14, middle: 9, short: 5 } as const;

/** Two tape measures along the edges of the view: one along the cloth, one across it. */
export function Tapes(props: { frame: Frame; host: RefObject<HTMLElement | null>; system: "metric" | "inches" }) {
  const { frame, host, system } = props;
  const language = useLanguage();
  const [size, setSize] = useState({ width: 0, height: 0 });
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const observer = new ResizeObserver(() =>
      setSize({ width: element.clientWidth, height: element.clientHeight }),
    );
    observer.observe(element);
    return () => observer.disconnect();
  }, [host]);
  const [left, top] = toTable(frame, 0, 0);
  const [right, bottom] = toTable(frame, size.width, size.height);
  const level = frame.upright ? [top, bottom] : [left, right];
  const upright = frame.upright ? [left, right] : [bottom, top];
  // The level tape begins under the upright one, at the left of the view.
  const levelAt = (mm: number) => WIDE.upright + frame.originX + mm * frame.scale;
  const uprightAt = (mm: number) => frame.originY + (frame.upright ? 1 : -1) * mm * frame.scale;
  return (
    <div class="tapes not-on-paper" aria-hidden="true">
      <svg
        aria-hidden="true"
        class="tape"
        style={{ left: 0, bottom: 0, width: "100%", height: WIDE.level }}
        width={WIDE.upright + size.width}
        height={WIDE.level}
      >
        {tapeTicks(system, level[0]!, level[1]!, frame.scale).map(({ mm, rank, text }) => (
          <g key={mm} transform={`translate(${levelAt(mm)} 0)`}>
            <path d={`M0 0V${LONG[rank]}`} />
            {text !== null && levelAt(mm) < WIDE.upright + size.width - UNIT && (
              <text x="3" y={WIDE.level - 5}>
                {withDecimalSign(text, language)}
              </text>
            )}
          </g>
        ))}
        <text class="tape-unit" x={WIDE.upright + size.width - 6} y={WIDE.level - 5} text-anchor="end">
          {system === "metric" ? "cm" : "in"}
        </text>
      </svg>
      <svg
        aria-hidden="true"
        class="tape"
        style={{ left: 0, top: 0, width: WIDE.upright, height: size.height }}
        width={WIDE.upright}
        height={size.height}
      >
        {tapeTicks(system, upright[0]!, upright[1]!, frame.scale).map(({ mm, rank, text }) => (
          <g key={mm} transform={`translate(0 ${uprightAt(mm)})`}>
            <path d={`M${WIDE.upright} 0H${WIDE.upright - LONG[rank]}`} />
            {text !== null && (
              <text x="2" y="-5" class={text.length > FIGURES ? "narrow" : undefined}>
                {withDecimalSign(text, language)}
              </text>
            )}
          </g>
        ))}
      </svg>
    </div>
  );
}
