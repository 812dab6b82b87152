import { type ClothRepeat, PLAIN_REPEAT } from "../../../core/materials/material.ts";
import { LengthBlank, OptionalLengthBlank, Tick } from "../../fields/blanks.tsx";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { MatchList } from "./MatchList.tsx";
import type { MaterialBlanks } from "./PriceWords.tsx";

const PLACE = { minMm: -10_000, maxMm: 10_000 };

/** What there is to say of a pattern beyond its repeat along the roll, and what is to meet on it. */
export function PatternWords({ material, path, set }: MaterialBlanks) {
  const words = useTexts().matching;
  const { matches = [], centred = [] } = useProject();
  const repeat = material.repeat ?? PLAIN_REPEAT;
  const change = (part: Partial<ClothRepeat>, label: string, key?: string) => {
    const next = { ...repeat, ...part };
    const isNone = next.along === null && next.across === null;
    const halfDrop = next.halfDrop && next.along !== null && next.across !== null;
    set({ repeat: isNone ? null : { ...next, halfDrop } }, label, key);
  };
  const length = (field: "firstAlong" | "firstAcross" | "tolerance", label: string) => (
    <LengthBlank
      label={label}
      path={path(`repeat.${field}`)}
      value={repeat[field]}
      range={field === "tolerance" ? { minMm: 0, maxMm: 100 } : PLACE}
      onValue={(mm, key) => change({ [field]: mm }, label, key)}
    />
  );
  return (
    <details class="more" open={matches.length + centred.length > 0 && material.repeat !== null}>
      <summary>{words.summary(matches.length + centred.length)}</summary>
      <p class="sentence">
        {words.across(
          <OptionalLengthBlank
            label={words.acrossLabel}
            path={path("repeat.across")}
            value={repeat.across}
            empty={words.noAcross}
            range={{ minMm: 1, maxMm: 3000 }}
            onValue={(across, key) => change({ across }, words.acrossLabel, key)}
          />,
        )}{" "}
        {material.repeat !== null &&
          words.firstLine(
            length("firstAlong", words.firstAlongLabel),
            length("firstAcross", words.firstAcrossLabel),
          )}{" "}
        {material.repeat !== null && words.tolerance(length("tolerance", words.toleranceLabel))}
      </p>
      {material.repeat !== null && (
        <>
          <div class="row">
            <Tick
              label={words.symmetric}
              path={path("repeat.symmetric")}
              value={repeat.symmetric}
              onValue={(symmetric) => change({ symmetric }, words.symmetric)}
            />
            {repeat.along !== null && repeat.across !== null && (
              <Tick
                label={words.halfDrop}
                path={path("repeat.halfDrop")}
                value={repeat.halfDrop}
                onValue={(halfDrop) => change({ halfDrop }, words.halfDrop)}
              />
            )}
          </div>
          <MatchList materialId={material.id} />
        </>
      )}
    </details>
  );
}
