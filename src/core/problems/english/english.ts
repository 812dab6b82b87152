import type { Sentences } from "../sentence.ts";
import { fileSentences } from "./fileSentences.ts";
import { laySentences } from "./laySentences.ts";
import { lengthSentences } from "./lengthSentences.ts";
import { strapSentences } from "./strapSentences.ts";

/** Every problem in English. Another language is another folder with the same four tables. */
export const english: Sentences = { ...lengthSentences, ...fileSentences, ...strapSentences, ...laySentences };
