import { useId } from "preact/hooks";
import { type Texts, useTexts } from "../texts/texts.ts";

/** Words of the trade that are explained on the spot. */
export type TermId = keyof Texts["terms"];

/** A word of the trade; pressed, it says what it means. `word` is the form it takes in its sentence. */
export function Term({ id, word }: { id: TermId; word?: string }) {
  const texts = useTexts();
  const term = texts.terms[id];
  const target = useId();
  return (
    <>
      <button type="button" class="term" popovertarget={target} aria-label={texts.termLabel(word ?? term.word)}>
        {word ?? term.word}
      </button>
      <span id={target} popover="auto" class="meaning">
        <strong>{term.word}</strong>: {term.meaning}
      </span>
    </>
  );
}
