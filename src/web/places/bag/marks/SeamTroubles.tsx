import { measuredSeams } from "../../../../core/project/unevenSeams.ts";
import { PANEL_WORDS } from "../../../../core/words/words.ts";
import { routeHash } from "../../../state/route.ts";
import { useProject } from "../../../state/workbench.ts";
import { useLanguage, useTexts } from "../../../texts/texts.ts";
import { useSeamWords } from "./seamWords.ts";

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
