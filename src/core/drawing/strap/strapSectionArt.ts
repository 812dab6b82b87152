import type { StrapResult } from "../../straps/build/strapResult.ts";
import { layeredArt } from "./layeredArt.ts";
import type { SectionArt } from "./sectionArt.ts";
import { wrappedArt } from "./wrappedArt.ts";

/** The art of a strap's section in its own mm, for a picture on paper or a screen's own drawing. */
export function strapSectionArt(result: StrapResult): SectionArt {
  const { section } = result;
  return section.kind === "layered" ? layeredArt(result, section) : wrappedArt(section);
}
