import { contourBox } from "../../../../core/geometry/contourArcs.ts";
import type { Panel } from "../../../../core/panels/panel.ts";
import { sizedPanelOf } from "../../../../core/project/sizedPanels.ts";
import { ChoiceBlank, LengthBlank } from "../../../fields/blanks.tsx";
import { useProject } from "../../../state/workbench.ts";
import { useTexts } from "../../../texts/texts.ts";
import type { MarkProps } from "./DrawnPicture.tsx";

const REACH = { minMm: -20_000, maxMm: 20_000 };

/** The grain arrow: as the shape has it, or from one point to another. */
export function GrainArrow({ panel, path, set }: Omit<MarkProps, "onMark">) {
  const words = useTexts().marks.marks;
  const outline = sizedPanelOf(useProject(), panel.id)?.outline;
  const { grainArrow } = panel;
  const setArrow = (next: Panel["grainArrow"], key?: string) => set({ grainArrow: next }, words.arrowLabel, key);
  const start = (): Panel["grainArrow"] => {
    if (outline === undefined) return [0, 0, 100, 0];
    const { minX, maxX, minY, maxY } = contourBox(outline.contour);
    const angle = (outline.arrowDeg * Math.PI) / 180;
    const reach = Math.min(maxX - minX, maxY - minY) / 3;
    const [dx, dy] = [Math.cos(angle) * reach, Math.sin(angle) * reach];
    const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
    return [Math.round(x - dx), Math.round(y - dy), Math.round(x + dx), Math.round(y + dy)];
  };
  return (
    <p class="sentence">
      {words.arrow(
        <ChoiceBlank<"usual" | "own">
          label={words.arrowLabel}
          path={path("grainArrow")}
          value={grainArrow === undefined ? "usual" : "own"}
          options={[
            ["usual", words.arrows.usual],
            ["own", words.arrows.own],
          ]}
          onValue={(way) => setArrow(way === "usual" ? undefined : start())}
        />,
      )}{" "}
      {grainArrow !== undefined &&
        words.arrowPoints(
          ...(([0, 1, 2, 3] as const).map((k) => (
            <LengthBlank
              key={k}
              label={words.arrowPoint[k]!}
              path={path(`grainArrow[${k}]`)}
              value={grainArrow[k]}
              range={REACH}
              onValue={(mm, key) => setArrow(grainArrow.with(k, mm) as unknown as Panel["grainArrow"], key)}
            />
          )) as [unknown, unknown, unknown, unknown] as Parameters<typeof words.arrowPoints>),
        )}
    </p>
  );
}
