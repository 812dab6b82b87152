import { contourEdges } from "../geometry/contourArcs.ts";
import { pointAlong } from "../geometry/contourEdgeLengths.ts";
import type { MatchPlace } from "../materials/cutPiece.ts";
import { failed, ok, type Problem, type Result } from "../problems/problem.ts";
import { placeOnRun, runLength } from "./edgeRun.ts";
import type { Match } from "./match.ts";
import { edgeOf } from "./seams.ts";
import type { SizedMatch, SizedNotch, SizedPanel } from "./sizedPanel.ts";

/** A mark nearer to another than this is not drawn twice, mm. */
const SAME_PLACE = 1;

/**
 * The panels with the places where the cloth's pattern meets over a seam, each marked with a letter and a number unless
 * a mark stands there already.
 *
 * Errors: panels and edges that are not there, at `matches[i].first`.
 */
export function withMatchSpots(
  panels: readonly SizedPanel[],
  matches: readonly Match[],
): Result<readonly SizedPanel[]> {
  const problems: Problem[] = [];
  const added = new Map<string, SizedMatch[]>();
  for (const [match, { first, second, at = "middle" }] of matches.entries()) {
    for (const side of ["first", "second"] as const) {
      const one = side === "first" ? first : second;
      const found = edgeOf(panels, one, `matches[${match}].${side}`);
      if ("code" in found) {
        problems.push(found);
        continue;
      }
      const { contour } = found.panel.outline;
      const share = { start: 0, middle: 0.5, end: 1 }[at];
      const length = runLength(contour, found.run);
      const place = placeOnRun(contour, found.run, length * (side === "first" ? share : 1 - share));
      added.set(one.panel, [...(added.get(one.panel) ?? []), { match, side, ...place }]);
    }
  }
  if (problems.length > 0) return failed(...problems);
  return ok(panels.map((panel) => withSpots(panel, added.get(panel.panel.id) ?? [])));
}

function withSpots(panel: SizedPanel, spots: readonly SizedMatch[]): SizedPanel {
  if (spots.length === 0) return panel;
  const notches = [...panel.notches];
  for (const { match, edge, at } of spots) {
    if (notches.some((known) => known.edge === edge && Math.abs(known.at - at) <= SAME_PLACE)) continue;
    const notch: SizedNotch = { edge, at, cut: "slit", mark: `M${match + 1}` };
    notches.push(notch);
  }
  return { ...panel, notches, matchSpots: spots };
}

/** The places on the stitch line, `inset` further in, in the frame the panel is drawn in. */
export function matchPlaces(sized: SizedPanel, inset = 0): MatchPlace[] {
  const edges = contourEdges(sized.outline.contour);
  return (sized.matchSpots ?? []).map(({ match, side, edge, at }) => {
    const [x, y, nx, ny] = pointAlong(edges[edge]!, at);
    const inward = inset + (sized.panel.drawn === "cut" ? sized.allowances[edge]! : 0);
    return { match, side, x: x - nx * inward, y: y - ny * inward, out: [nx, ny] };
  });
}
