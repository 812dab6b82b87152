import { PATTERN_ROLES, type PatternOutline, type PatternRole } from "../../../../core/patterns/patternOutline.ts";
import { PANEL_WORDS } from "../../../../core/words/words.ts";
import { ChoiceBlank } from "../../../fields/blanks.tsx";
import { useLengths } from "../../../fields/units.ts";
import { contourPath } from "../../../parts/screenPath.ts";
import { useLanguage, useTexts } from "../../../texts/texts.ts";

/** So many outlines are shown; more are counted. */
const MOST_SHOWN = 60;

/** Each line of a pattern: its picture, its size and what it is for, which the maker may change. */
export function PatternOutlines(props: {
  outlines: readonly PatternOutline[];
  onRole: (name: string, role: PatternRole) => void;
  /** Whether a line was put right by hand. */
  isCorrected: (line: number) => boolean;
  onCorrect: (line: number) => void;
}) {
  const { pattern: words } = useTexts();
  const { lines } = PANEL_WORDS[useLanguage()];
  const lengths = useLengths();
  const { outlines } = props;
  if (outlines.length === 0) return null;
  const roles = PATTERN_ROLES.map((role) => [role, lines[role]] as const);
  return (
    <>
      <ul class="shelf" aria-label={words.lines}>
        {outlines.slice(0, MOST_SHOWN).map((outline, i) => {
          const { name, box, closed, role } = outline;
          return (
            <li key={name} class="card found-line">
              <OutlinePicture outline={outline} />
              <span class="card-name">{name}</span>
              <span class="stack found-words">
                <span class="soft small">
                  {lengths.box(box.maxX - box.minX, box.maxY - box.minY)}, {closed ? words.closed : words.open}
                  {props.isCorrected(i) && `, ${words.corrected}`}
                </span>
                <ChoiceBlank
                  label={words.takenFor(name)}
                  path={`pattern.roles.${name}`}
                  value={role}
                  options={roles}
                  onValue={(next) => props.onRole(name, next)}
                />
                {closed && (
                  <button type="button" class="press" onClick={() => props.onCorrect(i)}>
                    {words.correct}
                    <span class="only-read"> {name}</span>
                  </button>
                )}
              </span>
            </li>
          );
        })}
      </ul>
      {outlines.length > MOST_SHOWN && <p class="soft">{words.more(outlines.length - MOST_SHOWN)}</p>}
    </>
  );
}

function OutlinePicture({ outline: { box, contour, role, closed } }: { outline: PatternOutline }) {
  const width = box.maxX - box.minX;
  const height = box.maxY - box.minY;
  const pad = Math.max(width, height) * 0.04;
  return (
    <span class="card-picture" aria-hidden="true">
      {/* biome-ignore lint/a11y/noSvgWithoutTitle: hidden beside its name */}
      <svg
        class="drawing piece-picture"
        viewBox={`${box.minX - pad} ${-box.maxY - pad} ${width + 2 * pad} ${height + 2 * pad}`}
        preserveAspectRatio="xMidYMid meet"
      >
        <g transform="scale(1 -1)">
          <path class={`${closed ? "tone-piece " : ""}ink-${role}`} d={contourPath(contour)} />
        </g>
      </svg>
    </span>
  );
}
