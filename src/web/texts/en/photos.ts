import { type Blank, words } from "../words.tsx";

const say = (text: string): string => text;

/** Photographs of materials and leftovers. */
export const enPhotos = {
  take: say("Photograph for the swatch"),
  another: say("Another photograph"),
  takeAway: say("Take the photograph away"),
  unread: (file: string) => `${file} is not a picture that this browser can show. Choose a JPEG, PNG or WebP.`,
  underlay: say("Lay a photograph under it"),
  reading: say("Reading the photograph …"),
  straightened: say("The photo sheet is in it: the photograph lies under the outline straightened and to scale."),
  takeOutline: say("Take the outline that was found"),
  tookOutline: say("outline from a photograph"),
  shows: (width: Blank) =>
    words(
      "From its left to its right edge the photograph shows ",
      width,
      ". Take it from straight above; with our photo sheet beside the leftover it finds scale and outline by itself.",
    ),
  showsLabel: say("What the photograph shows from left to right"),
};
