import { useMemo } from "preact/hooks";
import { addBag } from "../../../core/bags/addBag.ts";
import { startBag } from "../../../core/bags/startBag.ts";
import { STARTERS, type Starter, starterBag } from "../../../core/bags/starters.ts";
import { cutListOf } from "../../../core/project/cutList.ts";
import type { Project } from "../../../core/project/project.ts";
import { PANEL_WORDS } from "../../../core/words/words.ts";
import { useLengths } from "../../fields/units.ts";
import { frameOf, ShelfPicture, turned } from "../../parts/ShelfPicture.tsx";
import { useChange, useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

/**
 * Bags to begin from: a press makes every part of one, from its measures; in a bag that has parts they come besides.
 * Their fronts are seen at one scale.
 */
export function StarterShelf({ isMore }: { isMore?: boolean }) {
  const texts = useTexts();
  const parts = PANEL_WORDS[useLanguage()];
  const words = texts.bag.starters;
  const change = useChange();
  const project = useProject();
  const lengths = useLengths();
  const inches = lengths.units.system === "inches";
  const made = (now: Project, starter: Starter): Project => {
    // A project that has a name of its own keeps it.
    const name = now.name === texts.project.newName && !isMore ? parts.starters[starter] : now.name;
    return addBag({ ...now, name }, starterBag(starter, inches), parts, parts.starters[starter]);
  };
  const cards = useMemo(
    () =>
      STARTERS.map((starter) => {
        const list = cutListOf(startBag(project, starterBag(starter, inches), parts));
        const pieces = list.ok ? list.value.pieces.filter(({ kind }) => kind === "panel") : [];
        return {
          starter,
          wish: starterBag(starter, inches),
          front: pieces[0] && turned(pieces[0]),
          count: list.ok ? list.value.pieces.length : 0,
        };
      }),
    [project, inches, parts],
  );
  const frame = frameOf(cards.flatMap(({ front }) => front ?? []));
  return (
    <section class="stack" aria-label={isMore ? words.add : words.heading}>
      {!isMore && <h3>{words.heading}</h3>}
      <ul class="starters">
        {cards.map(({ starter, wish, front, count }) => (
          <li key={starter}>
            <button
              type="button"
              class="card"
              data-starter={starter}
              onClick={() => change((now) => made(now, starter), parts.starters[starter])}
            >
              <span class="card-picture" aria-hidden="true">
                {front !== undefined && <ShelfPicture piece={front} frame={frame} />}
              </span>
              <span class="card-name">{parts.starters[starter]}</span>
              <span class="soft small">
                {lengths.box(wish.width, wish.height)}, {words.deep(lengths.size(wish.depth))}
                <br />
                {words.about(parts.about[wish.body], count)}
              </span>
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}
