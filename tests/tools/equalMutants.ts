// Changes that no input can tell from the source, read by hand one by one; `npm run mutate` counts them apart.

/** A change of `line`, a part of the line it is in, that nobody can notice. */
export const NO_CHANGE: readonly { file: string; line: string; change: string; why: string }[] = [];
