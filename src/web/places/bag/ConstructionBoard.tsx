import { useMemo } from "preact/hooks";
import { toMinor } from "../../../core/buying/money.ts";
import { strapSectionArt } from "../../../core/drawing/strap/foldPicture.ts";
import { onMachine } from "../../../core/project/cutList.ts";
import { type StrapBesideOthers, sideBySide } from "../../../core/straps/build/sideBySide.ts";
import type { ConstructionId, StrapWish } from "../../../core/straps/wish/strapWish.ts";
import { unbroken } from "../../../core/units/numberWords.ts";
import { moneyText } from "../../../export/cutsheet/moneyText.ts";
import { useLengths } from "../../fields/units.ts";
import { SectionPicture } from "../../parts/SectionPicture.tsx";
import { materialsOfStraps } from "../../state/derived.ts";
import { useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/** All constructions that this strap could have in its materials, side by side, a card each. */
export function ConstructionBoard(props: { strap: StrapWish; onChoose: (id: ConstructionId) => void }) {
  const texts = useTexts();
  const project = useProject();
  const rows = useMemo(() => {
    const price = project.materials.find(({ id }) => id === props.strap.materials.outer)?.price ?? null;
    return sideBySide(onMachine(project, props.strap), materialsOfStraps(project), price);
  }, [props.strap, project]);
  if (rows.length < 2) return null;
  const room = Math.max(...rows.map(({ strap }) => strap.finishedWidth));
  return (
    <details class="more">
      <summary>{texts.bag.strap.compare(rows.length)}</summary>
      <ul class="constructions">
        {rows.map((row) => (
          <li key={row.construction}>
            <button
              type="button"
              class="card"
              aria-pressed={row.construction === props.strap.construction}
              onClick={() => props.onChoose(row.construction)}
            >
              <SectionPicture art={strapSectionArt(row.strap)} room={room} />
              <span class="card-name">{texts.constructions[row.construction].name}</span>
              <CardLines row={row} />
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** What one construction takes: cut width, bulk, cloth both ways, cost, and what stands against it. */
function CardLines({ row }: { row: StrapBesideOthers }) {
  const words = useTexts().bag.strap;
  const lengths = useLengths();
  const language = useLanguage();
  const { currency } = useProject();
  const { lengthwise, crosswise } = row;
  const ways = [
    ...(lengthwise === null ? [] : [words.compareLengthwise(lengths.taken(lengthwise))]),
    ...(crosswise === null ? [] : [words.compareCrosswise(lengths.taken(crosswise))]),
  ];
  const against = [
    ...(row.machine ? [] : [words.compareMachine]),
    ...(row.slider ? [] : [words.compareSlider]),
    ...(row.rawEdges > 0 ? [words.compareRaw(row.rawEdges)] : []),
  ];
  const lines = [
    words.compareCut(lengths.size(row.cutWidth)),
    words.compareBulk(lengths.thickness(row.thickness), row.layers),
    ways.length > 0 ? ways.join(", ") : words.compareCloth(lengths.area(row.cloth)),
    ...(row.cost === null
      ? []
      : [words.compareCost(unbroken(moneyText(toMinor(row.cost, currency), currency, language)))]),
  ];
  return (
    <>
      {lines.map((line) => (
        <span class="small" key={line}>
          {line}
        </span>
      ))}
      {against.map((line) => (
        <span class="small against" key={line}>
          {line}
        </span>
      ))}
    </>
  );
}
