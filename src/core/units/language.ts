/** Languages that sentences are written in. */
export const LANGUAGES = ["en", "de"] as const;

export type Language = (typeof LANGUAGES)[number];
