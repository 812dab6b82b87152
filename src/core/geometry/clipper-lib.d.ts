/** The part of clipper-lib 6.4 that `clipper.ts` uses; the package ships no types of its own. */
declare module "clipper-lib" {
  export interface IntPoint {
    X: number;
    Y: number;
  }
  export type Path = IntPoint[];
  export type Paths = Path[];
  export class Clipper {
    StrictlySimple: boolean;
    AddPaths(paths: Paths, type: number, closed: boolean): boolean;
    Execute(operation: number, solution: Paths, subjectFill: number, clipFill: number): boolean;
    static Area(path: Path): number;
  }
  export class ClipperOffset {
    constructor(miterLimit: number, arcTolerance: number);
    AddPaths(paths: Paths, join: number, end: number): void;
    Execute(solution: Paths, delta: number): void;
  }
  const library: {
    Clipper: typeof Clipper;
    ClipperOffset: typeof ClipperOffset;
    PolyType: { ptSubject: number; ptClip: number };
    ClipType: { ctIntersection: number; ctUnion: number; ctDifference: number };
    PolyFillType: { pftNonZero: number };
    JoinType: { jtRound: number; jtMiter: number };
    EndType: { etClosedPolygon: number };
  };
  export default library;
}
