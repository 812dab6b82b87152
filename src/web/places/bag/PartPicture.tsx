import type { Project } from "../../../core/project/project.ts";
import { PiecePicture } from "../../parts/PiecePicture.tsx";
import { piecesOf } from "../../state/derived.ts";

/** The first piece of a strap or panel, small, for its card. */
export function PartPicture({ project, partId }: { project: Project; partId: string }) {
  const piece = piecesOf(project).find((each) => each.partId === partId);
  if (piece === undefined) return <span class="card-picture" />;
  return (
    <span class="card-picture" aria-hidden="true">
      <PiecePicture piece={piece} />
    </span>
  );
}
