import type { enNap } from "./enNap.ts";
import { words } from "./words.tsx";

/** The same in German. */
export const deNap: typeof enNap = {
  waySentence: (way) => words("Strich oder Druck lassen die Teile ", way, " liegen."),
  wayLabel: "In welcher Richtung die Teile liegen",
  ways: {
    both: "in beiden Richtungen",
    up: "in einer Richtung, Pfeile die Rolle hinauf",
    down: "in einer Richtung, Pfeile die Rolle hinab",
    free: "in einer Richtung, gleich welcher",
  },
  bandSentence: (length) =>
    words("Länge der Rolle, aus der die Teile einer Tasche kommen, für einen Farbton: ", length, "."),
  bandLabel: "Länge der Rolle für eine Tasche",
  bandAnywhere: "beliebig",
};
