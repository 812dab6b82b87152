import { LengthBlank } from "../../fields/blanks.tsx";
import { useChange, useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** The bag's own measures, which its panels follow; nothing when it has none. */
export function BagMeasures() {
  const words = useTexts().bag.fromMeasures;
  const { measures } = useProject();
  const change = useChange();
  if (measures === undefined || measures.length === 0) return null;
  return (
    <p class="sentence">
      {words.measures}{" "}
      {measures.map(({ id, name, length }, i) => (
        <span key={id}>
          {name}{" "}
          <LengthBlank
            label={name}
            path={`measures[${i}].length`}
            value={length}
            range={{ minMm: 0, maxMm: 10_000 }}
            onValue={(mm, key) =>
              change(
                (now) => ({
                  ...now,
                  measures: now.measures?.map((one) => (one.id === id ? { ...one, length: mm } : one)),
                }),
                name,
                key,
              )
            }
          />
          {i < measures.length - 1 ? ", " : "."}
        </span>
      ))}
    </p>
  );
}
