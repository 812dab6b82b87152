import type { Contour } from "../../../core/geometry/contour.ts";
import { contourBox } from "../../../core/geometry/contourArcs.ts";
import { shapeContour } from "../../../core/geometry/shape.ts";
import { inOtherWay, type OtherWay } from "../../../core/job/otherWays.ts";
import type { WeighedWay } from "../../../core/job/weighWays.ts";
import { clothUsed } from "../../../core/lay/alternatives/clothUsed.ts";
import { copiesLeftOut } from "../../../core/lay/problem/planSums.ts";
import type { Project } from "../../../core/project/project.ts";
import { type LengthWords, useLengths } from "../../fields/units.ts";
import type { LayState } from "../../state/lays.ts";
import { useChange } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { useWeighed } from "../../weigh/useWeighed.ts";
import { differenceWords } from "./LayChoices.tsx";

/** Ways shown at most, those of other stock besides; the thriftiest first. */
const MOST = 6;
const MOST_STOCK = 3;
/** Nobody decides otherwise for less cloth than this, mm. */
const SAME = 1;

/** What could be decided otherwise, each with the cloth it takes and one tap away. */
export function OtherWays({ lay, project }: { lay: LayState; project: Project }) {
  const texts = useTexts();
  const lengths = useLengths();
  const change = useChange();
  const words = texts.lay.ways;
  const { id } = lay.job.material;
  const asked = lay.plan === null ? null : ({ kind: "ways", project, materialId: id } as const);
  const { state, value } = useWeighed(asked, asked === null ? null : `${id} ${lay.signature}`);
  const now = lay.plan === null ? 0 : clothUsed(lay.job.problem, lay.plan);
  if (state !== "ready")
    return <p class="soft small not-on-paper">{state === "working" ? words.working : texts.table.failed}</p>;
  const leftOut = lay.plan === null ? 0 : copiesLeftOut(lay.plan);
  const worthTelling = value
    .filter(({ length }) => leftOut > 0 || Math.abs(length - now) >= SAME)
    .sort((a, b) => a.length - b.length);
  // What to cut from is asked first; it is shown whatever it costs.
  const isStock = ({ way }: WeighedWay) => way.kind === "leftover" || way.kind === "roll";
  const ways = [
    ...worthTelling.filter(isStock).slice(0, MOST_STOCK),
    ...worthTelling.filter((weighed) => !isStock(weighed)).slice(0, MOST),
  ];
  if (ways.length === 0) return null;
  const nameOf = (way: OtherWay): string => {
    if (way.kind === "grain") return words.grain[way.grain];
    if (way.kind === "roll") return words.roll;
    if (way.kind === "leftover") {
      const { stock } = lay.job.material;
      const piece = stock.find(({ id: own }) => own === way.stockId);
      // Numbered as in the list of the stock: leftovers may be of one size.
      const kin = stock.filter(({ kind }) => kind === piece?.kind);
      const number = piece === undefined || kin.length < 2 ? null : kin.indexOf(piece) + 1;
      const size = piece === undefined || piece.kind === "roll" ? "" : boxWords(shapeContour(piece.shape), lengths);
      return (way.use ? words.use : words.keepBack)[piece?.kind === "skin" ? "skin" : "remnant"](size, number);
    }
    if (way.kind === "width") return words.width(lengths.size(way.width));
    const strap = project.straps.find((each) => each.id === way.strapId);
    return words.construction(strap?.name ?? way.strapId, texts.constructions[way.construction].name);
  };
  return (
    <div class="other-ways not-on-paper">
      <span id="other-ways">{words.couldBe}</span>
      <ul aria-labelledby="other-ways">
        {ways.map(({ way, length }) => (
          <li key={JSON.stringify(way)}>
            <button
              type="button"
              class="press way"
              onClick={() => change((current) => inOtherWay(current, id, way), nameOf(way))}
            >
              <span>
                <strong>{lengths.taken(length)}</strong> {nameOf(way)}
              </span>
              <span class="soft small">
                {leftOut > 0 ? words.placesAll : differenceWords(length - now, words, lengths)}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function boxWords(contour: Contour, lengths: LengthWords): string {
  const { minX, minY, maxX, maxY } = contourBox(contour);
  return lengths.box(maxX - minX, maxY - minY);
}
