import { type Phrase, phrase } from "./phrase.ts";
import type { PhraseCode } from "./strapWords.ts";

/** Something the maker should know before cutting; never stops the strap. */
export interface StrapWarning extends Phrase {
  readonly code: PhraseCode;
}

/** A note of one sentence, known by that sentence's code. */
export function warning(
  code: PhraseCode,
  lengths: Readonly<Record<string, number>> = {},
  more: Pick<Phrase, "counts" | "where"> = {},
): StrapWarning {
  return { code, ...phrase(code, lengths), ...more };
}
