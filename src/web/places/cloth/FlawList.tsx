import type { Box } from "../../../core/geometry/box.ts";
import { contourBox } from "../../../core/geometry/contourArcs.ts";
import { shapeContour } from "../../../core/geometry/shape.ts";
import type { Flaw } from "../../../core/materials/stock.ts";
import type { LengthRange } from "../../../core/units/parseLength.ts";
import { LengthBlank } from "../../fields/blanks.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { useTexts } from "../../texts/texts.ts";
import { flawAt } from "./RollPicture.tsx";

const SIZE = { minMm: 1, maxMm: 5000 };

/** The flaws of a stock as a list to type: where the middle of each is, and how large it is. */
export function FlawList(props: {
  flaws: readonly Flaw[];
  path: string;
  /** The cloth that they are in: a flaw outside it would be a slip of the pen. */
  box: Box;
  onFlaws: (flaws: readonly Flaw[], joinKey?: string) => void;
}) {
  const words = useTexts().cloth;
  const { flaws, path, box, onFlaws } = props;
  const middle = [(box.minX + Math.min(box.maxX, box.minX + 2000)) / 2, (box.minY + box.maxY) / 2] as const;
  return (
    <details class="more" open={flaws.length > 0}>
      <summary>{words.flaws(flaws.length)}</summary>
      <ol class="stack">
        {flaws.map((flaw, i) => (
          <li key={i} class="sentence">
            <FlawWords
              flaw={flaw}
              path={`${path}[${i}]`}
              cloth={box}
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
      <button
        type="button"
        class="press"
        onClick={() => onFlaws([...flaws, flawAt(Math.round(middle[0]), Math.round(middle[1]))])}
      >
        <Icon name="plus" /> {words.addFlaw}
      </button>
    </details>
  );
}

function FlawWords(props: { flaw: Flaw; path: string; cloth: Box; onFlaw: (flaw: Flaw, joinKey: string) => void }) {
  const words = useTexts().cloth;
  const { flaw, path, cloth } = props;
  const box = contourBox(shapeContour(flaw.shape));
  const values = {
    x: flaw.x + (box.minX + box.maxX) / 2,
    y: flaw.y + (box.minY + box.maxY) / 2,
    along: box.maxX - box.minX,
    across: box.maxY - box.minY,
  };
  const blank = (field: keyof typeof values, label: string, range: LengthRange) => (
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
        blank("x", words.flawAlong, { minMm: cloth.minX, maxMm: cloth.maxX }),
        blank("y", words.flawAcross, { minMm: cloth.minY, maxMm: cloth.maxY }),
        blank("along", words.flawLong, SIZE),
        blank("across", words.flawWide, SIZE),
      )}
    </>
  );
}
