import { followedBy, following, type Measure } from "../../../core/panels/measure.ts";
import type { Panel } from "../../../core/panels/panel.ts";
import { SHAPES } from "../../../core/panels/shapes/registry.ts";
import { lengthNow } from "../../../core/project/sizedPanels.ts";
import { PANEL_WORDS } from "../../../core/words/words.ts";
import { ChoiceBlank } from "../../fields/blanks.tsx";
import { useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import { measureWord, type ShapeProps } from "./PanelShapeWords.tsx";

/** What any panel can be measured by besides the dimensions of its shape. */
const BOX = ["along", "across", "round"] as const;

/** Sizes that are those of another panel or of the bag: a choice for each, its own where nothing is chosen. */
export function FollowedSizes({ panel, path, onShape }: ShapeProps) {
  const texts = useTexts();
  const project = useProject();
  const words = PANEL_WORDS[useLanguage()];
  const { shape } = panel;
  if (shape.kind === "outline") return null;
  const measuresOf = ({ id, name, shape: other }: Panel): (readonly [string, string])[] =>
    [
      ...new Set([
        ...(other.kind === "outline" ? [] : SHAPES[other.shape].dimensions.map((one) => one.id)),
        ...BOX,
      ]),
    ].map((measure) => [keyOf(id, measure), `${name}: ${measureWord(words, measure)}`] as const);
  const offered = [
    ["", texts.bag.fromMeasures.ownSize] as const,
    ...(project.measures ?? []).map(({ id, name }) => [keyOf(undefined, id), name] as const),
    ...project.panels.filter(({ id }) => id !== panel.id).flatMap(measuresOf),
  ];
  const lengths = SHAPES[shape.shape].dimensions.filter(({ isCount }) => isCount === undefined);
  return (
    <details class="more">
      <summary>{texts.bag.fromMeasures.followed}</summary>
      <p class="sentence">
        {lengths.map(({ id, usual }) => {
          const label = words.dimensions[id];
          const measure: Measure = shape.sizes[id] ?? usual;
          const chosen = chosenOf(measure);
          // A sum or a share that a file says stays until another size is chosen.
          const options = offered.some(([key]) => key === chosen)
            ? offered
            : [...offered, [chosen, texts.bag.fromMeasures.asFileSays] as const];
          return (
            <ChoiceBlank
              key={id}
              labelled
              label={texts.bag.fromMeasures.sizeOf(label)}
              path={`${path}.${id}.of`}
              value={chosen}
              options={options}
              onValue={(key) => {
                const size = key === "" ? (lengthNow(project, measure) ?? usual) : measureOf(key);
                onShape({ ...shape, sizes: { ...shape.sizes, [id]: size } }, label);
              }}
            />
          );
        })}
      </p>
    </details>
  );
}

const keyOf = (of: string | undefined, measure: string): string => JSON.stringify([of ?? null, measure]);

function measureOf(key: string): Measure {
  const [of, measure] = JSON.parse(key) as [string | null, string];
  return following(of ?? undefined, measure);
}

/** The choice that a size stands for: none of its own, one measure whole, or what only a file can say. */
function chosenOf(measure: Measure): string {
  if (typeof measure === "number") return "";
  const [only] = followedBy(measure);
  return measure.length === 1 && only !== undefined && only.times === 1 ? keyOf(only.of, only.measure) : "file";
}
