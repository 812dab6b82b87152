import type { Panel } from "../../../../core/panels/panel.ts";
import type { Seam, SeamEdge } from "../../../../core/panels/seams.ts";
import { measuredSeams } from "../../../../core/project/unevenSeams.ts";
import { PANEL_WORDS } from "../../../../core/words/words.ts";
import { ChoiceBlank, LengthBlank } from "../../../fields/blanks.tsx";
import { EdgeBlank, edgesOf } from "../../../fields/EdgeBlank.tsx";
import { Icon } from "../../../parts/Icon.tsx";
import { useChange, useProject } from "../../../state/workbench.ts";
import { useLanguage, useTexts } from "../../../texts/texts.ts";
import type { Marked } from "./DrawnPicture.tsx";
import { useSeamWords } from "./SeamTroubles.tsx";

type Side = "first" | "second";

/** The seams of a panel: which edges meet, how long both sides are, and one more seam. */
export function SeamList({ panel, onMark }: { panel: Panel; onMark: (marked: Marked) => void }) {
  const words = useTexts().marks.seams;
  const project = useProject();
  const change = useChange();
  const said = useSeamWords();
  const measured = measuredSeams(project, PANEL_WORDS[useLanguage()]);
  const { seams = [], panels } = project;
  const setSeams = (next: readonly Seam[], key?: string) =>
    change((now) => ({ ...now, seams: next }), words.changed, key);
  const edge = (id: string, at = 0): SeamEdge => ({ panel: id, edge: edgesOf(project, id).at(at)! });
  const add = () => {
    const other = panels.find(({ id }) => id !== panel.id) ?? panel;
    setSeams([...seams, { first: [edge(panel.id)], second: [edge(other.id, other === panel ? -1 : 0)] }]);
  };
  return (
    <>
      <ul class="edge-list">
        {seams.map((seam, i) =>
          [...seam.first, ...seam.second].some((one) => one.panel === panel.id) ? (
            <li key={i} class="sentence">
              {words.meets(side(seam, i, "first"), side(seam, i, "second"))}{" "}
              {words.ease(
                <LengthBlank
                  label={words.easeLabel(i + 1)}
                  path={`seams[${i}].ease`}
                  value={seam.ease ?? 0}
                  range={EASE}
                  onValue={(ease, key) => setSeams(seams.with(i, { ...seam, ease }), key)}
                />,
              )}{" "}
              <button
                type="button"
                class="press plain"
                aria-label={words.remove(i + 1)}
                onClick={() => setSeams(seams.toSpliced(i, 1))}
              >
                <Icon name="bin" />
              </button>
              {measured[i] && (
                <p class={measured[i].isEven ? "soft small" : "refusal"} role="status">
                  {said(measured[i], seam.ease ?? 0)}
                </p>
              )}
            </li>
          ) : null,
        )}
      </ul>
      <div class="row">
        <button type="button" class="press" onClick={add}>
          <Icon name="plus" /> {words.add}
        </button>
      </div>
    </>
  );

  /** Edges of one side, each a panel and its edge, with one more or one less. */
  function side(seam: Seam, i: number, which: Side) {
    const edges = seam[which];
    const put = (next: readonly SeamEdge[]) => setSeams(seams.with(i, { ...seam, [which]: next }));
    return (
      <>
        {edges.map((one, k) => (
          <span key={k} onFocusIn={() => one.panel === panel.id && onMark({ kind: "edge", edge: one.edge })}>
            {words.edge(
              <ChoiceBlank<string>
                label={words.panelLabel(i + 1, which, k + 1)}
                path={`seams[${i}].${which}[${k}].panel`}
                value={one.panel}
                options={panels.map(({ id, name }) => [id, name] as const)}
                onValue={(id) => put(edges.with(k, edge(id)))}
              />,
              <EdgeBlank
                label={words.edgeLabel(i + 1, which, k + 1)}
                path={`seams[${i}].${which}[${k}].edge`}
                value={one.edge}
                edges={edgesOf(project, one.panel)}
                onValue={(next) => {
                  put(edges.with(k, { ...one, edge: next }));
                  if (one.panel === panel.id) onMark({ kind: "edge", edge: next });
                }}
              />,
            )}
            {edges.length > 1 && (
              <button
                type="button"
                class="press plain"
                aria-label={words.removeEdge(i + 1, which, k + 1)}
                onClick={() => put(edges.toSpliced(k, 1))}
              >
                −
              </button>
            )}{" "}
          </span>
        ))}
        <button
          type="button"
          class="press plain"
          aria-label={words.addEdge(i + 1, which)}
          title={words.addEdge(i + 1, which)}
          onClick={() => put([...edges, edge(edges.at(-1)!.panel)])}
        >
          +
        </button>
      </>
    );
  }
}

/** What one side may be longer than the other on purpose, mm. */
const EASE = { minMm: -1000, maxMm: 1000 };
