import type { ComponentChildren } from "preact";
import { contourBox } from "../../core/geometry/contourArcs.ts";
import { type Shape, shapeContour } from "../../core/geometry/shape.ts";
import { useTexts } from "../texts/texts.ts";
import { ChoiceBlank, LengthBlank } from "./blanks.tsx";

/** Least and greatest side of a shape, mm. */
const SIDE = { minMm: 5, maxMm: 10_000 };

/** A shape in a sentence: its kind, its sides, its corner radius. An outline of its own is drawn elsewhere. */
export function ShapeWords(props: {
  shape: Shape;
  path: string;
  /** The words around kind and sides; what is measured differs between a panel and a remnant. */
  boxSentence: (kind: ComponentChildren, along: ComponentChildren, across: ComponentChildren) => ComponentChildren;
  onShape: (shape: Shape, label: string, joinKey?: string) => void;
}) {
  const words = useTexts().shape;
  const { shape, path, onShape } = props;
  const kind = (
    <ChoiceBlank
      label={words.label}
      path={`${path}.kind`}
      value={shape.kind}
      options={[
        ["rectangle", words.kinds.rectangle],
        ["rounded", words.kinds.rounded],
        ["outline", words.kinds.outline],
      ]}
      onValue={(next) => onShape(shapeAs(shape, next), words.label)}
    />
  );
  if (shape.kind === "outline") return <>{words.outlineSentence(kind)}</>;
  const side = (field: "along" | "across" | "radius", label: string, value: number, range = SIDE) => (
    <LengthBlank
      label={label}
      path={`${path}.${field}`}
      value={value}
      range={range}
      onValue={(mm, key) => onShape(withFittingRadius({ ...shape, [field]: mm }), label, key)}
    />
  );
  const largest = Math.min(shape.along, shape.across) / 2;
  return (
    <>
      {props.boxSentence(kind, side("along", words.along, shape.along), side("across", words.across, shape.across))}{" "}
      {shape.kind === "rounded" &&
        words.roundSentence(side("radius", words.radius, shape.radius, { minMm: 0, maxMm: largest }))}
    </>
  );
}

/** A radius that fits the sides. */
function withFittingRadius(shape: Shape): Shape {
  if (shape.kind !== "rounded") return shape;
  return { ...shape, radius: Math.min(shape.radius, shape.along / 2, shape.across / 2) };
}

/** The same size in another kind of shape. */
function shapeAs(shape: Shape, kind: Shape["kind"]): Shape {
  const contour = shapeContour(shape);
  const box = contourBox(contour);
  const along = box.maxX - box.minX;
  const across = box.maxY - box.minY;
  if (kind === "outline") return { kind, contour };
  if (kind === "rounded") return { kind, along, across, radius: Math.min(along, across) / 8 };
  return { kind, along, across };
}
