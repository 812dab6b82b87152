import { CENTRED_ON, type Centred, type CentredOn, type Match } from "../../../core/panels/match.ts";
import type { Panel } from "../../../core/panels/panel.ts";
import type { SeamEdge } from "../../../core/panels/seams.ts";
import { ChoiceBlank } from "../../fields/blanks.tsx";
import { EdgeBlank, edgesOf } from "../../fields/EdgeBlank.tsx";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { useDerived } from "../../state/derived.ts";
import { useChange, useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { EdgeBoard } from "./EdgeBoard.tsx";

/** Edges of panels that meet on the pattern, and parts that have their place on it, each by a choice of names. */
export function MatchList({ materialId }: { materialId: string }) {
  const words = useTexts().matching;
  const project = useProject();
  const change = useChange();
  const { matches = [], centred = [] } = project;
  const panels = project.panels.filter((panel) => isOf(panel, materialId));
  const parts = [...panels, ...project.straps.filter(({ materials }) => materials.outer === materialId)];
  const setMatches = (next: readonly Match[]) => change((now) => ({ ...now, matches: next }), words.changed);
  const setCentred = (next: readonly Centred[]) => change((now) => ({ ...now, centred: next }), words.changed);
  const { troubles } = useDerived();
  const troublesAt = (at: string) => troubles.filter(({ path }) => path === at || path.startsWith(`${at}.`));
  const here = new Set(parts.map(({ id }) => id));
  const start = (panel: Panel | undefined): SeamEdge => ({
    panel: panel!.id,
    edge: edgesOf(project, panel!.id)[0]!,
  });
  return (
    <>
      <EdgeBoard
        panels={panels}
        matches={matches}
        onPair={(first, second) => setMatches([...matches, { first, second }])}
      />
      <ol class="stack">
        {matches.map((match, i) =>
          here.has(match.first.panel) || here.has(match.second.panel) ? (
            <li key={`seam-${i}`} class="sentence">
              {words.seam(
                ...edgeBlanks("first", match, i, (next) => setMatches(matches.with(i, next))),
                ...edgeBlanks("second", match, i, (next) => setMatches(matches.with(i, next))),
              )}{" "}
              <button
                type="button"
                class="press plain"
                aria-label={words.remove(i + 1)}
                onClick={() => setMatches(matches.toSpliced(i, 1))}
              >
                <Icon name="bin" />
              </button>{" "}
              <Refusal problems={troublesAt(`matches[${i}]`)} />
            </li>
          ) : null,
        )}
        {centred.map((one, i) =>
          here.has(one.part) ? (
            <li key={`place-${i}`} class="sentence">
              {words.centred(
                <ChoiceBlank<string>
                  label={words.centredPart(i + 1)}
                  path={`centred[${i}].part`}
                  value={one.part}
                  options={parts.map(({ id, name }) => [id, name] as const)}
                  onValue={(part) => setCentred(centred.with(i, { ...one, part }))}
                />,
                <ChoiceBlank<CentredOn>
                  label={words.centredOnLabel(i + 1)}
                  path={`centred[${i}].on`}
                  value={one.on}
                  options={CENTRED_ON.map((on) => [on, words.centredOn[on]] as const)}
                  onValue={(on) => setCentred(centred.with(i, { ...one, on }))}
                />,
              )}{" "}
              <button
                type="button"
                class="press plain"
                aria-label={words.removeCentred(i + 1)}
                onClick={() => setCentred(centred.toSpliced(i, 1))}
              >
                <Icon name="bin" />
              </button>{" "}
              <Refusal problems={troublesAt(`centred[${i}]`)} />
            </li>
          ) : null,
        )}
      </ol>
      <div class="row">
        <button
          type="button"
          class="press"
          disabled={panels.length === 0}
          onClick={() => setMatches([...matches, { first: start(panels[0]), second: start(panels.at(-1)) }])}
        >
          <Icon name="plus" /> {words.addSeam}
        </button>
        <button
          type="button"
          class="press"
          disabled={parts.length === 0}
          onClick={() => setCentred([...centred, { part: parts[0]!.id, on: "line" }])}
        >
          <Icon name="plus" /> {words.addCentred}
        </button>
      </div>
    </>
  );

  /** The panel and the edge of one side. */
  function edgeBlanks(side: "first" | "second", match: Match, i: number, onMatch: (next: Match) => void) {
    const at = match[side];
    const labels = side === "first" ? [words.firstPanel, words.firstEdge] : [words.secondPanel, words.secondEdge];
    const edges = edgesOf(project, at.panel);
    const set = (next: SeamEdge) => onMatch({ ...match, [side]: next });
    return [
      <ChoiceBlank<string>
        key="panel"
        label={labels[0]!(i + 1)}
        path={`matches[${i}].${side}.panel`}
        value={at.panel}
        options={panels.map(({ id, name }) => [id, name] as const)}
        onValue={(panel) => set({ panel, edge: edgesOf(project, panel)[0]! })}
      />,
      <EdgeBlank
        key="edge"
        label={labels[1]!(i + 1)}
        path={`matches[${i}].${side}.edge`}
        value={at.edge}
        edges={edges}
        onValue={(edge) => set({ ...at, edge })}
      />,
    ] as const;
  }
}

function isOf({ materialId, lining, interfacing }: Panel, id: string): boolean {
  return [materialId, lining?.materialId, interfacing?.materialId].includes(id);
}
