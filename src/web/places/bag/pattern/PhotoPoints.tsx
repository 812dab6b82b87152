import { useEffect, useState } from "preact/hooks";
import { CountBlank } from "../../../fields/blanks.tsx";
import { useTexts } from "../../../texts/texts.ts";

/** A place in a photograph, pixels from its upper left. */
export type Spot = readonly [x: number, y: number];

/** Pixels across the largest photograph that is read. */
const MOST_PIXELS = 20_000;

interface PointsProps {
  readonly file: File;
  /** How many places are asked for. */
  readonly wanted: number;
  readonly spots: readonly Spot[];
  readonly onSpots: (spots: readonly Spot[]) => void;
}

/** A photograph in which places are pressed, or written as pixels; a press beyond the last moves the nearest. */
export function PhotoPoints({ file, wanted, spots, onSpots }: PointsProps) {
  const { lie: words } = useTexts().pattern;
  const [source, setSource] = useState("");
  const [size, setSize] = useState<Spot>([1, 1]);
  useEffect(() => {
    const url = URL.createObjectURL(file);
    setSource(url);
    return () => URL.revokeObjectURL(url);
  }, [file]);
  const press = (event: MouseEvent) => {
    const image = event.currentTarget as HTMLElement;
    const box = image.getBoundingClientRect();
    const x = Math.round(((event.clientX - box.left) / box.width) * size[0]);
    const y = Math.round(((event.clientY - box.top) / box.height) * size[1]);
    onSpots(spots.length < wanted ? [...spots, [x, y]] : spots.with(nearestTo(spots, [x, y]), [x, y]));
  };
  const pixel = (i: number, axis: 0 | 1) => (
    <CountBlank
      label={words.placeLabel(i + 1, axis === 0)}
      path={`pattern.spots.${i}.${axis}`}
      value={spots[i]?.[axis] ?? 0}
      min={0}
      max={MOST_PIXELS}
      onValue={(value) => onSpots(written(spots, i, axis, value))}
    />
  );
  return (
    <>
      <p>{words.press(wanted, spots.length)}</p>
      {/* Places can be written below as well: pressing is one of two ways. */}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: the blanks below do the same by keys */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: the blanks below do the same by keys */}
      <div class="photo-points" onClick={press}>
        <img
          src={source}
          alt={words.photo}
          onLoad={({ currentTarget: { naturalWidth, naturalHeight } }) => setSize([naturalWidth, naturalHeight])}
        />
        {spots.map(([x, y], i) => (
          <span
            key={i}
            class="photo-point"
            aria-hidden="true"
            style={{ left: `${(x / size[0]) * 100}%`, top: `${(y / size[1]) * 100}%` }}
          >
            {i + 1}
          </span>
        ))}
      </div>
      <p class="sentence">
        {Array.from({ length: wanted }, (_, i) => (
          <span key={i}>{words.place(i + 1, pixel(i, 0), pixel(i, 1))} </span>
        ))}
      </p>
    </>
  );
}

function nearestTo(spots: readonly Spot[], [x, y]: Spot): number {
  const far = spots.map((spot) => Math.hypot(spot[0] - x, spot[1] - y));
  return far.indexOf(Math.min(...far));
}

/** The places with one number written; those before it that are still missing stand at the upper left. */
function written(spots: readonly Spot[], i: number, axis: 0 | 1, value: number): readonly Spot[] {
  const filled = [...spots, ...Array.from({ length: Math.max(0, i + 1 - spots.length) }, (): Spot => [0, 0])];
  const [x, y] = filled[i]!;
  return filled.with(i, axis === 0 ? [value, y] : [x, value]);
}
