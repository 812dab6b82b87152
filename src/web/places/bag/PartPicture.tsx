import { PiecePicture } from "../../parts/PiecePicture.tsx";
import { useDerived } from "../../state/useDerived.ts";

/** The first piece of a strap or panel, small, for its card. */
export function PartPicture({ partId }: { partId: string }) {
  const piece = useDerived().pieces.find((each) => each.partId === partId);
  if (piece === undefined) return <span class="card-picture" />;
  return (
    <span class="card-picture" aria-hidden="true">
      <PiecePicture piece={piece} />
    </span>
  );
}
