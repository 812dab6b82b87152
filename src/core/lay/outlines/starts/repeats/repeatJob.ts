import { noFitRings } from "../../../../geometry/noFit.ts";
import type { Ring } from "../../../../geometry/ring.ts";
import type { CompiledJob } from "../../compile/compileJob.ts";
import { shapeKey, turnedShape } from "../../compile/gridTools.ts";
import type { NoFit } from "./clusters.ts";
import type { RepeatJob } from "./repeatStarts.ts";

/**
 * A compiled job as the repeat search reads it, and its no-fit polygons, built when first asked for.
 * Shifts are measured from the lower-left corner of the job's window.
 * Cost: O(variants · vertices); each no-fit polygon once.
 */
export function repeatJobOf(compiled: CompiledJob): { readonly job: RepeatJob; readonly noFit: NoFit } {
  const { shapes, variants, variantsOf, items, window } = compiled;
  const turned = variants.map((v) => turnedShape(shapes[v.shape]!.grid, v.cos, v.sin, v.flip));
  const keys = turned.map((shape) => shapeKey(shape));
  const known = new Map<number, readonly Ring[]>();
  const noFit: NoFit = (a, b) => {
    const key = a * variants.length + b;
    let rings = known.get(key);
    if (rings === undefined) {
      rings = noFitRings(turned[a]!, turned[b]!);
      known.set(key, rings);
    }
    return rings;
  };
  const counts = shapes.map(() => 0);
  for (const item of items) counts[item.shape]!++;
  const repeatVariants = variants.map((v, i) => {
    const half = shapeKey(turned[i]!, -1, 0);
    const halfTurn = variants.findIndex((other, j) => other.shape === v.shape && keys[j] === half);
    const { shape, minX, minY, maxX, maxY } = v;
    return { shape, minX, minY, maxX, maxY, area: shapes[shape]!.area, halfTurn };
  });
  const width = Math.floor(window.maxY - window.minY);
  return { job: { width, variants: repeatVariants, variantsOf, counts }, noFit };
}
