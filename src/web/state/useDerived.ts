import { useLanguage } from "../texts/texts.ts";
import { type Derived, derivedOf } from "./derived.ts";
import { useProject } from "./workbench.ts";

/** What the open project comes to, its parts named in the language of the page. */
export function useDerived(): Derived {
  return derivedOf(useProject(), useLanguage());
}
