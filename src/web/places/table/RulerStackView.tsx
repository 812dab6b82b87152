import type { LaidMaterial } from "../../../export/planFile.ts";
import type { RulerStack } from "../../exports/protocol.ts";
import { useAnswer } from "../../exports/useAnswer.ts";
import { useLengths } from "../../fields/units.ts";
import { DrawingPicture } from "../../parts/DrawingPicture.tsx";
import { PageMiniature } from "../../parts/PageMiniature.tsx";
import { useLanguage, useTexts } from "../../texts/texts.ts";
import type { StackInput } from "./tableParts.ts";

/** The plan that ruler and rotary cutter can cut, and its cuts in order. */
export function RulerStackView(input: StackInput) {
  const texts = useTexts();
  return (
    <section class="stack" aria-label={texts.table.stackNames.ruler}>
      {input.shown !== null && <MaterialCuts key={input.shown.material.id} input={input} lay={input.shown} />}
      <p class="caution">{texts.table.sheet.caution}</p>
    </section>
  );
}

function MaterialCuts({ input, lay }: { input: StackInput; lay: LaidMaterial }) {
  const texts = useTexts();
  const lengths = useLengths();
  const words = texts.table.ruler;
  const { project, pieces } = input;
  const language = useLanguage();
  const key = JSON.stringify([project.output.lengths, lay.plan.uses, pieces.length, lay.material.id, language]);
  const answer = useAnswer({ kind: "ruler", project, pieces, language, lay }, key);
  const free = (stack: RulerStack) =>
    lay.plan.uses.find(({ stockId }) => stockId === stack.stockId)?.usedLength ?? 0;
  return (
    <section class="sheet stack" aria-label={lay.material.name} aria-busy={answer.state === "working"}>
      <h2>{lay.material.name}</h2>
      {answer.state === "failed" && <p class="caution">{texts.table.failed}</p>}
      {answer.state === "working" && <p class="soft">{texts.table.working}</p>}
      {(answer.value ?? []).map((stack) => (
        <div key={stack.stockId} class="stack">
          {stack.cards === null ? (
            <p>{words.none}</p>
          ) : (
            <>
              <p>{words.look}</p>
              <p class="lay-length">{words.count(stack.cuts, stack.settings)}</p>
              {stack.length > free(stack) + 1 && (
                <p class="soft">
                  {words.longer(lengths.cloth(stack.length), lengths.size(stack.length - free(stack)))}
                </p>
              )}
            </>
          )}
          <DrawingPicture
            class="ruler-plan"
            drawing={stack.drawing}
            name={texts.lay.plan(lay.material.name)}
            pad={8}
          />
          {stack.cards !== null && (
            <>
              <ul class="soft small">
                {stack.notes.map((note) => (
                  <li key={note}>{note}</li>
                ))}
              </ul>
              <ol class="cut-steps">
                {stack.cards.map(({ number, words: lines, picture }) => (
                  <li key={number}>
                    <PageMiniature page={picture} name={lines[0] ?? ""} />
                    <p>
                      <strong>{number}.</strong> {lines[0]}
                    </p>
                    {lines.slice(1).map((line) => (
                      <p key={line} class="soft small">
                        {line}
                      </p>
                    ))}
                  </li>
                ))}
              </ol>
            </>
          )}
        </div>
      ))}
    </section>
  );
}
