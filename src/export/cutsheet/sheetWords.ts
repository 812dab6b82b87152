import { purchaseOf } from "../../core/buying/purchase.ts";
import { shopLength } from "../../core/buying/shopLength.ts";
import { strapPictures } from "../../core/drawing/strap/strapPictures.ts";
import type { LaidCloth } from "../../core/job/laidCloth.ts";
import { strapMaterial } from "../../core/project/cutList.ts";
import { paperOf } from "../../core/project/papers.ts";
import type { Project } from "../../core/project/project.ts";
import { rulerOffers } from "../../core/straps/build/roundToRuler.ts";
import type { StrapResult } from "../../core/straps/build/strapResult.ts";
import type { HardwareNeeded } from "../../core/straps/wish/strapWish.ts";
import { cutLength } from "../../core/units/cutLength.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { phraseText } from "../../core/words/phrase.ts";
import { type ConsumableCode, hardwareName, type StrapWords } from "../../core/words/strapWords.ts";
import { SHEET_TEXTS, STRAP_WORDS } from "../../core/words/words.ts";
import type { Amount, CutSheetInput } from "./cutSheet.ts";
import { roomOn } from "./flow.ts";
import { layWords } from "./layWords.ts";
import { moneyText } from "./moneyText.ts";

/** Whether a project's lengths are written in inches or yards: only then do inches stand on what is printed. */
export function readsInches({ output }: Pick<Project, "output">): boolean {
  return output.lengths.startsWith("in") || output.lengths.startsWith("yd");
}

type SheetWords = Omit<CutSheetInput, "project" | "bags" | "materials" | "pieces">;

/** What the cut sheet says besides the pieces: lay, purchase, thread and tape, order of work, cautions, pictures. */
export function sheetWords(
  project: Project,
  straps: readonly StrapResult[],
  lays: readonly LaidCloth[],
  language: Language,
): SheetWords {
  const write = (mm: number): string => cutLength(mm, project.output.lengths, language);
  const words = STRAP_WORDS[language];
  const inUnits = (strap: StrapResult) => (readsInches(project) ? strap : { ...strap, inches: null });
  return {
    lay: new Map(lays.map((cloth) => [cloth.material.id, layWords(cloth, project, language)])),
    purchase: lays.flatMap((cloth) => purchaseRow(cloth, project, language)),
    consumables: [...hardware(straps, project, words), ...consumables(straps, project, words)],
    work: straps.map((strap) => ({
      title: strap.wish.name,
      lead: [...needleLine(strap, words), ...rulerLines(strap, project, language)],
      steps: strap.steps.map((step) => phraseText(step, write, words)),
    })),
    mind: straps.flatMap((strap) =>
      strap.warnings.map((warning) => `${strap.wish.name}: ${phraseText(warning, write, words)}`),
    ),
    cautions: straps.flatMap((strap) => strap.cautions),
    pictures: straps.flatMap((strap) =>
      strapPictures(inUnits(strap), words, roomOn(paperOf(project.output.paper))).map(({ caption, drawing }) => ({
        title: `${strap.wish.name}: ${caption}`,
        drawing,
      })),
    ),
  };
}

function needleLine({ sewnWith }: StrapResult, words: StrapWords): string[] {
  if (sewnWith === null) return [];
  const said = words.sewnWith(sewnWith.needle, sewnWith.thread);
  return [`${said.charAt(0).toUpperCase()}${said.slice(1)}.`];
}

/** Cut widths that a ruler has and the finished widths they result in; within the strip's place on the plan. */
function rulerLines(strap: StrapResult, { materials, output }: Project, language: Language): string[] {
  const outer = materials.find(({ id }) => id === strap.wish.materials.outer);
  // Strips that will shrink are cut larger than the strap's own width.
  const shrinks =
    outer?.shrinkage.when === "after-making" && outer.shrinkage.lengthwise + outer.shrinkage.crosswise > 0;
  if (shrinks) return [];
  const system = readsInches({ output }) ? "inches" : "metric";
  const write = (mm: number): string => cutLength(mm, output.lengths, language);
  return rulerOffers(strap, materials.map(strapMaterial), system, "down").map(({ cutWidth, finishedWidth }) =>
    SHEET_TEXTS[language].onRuler(write(cutWidth), write(finishedWidth)),
  );
}

function purchaseRow({ material, plan }: LaidCloth, project: Project, language: Language): Amount[] {
  const { buyLength, toPay } = purchaseOf(material, plan, project);
  if (buyLength === 0) return [];
  const cost = toPay === null ? "" : `, ${moneyText(toPay, project.currency, language)}`;
  return [{ what: material.name, amount: `${shopLength(buyLength, material.price, language)}${cost}` }];
}

/** Rings, sliders and clasps for all bags, equal ones added up. */
function hardware(straps: readonly StrapResult[], { bags, output }: Project, words: StrapWords): Amount[] {
  const write = (mm: number): string => cutLength(mm, output.lengths, words.language);
  const sums = new Map<string, HardwareNeeded>();
  for (const one of straps.flatMap((strap) => strap.hardware)) {
    const key = JSON.stringify({ ...one, count: 0 });
    sums.set(key, { ...one, count: (sums.get(key)?.count ?? 0) + one.count * bags });
  }
  return [...sums.values()].map((one) => ({
    what: hardwareName(one, words, write),
    amount: String(one.count),
  }));
}

/** Tape, thread, cord and the like for all bags, equal ones added up. */
function consumables(straps: readonly StrapResult[], project: Project, words: StrapWords): Amount[] {
  const sums = new Map<ConsumableCode, number>();
  for (const { code, mm } of straps.flatMap((strap) => strap.consumables))
    sums.set(code, (sums.get(code) ?? 0) + mm * project.bags);
  // Bought by the metre or the yard, whatever the pieces are measured in.
  const style = readsInches(project) ? "yd/8" : "m";
  return [...sums].map(([code, mm]) => ({
    what: words.consumables[code],
    amount: formatLength(Math.ceil(mm / 10) * 10, style, words.language),
  }));
}
