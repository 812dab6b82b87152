export type { Contour } from "./core/geometry/contour.ts";
