import { contourBox } from "../../../core/geometry/contourArcs.ts";
import { shapeContour } from "../../../core/geometry/shape.ts";
import type { Flaw } from "../../../core/materials/stock.ts";
import { LengthBlank } from "../../fields/blanks.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { useTexts } from "../../texts/texts.ts";
import { flawAt } from "./flawAt.ts";

const PLACE = { minMm: -20_000, maxMm: 500_000 };
const SIZE = { minMm: 1, maxMm: 5000 };

/** The flaws of a stock as a list to type: where the middle of each is, and how large it is. */
export function FlawList(props: {
  flaws: readonly Flaw[];
  path: string;
  onFlaws: (flaws: readonly Flaw[], joinKey?: string) => void;
}) {
  const words = useTexts().cloth;
  const { flaws, path, onFlaws } = props;
  return (
    <details class="more" open={flaws.length > 0}>
      <summary>{words.flaws(flaws.length)}</summary>
      <ol class="stack">
        {flaws.map((flaw, i) => (
          <li key={i} class="sentence">
            <FlawWords
              flaw={flaw}
              path={`${path}[${i}]`}
              onFlaw={(next, key) => onFlaws(flaws.with(i, next), key)}
            />{" "}
            <button
              type="button"
              class="press plain"
              aria-label={words.removeFlaw(i + 1)}
              onClick={() => onFlaws(flaws.toSpliced(i, 1))}
            >
              <Icon name="bin" />
            </button>
          </li>
        ))}
      </ol>
      <button type="button" class="press" onClick={() => onFlaws([...flaws, flawAt(100, 100)])}>
        <Icon name="plus" /> {words.addFlaw}
      </button>
    </details>
  );
}

function FlawWords(props: { flaw: Flaw; path: string; onFlaw: (flaw: Flaw, joinKey: string) => void }) {
  const words = useTexts().cloth;
  const { flaw, path } = props;
  const box = contourBox(shapeContour(flaw.shape));
  const values = {
    x: flaw.x + (box.minX + box.maxX) / 2,
    y: flaw.y + (box.minY + box.maxY) / 2,
    along: box.maxX - box.minX,
    across: box.maxY - box.minY,
  };
  const blank = (field: keyof typeof values, label: string, range: typeof PLACE) => (
    <LengthBlank
      label={label}
      path={`${path}.${field}`}
      value={values[field]}
      range={range}
      onValue={(mm, key) => {
        const next = { ...values };
        next[field] = mm;
        const { x, y, along, across } = next;
        props.onFlaw({ x: x - along / 2, y: y - across / 2, shape: { kind: "rectangle", along, across } }, key);
      }}
    />
  );
  return (
    <>
      {words.flawSentence(
        blank("x", words.flawAlong, PLACE),
        blank("y", words.flawAcross, PLACE),
        blank("along", words.flawLong, SIZE),
        blank("across", words.flawWide, SIZE),
      )}
    </>
  );
}
