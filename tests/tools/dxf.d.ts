/** The part of npm `dxf` that tests use; it brings no types. */
declare module "dxf" {
  export class Helper {
    constructor(text: string);
    /** Every line of the drawing as points, arcs drawn in steps. */
    toPolylines(): { readonly polylines: readonly { readonly vertices: readonly (readonly number[])[] }[] };
  }
}
