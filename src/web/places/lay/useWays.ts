import { useMemo } from "preact/hooks";
import type { Contour } from "../../../core/geometry/contour.ts";
import { contourBox } from "../../../core/geometry/contourArcs.ts";
import { shapeContour } from "../../../core/geometry/shape.ts";
import type { OtherWay } from "../../../core/job/otherWays.ts";
import type { WeighedWay } from "../../../core/job/weighWays.ts";
import { clothUsed } from "../../../core/lay/problem/planSums.ts";
import type { Project } from "../../../core/project/project.ts";
import { type LengthWords, useLengths } from "../../fields/units.ts";
import type { LayState } from "../../state/layBoard.ts";
import { type Texts, useTexts } from "../../texts/texts.ts";
import { useWeighed } from "../../weigh/useWeighed.ts";

/** Ways shown at most, those of other stock besides; the thriftiest first. */
const MOST = 6;
const MOST_STOCK = 3;
/** Nobody decides otherwise for less cloth than this, mm. */
const SAME = 1;

/** Another way with its name, and how much more cloth it takes than the plan, mm. */
export interface NamedWay extends WeighedWay {
  readonly name: string;
  readonly difference: number;
}

/** What could be decided otherwise. Old ones stay in their place, greyed, while new ones are weighed. */
export interface Ways {
  readonly list: readonly NamedWay[];
  readonly isOld: boolean;
  readonly isFailed: boolean;
  /** Ways were weighed at least once. */
  readonly isKnown: boolean;
}

/** Weighs what could be decided otherwise about a lay. */
export function useWays(lay: LayState, project: Project): Ways {
  const texts = useTexts();
  const lengths = useLengths();
  const { id } = lay.job.material;
  const asked = lay.plan === null ? null : ({ kind: "ways", project, materialId: id } as const);
  const { state, value } = useWeighed(asked, asked === null ? null : `${id} ${lay.signature}`);
  const now = lay.plan === null ? 0 : clothUsed(lay.job.problem, lay.plan);
  const leftOut = lay.plan?.unplaced.length ?? 0;
  const list = useMemo(() => {
    const worthTelling = (value ?? [])
      .map((way) => ({ ...way, difference: way.length - now, name: nameOf(way.way, lay, project, texts, lengths) }))
      .filter(({ difference }) => leftOut > 0 || Math.abs(difference) >= SAME)
      .sort((a, b) => a.length - b.length);
    // What to cut from is asked first; it is shown whatever it costs.
    const isStock = ({ way }: WeighedWay) => way.kind === "leftover" || way.kind === "roll";
    return [
      ...worthTelling.filter(isStock).slice(0, MOST_STOCK),
      ...worthTelling.filter((weighed) => !isStock(weighed)).slice(0, MOST),
    ];
  }, [value, now, leftOut, project, texts]);
  return { list, isOld: state !== "ready", isFailed: state === "failed", isKnown: value !== null };
}

function nameOf(way: OtherWay, lay: LayState, project: Project, texts: Texts, lengths: LengthWords): string {
  const words = texts.lay.ways;
  if (way.kind === "grain") return words.grain[way.grain];
  if (way.kind === "roll") return words.roll;
  if (way.kind === "width") return words.width(lengths.size(way.width));
  if (way.kind === "construction") {
    const strap = project.straps.find((each) => each.id === way.strapId);
    return words.construction(strap?.name ?? "", texts.constructions[way.construction].name);
  }
  const { stock } = lay.job.material;
  const piece = stock.find(({ id: own }) => own === way.stockId);
  // Numbered as in the list of the stock: leftovers may be of one size.
  const kin = stock.filter(({ kind }) => kind === piece?.kind);
  const number = piece === undefined || kin.length < 2 ? null : kin.indexOf(piece) + 1;
  const size = piece === undefined || piece.kind === "roll" ? "" : boxWords(shapeContour(piece.shape), lengths);
  return (way.use ? words.use : words.keepBack)[piece?.kind === "skin" ? "skin" : "remnant"](size, number);
}

function boxWords(contour: Contour, lengths: LengthWords): string {
  const { minX, minY, maxX, maxY } = contourBox(contour);
  return lengths.box(maxX - minX, maxY - minY);
}
