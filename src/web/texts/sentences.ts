import { createContext } from "preact";
import { english } from "../../core/problems/english/english.ts";
import type { Sentences } from "../../core/problems/sentence.ts";

/** Sentences for problems in the page's language. */
export const SentencesContext = createContext<Sentences>(english);
