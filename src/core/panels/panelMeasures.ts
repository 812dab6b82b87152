import { followedBy, type Measure, type MeasureOf } from "./measure.ts";
import type { FollowingPiece, Panel } from "./panel.ts";

/** The panel with each of its measures replaced. */
export function mapMeasures(panel: Panel, change: (measure: Measure) => Measure): Panel {
  const { shape, edges, notches, drills, texts, interfacing, lining } = panel;
  const piece = (one: FollowingPiece): FollowingPiece =>
    one.inset === undefined ? one : { ...one, inset: change(one.inset) };
  const place = <T extends { readonly x: Measure; readonly y: Measure }>(one: T): T => ({
    ...one,
    x: change(one.x),
    y: change(one.y),
  });
  return {
    ...panel,
    shape:
      shape.kind === "outline"
        ? shape
        : {
            ...shape,
            sizes: Object.fromEntries(Object.entries(shape.sizes).map(([key, size]) => [key, change(size)])),
          },
    seamAllowance: change(panel.seamAllowance),
    ...(edges && {
      edges: edges.map((edge) =>
        edge.allowance === undefined ? edge : { ...edge, allowance: change(edge.allowance) },
      ),
    }),
    notches: notches.map((notch) => {
      const { at } = notch;
      return typeof at === "object" && "share" in at ? notch : { ...notch, at: change(at) };
    }),
    ...(drills && { drills: drills.map(place) }),
    ...(texts && { texts: texts.map(place) }),
    interfacing: interfacing && piece(interfacing),
    ...(lining && { lining: piece(lining) }),
  };
}

/** Everything the panel's measures follow. */
export function panelFollows(panel: Panel): MeasureOf[] {
  const followed: MeasureOf[] = [];
  mapMeasures(panel, (measure) => {
    followed.push(...followedBy(measure));
    return measure;
  });
  return followed;
}
