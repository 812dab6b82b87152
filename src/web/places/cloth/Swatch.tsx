import { useId } from "preact/hooks";
import type { Material } from "../../../core/materials/material.ts";
import { useStore } from "../../state/store.ts";
import { useWorkbench } from "../../state/workbench.ts";

/** Marks of a texture on a 12 × 12 tile, one drawing a kind, so that materials differ by more than colour. */
const TEXTURES: Readonly<Record<Material["kind"], string>> = {
  woven: "M0 3H5M7 9H12M3 6V12M9 0V6",
  vinyl: "M2 2q2 2 4 0M7 6q2 2 4 0M1 9q2 2 4 0",
  leather: "M1 2q3 3 5 0t5 1M0 8q3 3 6 0t6 0",
  cork: "M2 2h1M6 4h2M10 2h1M3 7h2M9 8h1M6 10h1M1 11h1",
  felt: "M1 1l3 2M8 2l-2 3M3 8l2-2M10 7l1 3M6 10l-3 1",
  interfacing: "M0 0L12 12M12 0L0 12",
  padding: "M3 3a2 2 0 1 1 .1 0M9 9a2 2 0 1 1 .1 0",
  webbing: "M0 3l6 3l6-3M0 9l6 3l6-3",
  cord: "M0 12L12 0M-3 3L3-3M9 15L15 9",
};

/** A cut of the material: its photograph or its weave, the arrow of its grain, and the pile where it has one. */
export function Swatch({ material }: { material: Material }) {
  const id = useId();
  const { swatches } = useWorkbench();
  const photo = useStore(swatches.photos, (photos) => photos.get(material.name));
  const pinked =
    "M4 4l4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3 4 3 4-3V66H4z";
  return (
    <svg
      class={photo === undefined ? "drawing swatch" : "drawing swatch has-photo"}
      viewBox="0 0 108 70"
      aria-hidden="true"
    >
      <defs>
        <pattern id={id} width="12" height="12" patternUnits="userSpaceOnUse">
          <rect width="12" height="12" class="tone-cloth" />
          <path d={TEXTURES[material.kind]} class="weave" />
        </pattern>
      </defs>
      {photo !== undefined && (
        <>
          <clipPath id={`${id}-cut`}>
            <path d={pinked} />
          </clipPath>
          <image href={photo} width="108" height="70" preserveAspectRatio="none" clip-path={`url(#${id}-cut)`} />
        </>
      )}
      <path d={pinked} fill={photo === undefined ? `url(#${id})` : "none"} class="swatch-edge" />
      {(material.grain !== "free" || material.oneWay !== false) && (
        <GrainArrow grain={material.grain} oneWay={material.oneWay !== false} />
      )}
    </svg>
  );
}

function GrainArrow({ grain, oneWay }: { grain: Material["grain"]; oneWay: boolean }) {
  const along = `M24 38H84${oneWay ? "" : "M31 33L24 38l7 5"}M77 33l7 5-7 5`;
  const across = "M54 18V58M49 25l5-7 5 7M49 51l5 7 5-7";
  return (
    <path
      class="grain-arrow"
      d={grain === "crosswise" ? across : grain === "either" && !oneWay ? along + across : along}
    />
  );
}
