import type { Contour } from "../../../core/geometry/contour.ts";
import { cornersOf, moveCorner, removeCorner } from "../../../core/geometry/contourEdits.ts";
import { LengthBlank } from "../../fields/blanks.tsx";
import { useTexts } from "../../texts/texts.ts";
import { Icon } from "../Icon.tsx";
import { isFoldEnd } from "./snapping.ts";

const FAR = { minMm: -20_000, maxMm: 20_000 };

/** Every corner by its numbers. */
export function CornerList(props: {
  contour: Contour;
  fold: number | null;
  path: string;
  onContour: (contour: Contour, joinKey: string) => void;
}) {
  const words = useTexts().outline;
  const { contour, fold, path, onContour } = props;
  const corners = cornersOf(contour);
  return (
    <details>
      <summary>{words.type}</summary>
      <ol class="corner-list">
        {corners.map((corner, i) => (
          <li key={i}>
            <LengthBlank
              label={words.along(i + 1)}
              path={`${path}[${i}].x`}
              value={corner.x}
              range={FAR}
              onValue={(x, key) => onContour(moveCorner(contour, i, x, corner.y), key)}
            />
            <LengthBlank
              label={words.across(i + 1)}
              path={`${path}[${i}].y`}
              value={corner.y}
              range={FAR}
              onValue={(y, key) => onContour(moveCorner(contour, i, corner.x, y), key)}
            />
            <button
              type="button"
              class="press plain"
              disabled={corners.length <= 3 || isFoldEnd(contour, fold, i)}
              aria-label={words.removeCorner(i + 1)}
              onClick={() => onContour(removeCorner(contour, i), `${path} without ${i} of ${corners.length}`)}
            >
              <Icon name="bin" />
            </button>
          </li>
        ))}
      </ol>
    </details>
  );
}
