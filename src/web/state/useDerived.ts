import type { ProjectJob } from "../../core/job/projectJob.ts";
import { useLanguage } from "../texts/texts.ts";
import { derivedOf } from "./derived.ts";
import { useProject } from "./workbench.ts";

/** What the open project comes to, its parts named in the language of the page. */
export function useDerived(): ProjectJob {
  return derivedOf(useProject(), useLanguage());
}
