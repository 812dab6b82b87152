import { radiusOfRise, riseOfRadius } from "../../../core/geometry/arcRise.ts";
import type { Contour } from "../../../core/geometry/contour.ts";
import { contourEdges } from "../../../core/geometry/contourArcs.ts";
import { bowEdge, stretchEdge } from "../../../core/geometry/contourEdits.ts";
import { ChoiceBlank, LengthBlank } from "../../fields/blanks.tsx";
import { useTexts } from "../../texts/texts.ts";
import { Icon } from "../Icon.tsx";
import { isFoldEnd } from "./snapping.ts";

type Way = "straight" | "out" | "in";

/** The chosen edge in a sentence: its length, whether it bows, and by how much. */
export function EdgeWords(props: {
  contour: Contour;
  index: number;
  fold: number | null;
  path: string;
  onContour: (contour: Contour, joinKey: string) => void;
  onNewCorner: () => void;
  /** Mirrors the outline over the edge; missing where that cannot be. */
  onFold?: (() => void) | undefined;
}) {
  const words = useTexts().outline;
  const { contour, index, fold, path, onContour } = props;
  const { x0, y0, x1, y1, bulge } = contourEdges(contour)[index]!;
  const chord = Math.hypot(x1 - x0, y1 - y0);
  const rise = (Math.abs(bulge) * chord) / 2;
  const way: Way = bulge === 0 ? "straight" : bulge > 0 ? "out" : "in";
  const side = bulge < 0 ? -1 : 1;
  const bow = (mm: number, key: string) => onContour(bowEdge(contour, index, side * mm), key);
  // An end on the fold stays there: the other end moves.
  const total = contour.vertices.length / 3;
  const fromEnd = isFoldEnd(contour, fold, (index + 1) % total) && !isFoldEnd(contour, fold, index);
  return (
    <p class="sentence">
      {words.edge(
        index + 1,
        <ChoiceBlank<Way>
          label={words.edgeWay(index + 1)}
          path={`${path}.edge.way`}
          value={way}
          options={[
            ["straight", words.ways.straight],
            ["out", words.ways.out],
            ["in", words.ways.in],
          ]}
          onValue={(next) => {
            const mm = bulge === 0 ? Math.round(chord / 8) : rise;
            const signed = next === "straight" ? 0 : next === "out" ? mm : -mm;
            onContour(bowEdge(contour, index, signed), `${path}.edge.way ${index} ${next}`);
          }}
        />,
        <LengthBlank
          label={words.edgeLength(index + 1)}
          path={`${path}.edge.length`}
          value={chord}
          range={{ minMm: 0.1, maxMm: 20_000 }}
          onValue={(mm, key) => onContour(stretchEdge(contour, index, mm, fromEnd), key)}
        />,
      )}{" "}
      {bulge !== 0 &&
        words.arc(
          <LengthBlank
            label={words.edgeRise(index + 1)}
            path={`${path}.edge.rise`}
            value={rise}
            range={{ minMm: 0.01, maxMm: chord / 2 }}
            onValue={bow}
          />,
          <LengthBlank
            label={words.edgeRadius(index + 1)}
            path={`${path}.edge.radius`}
            value={radiusOfRise(chord, rise)}
            range={{ minMm: chord / 2, maxMm: 1_000_000 }}
            onValue={(mm, key) => bow(riseOfRadius(chord, mm), key)}
          />,
        )}{" "}
      <span class="row">
        <button type="button" class="press" onClick={props.onNewCorner}>
          <Icon name="plus" /> {words.newCorner}
        </button>
        {props.onFold !== undefined && (
          <button type="button" class="press" onClick={props.onFold}>
            {words.mirrorOver}
          </button>
        )}
      </span>
    </p>
  );
}
