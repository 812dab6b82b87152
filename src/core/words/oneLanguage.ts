import type { CautionTable } from "../materials/caution.ts";
import type { Sentences } from "../problems/problem.ts";
import type { FileTexts } from "./fileTexts.ts";
import type { PanelWords } from "./panelWords.ts";
import type { PaperTexts } from "./paperTexts.ts";
import type { RulerTexts } from "./rulerTexts.ts";
import type { SheetTexts } from "./sheetTexts.ts";
import type { ShoppingTexts } from "./shoppingTexts.ts";
import type { SpokenStraps } from "./strapWords.ts";

/** Everything the core and the files say in one language; a language that lacks a word does not compile. */
export interface Words {
  /** What the language calls itself. */
  readonly called: string;
  /** Its word for what no maker has read yet; null where one has. */
  readonly draft: string | null;
  readonly problems: Sentences;
  readonly cautions: CautionTable;
  readonly straps: SpokenStraps;
  readonly panels: PanelWords;
  readonly ruler: RulerTexts;
  /** Drawings and printed sheets. */
  readonly paper: PaperTexts;
  readonly cutSheet: SheetTexts;
  /** What each file is for. */
  readonly files: FileTexts;
  readonly shopping: ShoppingTexts;
}
