import type { Translation } from "../oneLanguage.ts";
import { batchSentences } from "./batchSentences.ts";
import { cautions } from "./cautions.ts";
import { cupboardSentences } from "./cupboardSentences.ts";
import { cutSheet } from "./cutSheet.ts";
import { fileSentences } from "./fileSentences.ts";
import { files } from "./files.ts";
import { laySentences } from "./laySentences.ts";
import { lengthSentences } from "./lengthSentences.ts";
import { matchSentences } from "./matchSentences.ts";
import { panelSentences } from "./panelSentences.ts";
import { panels } from "./panels.ts";
import { paper } from "./paper.ts";
import { patternSentences } from "./patternSentences.ts";
import { ruler } from "./ruler.ts";
import { shopping } from "./shopping.ts";
import { strapSentences } from "./strapSentences.ts";
import { straps } from "./straps.ts";

const brought = { ...lengthSentences, ...fileSentences, ...patternSentences, ...batchSentences };
const made = { ...panelSentences, ...strapSentences, ...matchSentences, ...laySentences, ...cupboardSentences };

/** Everything said in French; no maker has read it yet. */
export const fr: Translation = {
  called: "Français",
  draft: "brouillon",
  problems: { ...brought, ...made },
  cautions,
  straps,
  panels,
  ruler,
  paper,
  cutSheet,
  files,
  shopping,
};
