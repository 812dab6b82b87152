import { type MeasuredSeam, measuredSeams } from "../../../../core/project/unevenSeams.ts";
import { PANEL_WORDS } from "../../../../core/words/words.ts";
import { useLengths } from "../../../fields/units.ts";
import { routeHash } from "../../../state/route.ts";
import { useProject } from "../../../state/workbench.ts";
import { useLanguage, useTexts } from "../../../texts/texts.ts";

/** Seams of the bag whose sides differ, each with the way to its first panel; nothing when all fit. */
export function SeamTroubles() {
  const words = useTexts().marks.seams;
  const project = useProject();
  const said = useSeamWords();
  const measured = measuredSeams(project, PANEL_WORDS[useLanguage()]);
  const uneven = measured.flatMap((seam, i) => (seam.isEven ? [] : [{ seam, wish: project.seams![i]! }]));
  if (uneven.length === 0) return null;
  return (
    <section class="sheet stack" aria-label={words.troubles}>
      <h2>{words.troubles}</h2>
      <ul class="pattern-troubles stack">
        {uneven.map(({ seam, wish }, i) => {
          const { panel: id } = wish.first[0]!;
          return (
            <li key={i}>
              {said(seam, wish.ease ?? 0)}{" "}
              <a href={routeHash("bag", id)}>
                {words.open(project.panels.find((panel) => panel.id === id)?.name ?? id)}
              </a>
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Gives the words for a seam: whether its sides fit, and which is longer by how much. */
export function useSeamWords(): (seam: MeasuredSeam, ease: number) => string {
  const words = useTexts().marks.seams;
  const lengths = useLengths();
  return ({ first, second, firstMm, secondMm, overMm, isEven }, ease) => {
    if (isEven) return (ease === 0 ? words.even : words.meantEven)(lengths.size(firstMm), lengths.size(secondMm));
    const over = lengths.size(Math.abs(overMm));
    return overMm > 0 ? words.uneven(first, second, over) : words.uneven(second, first, over);
  };
}
