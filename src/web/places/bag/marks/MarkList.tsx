import type { ComponentChildren } from "preact";
import { contourBox } from "../../../../core/geometry/contourArcs.ts";
import type { Measure } from "../../../../core/panels/measure.ts";
import type { DrillPoint, Notch, NotchCut, PanelText } from "../../../../core/panels/panel.ts";
import { lengthNow, sizedPanelOf } from "../../../../core/project/sizedPanels.ts";
import { ChoiceBlank, LengthBlank, ShareBlank, TextBlank } from "../../../fields/blanks.tsx";
import { EdgeBlank, edgesOf } from "../../../fields/EdgeBlank.tsx";
import { Icon } from "../../../parts/Icon.tsx";
import { useProject } from "../../../state/workbench.ts";
import { useTexts } from "../../../texts/texts.ts";
import type { MarkProps } from "./DrawnPicture.tsx";
import { GrainArrow } from "./GrainArrow.tsx";

const CUTS: readonly NotchCut[] = ["slit", "in", "out"];

/** Notches by their place on an edge, holes and words by theirs on the panel, and the grain arrow. */
export function MarkList({ panel, path, set, onMark }: MarkProps) {
  const words = useTexts().marks.marks;
  const project = useProject();
  const { notches, drills = [], texts = [] } = panel;
  const edges = edgesOf(project, panel.id);
  const outline = sizedPanelOf(project, panel.id)?.outline;
  const box = outline && contourBox(outline.contour);
  const middle = box
    ? { x: Math.round((box.minX + box.maxX) / 2), y: Math.round((box.minY + box.maxY) / 2) }
    : { x: 0, y: 0 };
  const setNotches = (next: readonly Notch[], key?: string) => set({ notches: next }, words.changed, key);
  const setDrills = (next: readonly DrillPoint[], key?: string) => set({ drills: next }, words.changed, key);
  const setTexts = (next: readonly PanelText[], key?: string) => set({ texts: next }, words.changed, key);
  return (
    <>
      <ul class="edge-list">
        {notches.map((notch, i) => (
          <Row
            key={`notch-${i}`}
            remove={words.removeNotch(i + 1)}
            onRemove={() => setNotches(notches.toSpliced(i, 1))}
            onFocus={() => onMark({ kind: "edge", edge: notch.edge })}
          >
            {notchWords(notch, i)}
          </Row>
        ))}
        {drills.map((drill, i) => (
          <Row
            key={`drill-${i}`}
            remove={words.removeDrill(i + 1)}
            onRemove={() => setDrills(drills.toSpliced(i, 1))}
          >
            {words.drill(
              place(words.drillX(i + 1), `drills[${i}].x`, drill.x, (x, key) =>
                setDrills(drills.with(i, { ...drill, x }), key),
              ),
              place(words.drillY(i + 1), `drills[${i}].y`, drill.y, (y, key) =>
                setDrills(drills.with(i, { ...drill, y }), key),
              ),
              <TextBlank
                label={words.drillText(i + 1)}
                path={path(`drills[${i}].text`)}
                value={drill.text ?? ""}
                max={60}
                placeholder={words.noLetter}
                onValue={(text, key) => setDrills(drills.with(i, named(drill, "text", text)), key)}
              />,
            )}
          </Row>
        ))}
        {texts.map((one, i) => (
          <Row key={`text-${i}`} remove={words.removeText(i + 1)} onRemove={() => setTexts(texts.toSpliced(i, 1))}>
            {words.text(
              place(words.textX(i + 1), `texts[${i}].x`, one.x, (x, key) =>
                setTexts(texts.with(i, { ...one, x }), key),
              ),
              place(words.textY(i + 1), `texts[${i}].y`, one.y, (y, key) =>
                setTexts(texts.with(i, { ...one, y }), key),
              ),
              <TextBlank
                label={words.textText(i + 1)}
                path={path(`texts[${i}].text`)}
                value={one.text}
                max={200}
                onValue={(text, key) => setTexts(texts.with(i, { ...one, text }), key)}
              />,
            )}
          </Row>
        ))}
      </ul>
      <GrainArrow panel={panel} path={path} set={set} />
      <div class="row">
        {add(words.addNotch, () => setNotches([...notches, { edge: edges[0]!, at: { share: 0.5 } }]))}
        {add(words.addDrill, () => setDrills([...drills, middle]))}
        {add(words.addText, () => setTexts([...texts, { ...middle, text: words.newText }]))}
      </div>
    </>
  );

  function add(label: string, onAdd: () => void) {
    return (
      <button type="button" class="press" onClick={onAdd}>
        <Icon name="plus" /> {label}
      </button>
    );
  }

  function place(label: string, field: string, value: Measure, onValue: (mm: number, key: string) => void) {
    return (
      <LengthBlank
        label={label}
        path={path(field)}
        value={lengthNow(project, value) ?? 0}
        range={REACH}
        onValue={onValue}
      />
    );
  }

  function notchWords(notch: Notch, i: number): ComponentChildren {
    const n = i + 1;
    const put = (part: Partial<Notch>, key?: string) => setNotches(notches.with(i, { ...notch, ...part }), key);
    const { at } = notch;
    const share = typeof at === "object" && "share" in at ? at.share : null;
    return words.notch(
      <ChoiceBlank<NotchCut>
        label={words.notchCut(n)}
        path={path(`notches[${i}].cut`)}
        value={notch.cut ?? "slit"}
        options={CUTS.map((cut) => [cut, words.cuts[cut]] as const)}
        onValue={(cut) => put({ cut })}
      />,
      <EdgeBlank
        label={words.notchEdge(n)}
        path={path(`notches[${i}].edge`)}
        value={notch.edge}
        edges={edges}
        onValue={(edge) => {
          put({ edge });
          onMark({ kind: "edge", edge });
        }}
      />,
      share === null ? (
        <LengthBlank
          label={words.notchAt(n)}
          path={path(`notches[${i}].at`)}
          value={lengthNow(project, at as Measure) ?? 0}
          range={REACH}
          onValue={(mm, key) => put({ at: mm }, key)}
        />
      ) : (
        <ShareBlank
          label={words.notchAt(n)}
          path={path(`notches[${i}].at`)}
          value={share}
          max={1}
          onValue={(next, key) => put({ at: { share: next } }, key)}
        />
      ),
      <ChoiceBlank<"length" | "share">
        label={words.notchFrom(n)}
        path={path(`notches[${i}].from`)}
        value={share === null ? "length" : "share"}
        options={[
          ["length", words.froms.length],
          ["share", words.froms.share],
        ]}
        onValue={(from) => put({ at: from === "share" ? { share: 0.5 } : lengthAt(notch) })}
      />,
      <TextBlank
        label={words.notchMark(n)}
        path={path(`notches[${i}].mark`)}
        value={notch.mark ?? ""}
        max={8}
        placeholder={words.noLetter}
        onValue={(mark, key) => setNotches(notches.with(i, named(notch, "mark", mark)), key)}
      />,
    );
  }

  /** How far along its edge a notch stands now, to a tenth of a millimetre. */
  function lengthAt({ edge, at }: Notch): number {
    const isShare = typeof at === "object" && "share" in at;
    if (!isShare) return lengthNow(project, at) ?? 0;
    const mm = lengthNow(project, [{ of: panel.id, measure: String(edge), times: at.share }]) ?? 0;
    return Math.floor(mm * 10) / 10;
  }
}

/** Places of marks, mm. */
const REACH = { minMm: -20_000, maxMm: 20_000 };

/** The record with a word, or without when there is none. */
function named<T extends object, K extends keyof T>(record: T, key: K, word: string): T {
  const { [key]: _, ...rest } = record;
  const trimmed = word.trim();
  return (trimmed === "" ? rest : { ...rest, [key]: trimmed }) as T;
}

function Row(props: { remove: string; onRemove: () => void; onFocus?: () => void; children: ComponentChildren }) {
  return (
    <li class="sentence" onFocusIn={props.onFocus}>
      {props.children}{" "}
      <button type="button" class="press plain" aria-label={props.remove} onClick={props.onRemove}>
        <Icon name="bin" />
      </button>
    </li>
  );
}
