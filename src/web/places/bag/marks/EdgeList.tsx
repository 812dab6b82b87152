import { edgeRun, runLength } from "../../../../core/panels/edgeRun.ts";
import type { CornerStyle, EdgeRef, EdgeWish } from "../../../../core/panels/panel.ts";
import { MOST_ALLOWANCE } from "../../../../core/panels/sizePanels.ts";
import { lengthNow, sizedPanelOf } from "../../../../core/project/sizedPanels.ts";
import { ChoiceBlank, LengthBlank, Tick } from "../../../fields/blanks.tsx";
import { EdgeBlank, edgesOf, useEdgeWords } from "../../../fields/EdgeBlank.tsx";
import { useLengths } from "../../../fields/units.ts";
import { useProject } from "../../../state/workbench.ts";
import { useTexts } from "../../../texts/texts.ts";
import type { MarkProps } from "./DrawnPicture.tsx";

/** Corner styles in the order they are offered. */
const STYLES: readonly CornerStyle[] = ["mitred", "square", "blunted", "folded-back"];
const RANGE = { minMm: 0, maxMm: MOST_ALLOWANCE };

/** Which line the outline is, what lies on a fold, and of each edge its allowance, hem and corner. */
export function EdgeList({ panel, path, set, onMark }: MarkProps) {
  const words = useTexts().marks.edges;
  const said = useEdgeWords();
  const project = useProject();
  const edges = edgesOf(project, panel.id);
  const styles = STYLES.map((style) => [style, words.styles[style]] as const);
  return (
    <>
      <p class="sentence">
        {words.drawn(
          <ChoiceBlank<"stitch" | "cut">
            label={words.drawnLabel}
            path={path("drawn")}
            value={panel.drawn ?? "stitch"}
            options={[
              ["stitch", words.drawnAs.stitch],
              ["cut", words.drawnAs.cut],
            ]}
            onValue={(drawn) => set({ drawn }, words.drawnLabel)}
          />,
        )}{" "}
        {words.fold(
          <EdgeBlank<EdgeRef | null>
            label={words.foldLabel}
            path={path("fold")}
            value={panel.foldEdge}
            edges={edges}
            none={words.noFold}
            onValue={(foldEdge) => set({ foldEdge }, words.foldLabel)}
          />,
        )}{" "}
        {words.corners(
          <ChoiceBlank<CornerStyle>
            label={words.cornersLabel}
            path={path("cornerStyle")}
            value={panel.cornerStyle ?? "mitred"}
            options={styles}
            onValue={(cornerStyle) => set({ cornerStyle }, words.cornersLabel)}
          />,
        )}
      </p>
      <ul class="edge-list" aria-label={words.list}>
        {edges.map((edge) => (
          <li key={String(edge)}>
            <EdgeRow edge={edge} panel={panel} path={path} set={set} onMark={onMark} />
            <span class="own-line" onFocusIn={() => onMark({ kind: "corner", edge })}>
              {words.corner(
                <ChoiceBlank<CornerStyle | "">
                  label={words.cornerLabel(said(edge))}
                  path={path(`corners.${edge}`)}
                  value={panel.corners?.find(({ corner }) => corner === edge)?.style ?? ""}
                  options={[["", words.asOthers], ...styles]}
                  onValue={(style) => setCorner(edge, style)}
                />,
              )}
            </span>
          </li>
        ))}
      </ul>
    </>
  );

  function setCorner(corner: EdgeRef, style: CornerStyle | ""): void {
    const others = (panel.corners ?? []).filter((one) => one.corner !== corner);
    set({ corners: style === "" ? others : [...others, { corner, style }] }, words.cornerLabel(said(corner)));
  }
}

/** One edge: how long it is, its allowance, and whether that is a hem. */
function EdgeRow({ edge, panel, path, set, onMark }: MarkProps & { edge: EdgeRef }) {
  const words = useTexts().marks.edges;
  const lengths = useLengths();
  const name = useEdgeWords()(edge);
  const project = useProject();
  const outline = sizedPanelOf(project, panel.id)?.outline;
  const run = outline && edgeRun(outline, edge);
  const length = lengths.size(run ? runLength(outline.contour, run) : 0);
  const wish = panel.edges?.find((one) => one.edge === edge);
  const setWish = (part: Partial<EdgeWish>, label: string, key?: string) => {
    const { allowance, hem } = { ...wish, ...part };
    const next = { edge, ...(allowance === undefined ? {} : { allowance }), ...(hem ? { hem } : {}) };
    const others = (panel.edges ?? []).filter((one) => one.edge !== edge);
    set({ edges: allowance === undefined && !hem ? others : [...others, next] }, label, key);
  };
  const title = <strong>{name}</strong>;
  if (panel.foldEdge === edge) return <span>{words.onFold(title, length)} </span>;
  return (
    <span onFocusIn={() => onMark({ kind: "edge", edge })}>
      {words.edge(
        title,
        length,
        <LengthBlank
          label={words.widthLabel(name)}
          path={path(`edges.${edge}.allowance`)}
          value={lengthNow(project, wish?.allowance ?? panel.seamAllowance) ?? 0}
          range={RANGE}
          onValue={(allowance, key) => setWish({ allowance }, words.widthLabel(name), key)}
        />,
      )}{" "}
      {wish?.allowance !== undefined && (
        <button
          type="button"
          class="press plain"
          aria-label={words.asAllRoundLabel(name)}
          onClick={() => setWish({ allowance: undefined }, words.asAllRound)}
        >
          {words.asAllRound}
        </button>
      )}{" "}
      <Tick
        label={words.hem}
        name={words.hemLabel(name)}
        path={path(`edges.${edge}.hem`)}
        value={wish?.hem ?? false}
        onValue={(hem) => setWish({ hem }, words.hemLabel(name))}
      />{" "}
    </span>
  );
}
