import { useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import { correctedPattern, lineKey, linesNow } from "../../../../core/patterns/correctPattern.ts";
import type { PatternRole } from "../../../../core/patterns/patternOutline.ts";
import { patternPanels } from "../../../../core/patterns/patternPanels.ts";
import { PATTERN_UNITS } from "../../../../core/patterns/scaleDoubts.ts";
import type { Mend } from "../../../../core/patterns/understandPattern.ts";
import { ChoiceBlank } from "../../../fields/blanks.tsx";
import { useBroughtIntoView } from "../../../parts/useBroughtIntoView.ts";
import type { PatternWish, ReadPattern } from "../../../patterns/protocol.ts";
import { usePatternReading } from "../../../patterns/usePatternReading.ts";
import { useTexts } from "../../../texts/texts.ts";
import { CorrectedLine } from "./CorrectedLine.tsx";
import { FoundPanels } from "./FoundPanels.tsx";
import { MendPicture } from "./MendPicture.tsx";
import { PatternLie } from "./PatternLie.tsx";
import { PatternOutlines } from "./PatternOutlines.tsx";
import { PatternTroubles } from "./PatternTroubles.tsx";
import { useCorrections } from "./useCorrections.ts";

/** A maker's own pattern before it comes in: what was understood, what is wrong, and what it becomes. */
export function PatternSheet({ file, onClose }: { file: File; onClose: () => void }) {
  const { pattern: words } = useTexts();
  const [wish, setWish] = useState<PatternWish>({ lie: {}, mend: [], unit: "", roles: {}, rolesAt: [] });
  const { read: asRead, state, stop } = usePatternReading(file, wish);
  const hand = useCorrections();
  const { corrections } = hand;
  const read = useMemo(() => {
    if (asRead === null || corrections.size === 0) return asRead;
    const pattern = correctedPattern(asRead.pattern, corrections);
    return { pattern, panels: patternPanels(pattern) };
  }, [asRead, corrections]);
  /** Key of the line on the drawing desk. */
  const [onDesk, setOnDesk] = useState<string | null>(null);
  const lines = asRead?.pattern.outlines ?? [];
  const line = lines.find((one) => lineKey(one) === onDesk);
  // A line that is mended is the same line to her: what she put right of it stays, and so does the desk it is on.
  const before = useRef(asRead);
  useLayoutEffect(() => {
    const old = before.current?.pattern.outlines ?? [];
    before.current = asRead;
    if (asRead === null || old.length === 0) return;
    const became = linesNow(old, asRead.pattern.outlines);
    if (became.size === 0) return;
    hand.carry(became);
    setOnDesk((key) => (key === null ? null : (became.get(key)?.key ?? key)));
  }, [asRead]);
  const opened = useBroughtIntoView<HTMLElement>();
  const drawn = useRef<{ readonly read: ReadPattern; readonly unit: string } | null>(null);
  if (asRead !== null && state === "read" && !isMended(asRead)) drawn.current = { read: asRead, unit: wish.unit };
  const asDrawn = drawn.current?.unit === wish.unit ? drawn.current.read : null;
  const onMend = (mend: Mend, isWanted: boolean) =>
    setWish((now) => ({
      ...now,
      mend: isWanted ? [...now.mend, mend] : now.mend.filter((each) => each !== mend),
      // Joined lines are counted anew, and a line without a name of its own is known by its number: what she said of
      // it is kept by a point of it, unless points move too.
      ...(mend === "gaps" ? byPoint(asRead) : byName(asRead)),
    }));
  const onRole = (name: string, role: PatternRole) =>
    setWish((now) => ({ ...now, roles: { ...now.roles, [name]: role } }));
  const isReading = state === "reading";
  const presses = (
    <>
      {isReading && (
        <button type="button" class="press" onClick={stop}>
          {words.stop}
        </button>
      )}
      <button type="button" class="press plain" onClick={onClose}>
        {words.leave}
      </button>
    </>
  );
  return (
    <section ref={opened} class="sheet stack" aria-label={words.heading} aria-busy={isReading}>
      <h2>{words.heading}</h2>
      <PatternLie file={file} onLie={(lie) => setWish((now) => ({ ...now, lie, roles: {}, rolesAt: [] }))} />
      {read !== null && (
        <Understood
          file={file}
          read={read}
          asDrawn={asDrawn}
          wish={wish}
          onUnit={(unit) => setWish((now) => ({ ...now, unit, ...byName(asRead) }))}
          onMend={onMend}
          onRole={onRole}
          isCorrected={(i) => corrections.has(lineKey(lines[i]!))}
          onCorrect={(i) => setOnDesk(lineKey(lines[i]!))}
        />
      )}
      {line !== undefined && (
        <CorrectedLine
          key={onDesk}
          line={line}
          others={lines.filter((one) => one !== line)}
          picture={asRead?.pattern.picture}
          hand={hand}
          onDone={() => setOnDesk(null)}
        />
      )}
      <p role="status">{state === "read" ? "" : words.states[state](file.name)}</p>
      {read === null ? (
        <div class="row">{presses}</div>
      ) : (
        <FoundPanels file={file.name} read={read} isStale={state !== "read"} onClose={onClose}>
          {presses}
        </FoundPanels>
      )}
    </section>
  );
}

function isMended({ pattern }: ReadPattern): boolean {
  return pattern.problems.some((problem) => "mended" in problem && problem.mended);
}

type Roles = Pick<PatternWish, "roles" | "rolesAt">;

/** What she has said lines are for, by a point of each. */
function byPoint(read: ReadPattern | null): Roles {
  const asked = read?.pattern.outlines.filter(({ reason }) => reason === "asked") ?? [];
  const rolesAt = asked.map(({ contour, role }) => ({ x: contour.vertices[0]!, y: contour.vertices[1]!, role }));
  return { roles: {}, rolesAt };
}

/** The same by the names of the lines. */
function byName(read: ReadPattern | null): Roles {
  const asked = read?.pattern.outlines.filter(({ reason }) => reason === "asked") ?? [];
  return { roles: Object.fromEntries(asked.map(({ name, role }) => [name, role])), rolesAt: [] };
}

function Understood(props: {
  file: File;
  read: ReadPattern;
  /** The same before anything was mended. */
  asDrawn: ReadPattern | null;
  wish: PatternWish;
  onUnit: (unit: string) => void;
  onMend: (mend: Mend, isWanted: boolean) => void;
  onRole: (name: string, role: PatternRole) => void;
  isCorrected: (line: number) => boolean;
  onCorrect: (line: number) => void;
}) {
  const { pattern: words } = useTexts();
  const { pattern } = props.read;
  const units = [
    ["", words.asTheFileSays] as const,
    ...Object.keys(PATTERN_UNITS).map((unit) => [unit, words.units(unit)] as const),
  ];
  const unit = (
    <ChoiceBlank
      label={words.unit}
      path="pattern.unit"
      value={props.wish.unit}
      options={units}
      onValue={props.onUnit}
    />
  );
  return (
    <>
      {pattern.outlines.length > 0 && (
        <p class="sentence">{words.came(props.file.name, pattern.outlines.length, unit)}</p>
      )}
      <PatternTroubles problems={pattern.problems} onMend={props.onMend} />
      {props.asDrawn !== null && isMended(props.read) && (
        <MendPicture drawn={props.asDrawn.pattern.outlines} mended={pattern.outlines} />
      )}
      <PatternOutlines
        outlines={pattern.outlines}
        onRole={props.onRole}
        isCorrected={props.isCorrected}
        onCorrect={props.onCorrect}
      />
    </>
  );
}
