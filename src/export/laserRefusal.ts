import { laserRisk } from "../core/materials/laser.ts";
import type { Material } from "../core/materials/material.ts";
import type { OutputSettings } from "../core/project/outputSettings.ts";
import type { Language } from "../core/units/language.ts";
import { FILE_TEXTS } from "../core/words/words.ts";

/**
 * Why no drawing of the material may be sent to the project's machine, in a sentence with the remedy; null when it may,
 * or when there is no laser.
 */
export function laserRefusal(
  material: Material,
  { machine }: OutputSettings,
  language: Language = "en",
): string | null {
  const risk = machine?.tool === "laser" ? laserRisk(material) : null;
  return risk === null ? null : FILE_TEXTS[language].laserRefusal(material.name, risk);
}
