import { shapePicture, usualSizes } from "../../../core/drawing/panel/shapePicture.ts";
import { followedBy, type Measure } from "../../../core/panels/measure.ts";
import type { Panel, PanelShape } from "../../../core/panels/panel.ts";
import { SHAPE_IDS, SHAPES, type ShapeId } from "../../../core/panels/shapes/registry.ts";
import type { Dimension, Sizes } from "../../../core/panels/shapes/shapeRecord.ts";
import { lengthNow, sizedPanelOf } from "../../../core/project/sizedPanels.ts";
import type { PanelWords } from "../../../core/words/panelWords.ts";
import { PANEL_WORDS } from "../../../core/words/words.ts";
import { ChoiceBlank, CountBlank, LengthBlank } from "../../fields/blanks.tsx";
import { DrawingPicture } from "../../parts/DrawingPicture.tsx";
import { useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/** What words about a panel's shape share. */
export interface ShapeProps {
  readonly panel: Panel;
  readonly path: string;
  readonly onShape: (shape: PanelShape, label: string, joinKey?: string) => void;
}

/** A panel's shape in a sentence, each of its sizes by name, and a picture of where they are measured. */
export function PanelShapeWords({ panel, path, onShape }: ShapeProps) {
  const texts = useTexts();
  const project = useProject();
  const words = PANEL_WORDS[useLanguage()];
  const { shape } = panel;
  const outline = () => sizedPanelOf(project, panel.id)?.outline;
  const kinds = [
    ...SHAPE_IDS.map((id) => [id, words.shapes[id]] as const),
    ["outline", texts.shape.kinds.outline] as const,
  ];
  const kind = (
    <ChoiceBlank
      label={texts.shape.label}
      path={`${path}.kind`}
      value={shape.kind === "outline" ? "outline" : shape.shape}
      options={kinds}
      onValue={(next) => {
        const own = outline();
        if (next !== "outline")
          onShape({ kind: "measured", shape: next, sizes: startSizes(next) }, texts.shape.label);
        else if (own !== undefined) {
          // Seams go by the names of edges: they stay.
          const edges = own.edges.length > 0 ? { edges: own.edges } : {};
          onShape({ kind: "outline", contour: own.contour, ...edges }, texts.shape.label);
        }
      }}
    />
  );
  if (shape.kind === "outline") return <>{texts.shape.outlineSentence(kind)}</>;
  const set = (id: string, size: Measure, key: string) =>
    onShape({ ...shape, sizes: { ...shape.sizes, [id]: size } }, words.dimensions[id as Dimension["id"]], key);
  const given = SHAPES[shape.shape].dimensions.filter(
    ({ id, otherwise }) => otherwise === undefined || id in shape.sizes,
  );
  return (
    <>
      {texts.shape.outlineSentence(kind)}{" "}
      {given.map((dimension) => (
        <SizeWords
          key={dimension.id}
          dimension={dimension}
          measure={shape.sizes[dimension.id] ?? dimension.usual}
          path={`${path}.${dimension.id}`}
          onSize={(size, key) => set(dimension.id, size, key)}
        />
      ))}
    </>
  );
}

/** One size by its name, and what it follows. */
function SizeWords(props: {
  dimension: Dimension;
  measure: Measure;
  path: string;
  onSize: (size: number, key: string) => void;
}) {
  const texts = useTexts();
  const project = useProject();
  const words = PANEL_WORDS[useLanguage()];
  const { dimension, measure } = props;
  const label = words.dimensions[dimension.id];
  const followed = followedBy(measure).map(({ of, measure: name }) => {
    if (of === undefined) return project.measures?.find(({ id }) => id === name)?.name ?? name;
    return `${project.panels.find(({ id }) => id === of)?.name ?? of}: ${measureWord(words, name)}`;
  });
  const value = lengthNow(project, measure) ?? dimension.usual;
  const range = { minMm: dimension.least, maxMm: dimension.most };
  return (
    <span>
      {label}{" "}
      {dimension.isCount ? (
        <CountBlank
          label={label}
          path={props.path}
          value={value}
          min={dimension.least}
          max={dimension.most}
          onValue={props.onSize}
        />
      ) : (
        <LengthBlank label={label} path={props.path} value={value} range={range} onValue={props.onSize} />
      )}
      {followed.length > 0 && (
        <span class="soft"> ({texts.bag.fromMeasures.follows([...new Set(followed)].join(", "))})</span>
      )}
      {". "}
    </span>
  );
}

/** A measure by the name of its edge or dimension. */
export function measureWord(words: PanelWords, name: string): string {
  const known: Readonly<Record<string, string>> = { ...words.edges, ...words.dimensions };
  return Object.hasOwn(known, name) ? known[name]! : name;
}

/** Usual sizes of a shape, but for those that may be left out. */
function startSizes(id: ShapeId): Readonly<Record<string, number>> {
  const given = SHAPES[id].dimensions.filter(({ otherwise }) => otherwise === undefined);
  return Object.fromEntries(given.map(({ id: key, usual }) => [key, usual]));
}

/** Where a shape's sizes are measured. */
export function ShapePicture({ panel }: { panel: Panel }) {
  const texts = useTexts();
  const project = useProject();
  const words = PANEL_WORDS[useLanguage()];
  const { shape } = panel;
  if (shape.kind === "outline") return null;
  const sizes: Record<string, number> = { ...usualSizes(shape.shape) };
  for (const { id, otherwise } of SHAPES[shape.shape].dimensions) {
    const size = shape.sizes[id];
    const fallback = typeof otherwise === "string" ? sizes[otherwise] : otherwise;
    sizes[id] = (size === undefined ? fallback : lengthNow(project, size)) ?? sizes[id]!;
  }
  const drawing = shapePicture(shape.shape, words, sizes as Sizes);
  if (drawing === null) return null;
  return (
    <details class="more">
      <summary>{texts.bag.fromMeasures.whereMeasured}</summary>
      <DrawingPicture drawing={drawing} name={words.shapes[shape.shape]} class="shape-picture" />
    </details>
  );
}
