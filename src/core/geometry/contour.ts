/**
 * A line or closed outline that keeps its arcs: `[x0, y0, b0, x1, y1, b1, …]` in mm, where `b` is the bulge of
 * the edge leaving that vertex: 0 for a straight edge, else tan(a quarter of the arc's angle), positive when
 * the arc turns counter-clockwise (the usual polyline convention, DXF reference, group code 42).
 */
export interface Contour {
  readonly vertices: Float64Array;
  readonly closed: boolean;
}
