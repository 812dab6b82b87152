import type { CupboardStepKind } from "../../../core/cupboard/cupboard.ts";
import { pluralOf } from "../../../core/units/numberWords.ts";

const plural = pluralOf("en");
const say = (text: string): string => text;

const DID: Readonly<Record<CupboardStepKind, string>> = {
  put: "putting in",
  kept: "keeping leftovers",
  took: "taking out",
  "gave-back": "giving back",
  "let-go": "taking off the list",
  noted: "the photo",
};

/** Leftovers that are kept for the next project. */
export const enCupboard = {
  heading: (inside: number, out: number) =>
    `Cupboard: ${inside} ${plural(inside, "piece", "pieces")}${out > 0 ? `, ${out} out` : ""}`,
  about: say("Leftovers that you keep for other projects, in this browser."),
  offers: (count: number) =>
    `In your cupboard there ${plural(count, "is a piece", `are ${count} pieces`)} of this cloth`,
  useAll: say("Use them all first"),
  use: (code: string) => `Use ${code} first`,
  took: (codes: string) => `${codes} taken out for this project: used up before anything else.`,
  giveBack: (code: string) => `Give ${code} back`,
  gaveBack: (code: string) => `${code} is back in the cupboard.`,
  letGo: (code: string) => `Take ${code} off the list`,
  undo: (did: CupboardStepKind) => `Undo ${DID[did]}`,
  outFor: (project: string) => `out for ${project}`,
  largest: (box: string) => `rectangle ${box}`,
  strip: (box: string) => `strip ${box}`,
  leftHeading: say("After cutting"),
  leftAbout: say("Once the pieces are cut, keep what is left of this cloth for another project."),
  shade: say("Shade"),
  source: say("Bought at"),
  keep: say("Keep the leftovers"),
  keepAgain: say("It was cut once more"),
  kept: (count: number, codes: string) =>
    count === 0
      ? "Nothing is left that is worth keeping."
      : `Kept: ${codes}. Write ${plural(count, "this code on the piece", "these codes on the pieces")}.`,
  labels: (count: number) => `Print ${plural(count, "a label", `${count} labels`)}`,
  label: (code: string) => `Print the label of ${code}`,
  labelsAbout: say(
    "Three by eight on a sheet, at actual size. A phone reads the code; it also stands beside it in large letters.",
  ),
  useShade: (shade: string) => `Use all in ${shade} first`,
  takeMore: say("They are more for this project"),
  photoOf: (code: string) => `Photo of ${code}`,
  addPhoto: (code: string) => `Photo of ${code}…`,
  photoUnread: (name: string) => `${name} cannot be read as a picture. Take a JPEG or PNG.`,
  saveFile: say("Save the cupboard to a file"),
  openFile: say("Bring in a cupboard file"),
  broughtIn: (count: number) => `${count} ${plural(count, "piece", "pieces")} brought in.`,
};
