import type { Sentences } from "../sentence.ts";
import { fileSentences } from "./fileSentences.ts";
import { laySentences } from "./laySentences.ts";
import { lengthSentences } from "./lengthSentences.ts";
import { panelSentences } from "./panelSentences.ts";
import { strapSentences } from "./strapSentences.ts";

/** Every problem in English. Another language is another folder with the same five tables. */
export const english: Sentences = {
  ...lengthSentences,
  ...fileSentences,
  ...panelSentences,
  ...strapSentences,
  ...laySentences,
};
