/** The languages that there are words in. Their one list stands with the words; here is its type, for who speaks none. */
export type { Language } from "../words/words.ts";
