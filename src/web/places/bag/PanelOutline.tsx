import type { Panel } from "../../../core/panels/panel.ts";
import { withPanel } from "../../../core/project/edits.ts";
import { HALF_SIDES, type HalfSide, withHalf, withOutline, withWhole } from "../../../core/project/outlineEdits.ts";
import { sizedPanelOf } from "../../../core/project/sizedPanels.ts";
import { ChoiceBlank } from "../../fields/blanks.tsx";
import { OutlineDesk } from "../../parts/outline/OutlineDesk.tsx";
import { useChange, useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** A panel's own outline on the drawing desk, whole or as the half beside its fold. */
export function PanelOutline({ panel, path }: { panel: Panel; path: string }) {
  const texts = useTexts();
  const words = texts.outline;
  const project = useProject();
  const change = useChange();
  const { id, shape } = panel;
  if (shape.kind !== "outline") return null;
  const label = `${panel.name}: ${texts.shape.label}`;
  const fold = sizedPanelOf(project, id)?.foldEdge ?? null;
  const isHalf = panel.foldEdge !== null;
  const sides = isHalf ? [] : HALF_SIDES.filter((side) => withHalf(project, id, side) !== null);
  const setHalf = (next: HalfSide | "whole" | "mirrored") => {
    if (next === "mirrored") return;
    change((now) => (next === "whole" ? withWhole(now, id) : withHalf(now, id, next)) ?? now, label);
  };
  return (
    <>
      <OutlineDesk
        name={panel.name}
        path={path}
        contour={shape.contour}
        fold={fold}
        onContour={(contour, key) => change((now) => withOutline(now, id, contour), label, key)}
        onFold={(edge) => change((now) => withPanel(now, id, { foldEdge: edge }), label)}
      />
      <p class="sentence">
        {words.drawnAs(
          <ChoiceBlank<HalfSide | "whole" | "mirrored">
            label={words.drawnAsLabel}
            path={`${path}.half`}
            value={isHalf ? "mirrored" : "whole"}
            options={[
              ["whole", words.whole],
              ...(isHalf ? [["mirrored", words.mirrored] as const] : []),
              ...sides.map((side) => [side, words.halves[side]] as const),
            ]}
            onValue={setHalf}
          />,
        )}
      </p>
    </>
  );
}
