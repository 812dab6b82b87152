import { useMemo } from "preact/hooks";
import { strapSectionArt } from "../../../core/drawing/strap/strapSectionArt.ts";
import { polygonArea } from "../../../core/geometry/ring.ts";
import type { Project } from "../../../core/project/project.ts";
import { buildStrap } from "../../../core/straps/build/buildStrap.ts";
import type { StrapResult } from "../../../core/straps/build/strapResult.ts";
import { rebuiltAs } from "../../../core/straps/build/unusedChoices.ts";
import { CONSTRUCTION_IDS, type ConstructionId, type StrapWish } from "../../../core/straps/wish/strapWish.ts";
import { useLengths } from "../../fields/units.ts";
import { SectionPicture } from "../../parts/SectionPicture.tsx";
import { materialsOfStraps } from "../../state/derived.ts";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** All constructions that this strap could have in its materials, side by side: section, cut width, bulk, cloth. */
export function ConstructionBoard(props: { strap: StrapWish; onChoose: (id: ConstructionId) => void }) {
  const texts = useTexts();
  const lengths = useLengths();
  const project = useProject();
  const words = texts.bag.strap;
  const choices = useMemo(() => possible(props.strap, project), [props.strap, project]);
  const room = Math.max(...choices.map(({ result }) => result.finishedWidth));
  if (choices.length < 2) return null;
  return (
    <details class="more">
      <summary>{words.compare(choices.length)}</summary>
      <ul class="constructions">
        {choices.map(({ id, result }) => (
          <li key={id}>
            <button
              type="button"
              class="card"
              aria-pressed={id === props.strap.construction}
              onClick={() => props.onChoose(id)}
            >
              <SectionPicture art={strapSectionArt(result)} room={room} />
              <span class="card-name">{texts.constructions[id].name}</span>
              <span class="small">{words.compareCut(lengths.size(result.cutWidth))}</span>
              <span class="small">{words.compareBulk(lengths.thickness(result.thickness), result.layers)}</span>
              <span class="small">{words.compareCloth(lengths.area(clothArea(result)))}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** Constructions that work out with the strap's own materials. */
function possible(strap: StrapWish, project: Project): { id: ConstructionId; result: StrapResult }[] {
  const materials = materialsOfStraps(project);
  return CONSTRUCTION_IDS.flatMap((id) => {
    const built = buildStrap(rebuiltAs(strap, id), materials);
    return built.ok ? [{ id, result: built.value }] : [];
  });
}

/** Cloth that one strap takes of its outer material, mm². */
function clothArea(result: StrapResult): number {
  return result.pieces
    .filter(({ materialId }) => materialId === result.wish.materials.outer)
    .reduce((sum, piece) => sum + (piece.count * polygonArea(piece.outline)) / Math.max(1, result.wish.count), 0);
}
