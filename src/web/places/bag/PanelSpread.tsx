import { useState } from "preact/hooks";
import { contourBox } from "../../../core/geometry/contourArcs.ts";
import type { Panel, PanelShape } from "../../../core/panels/panel.ts";
import { freshIdIn, withPanel, withPartCopied } from "../../../core/project/edits.ts";
import { withPanelShape } from "../../../core/project/reshapedPanel.ts";
import { lengthNow } from "../../../core/project/sizedPanels.ts";
import { CountBlank, GrainBlank, LengthBlank, TextBlank } from "../../fields/blanks.tsx";
import { useLengths } from "../../fields/units.ts";
import { PiecePicture } from "../../parts/PiecePicture.tsx";
import { Term } from "../../parts/Term.tsx";
import { useDerived } from "../../state/derived.ts";
import { routeHash } from "../../state/route.ts";
import { freshName } from "../../state/session.ts";
import { useChange, useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { FollowedSizes } from "./FollowedSizes.tsx";
import { FollowingPieces } from "./FollowingPieces.tsx";
import { MaterialBlank } from "./MaterialBlank.tsx";
import type { Marked } from "./marks/DrawnPicture.tsx";
import { DrawnPicture } from "./marks/DrawnPicture.tsx";
import { PanelMarks } from "./marks/PanelMarks.tsx";
import { partNames } from "./newParts.ts";
import { PanelOutline } from "./PanelOutline.tsx";
import { PanelShapeWords, ShapePicture } from "./PanelShapeWords.tsx";
import { PartTroubles, Spread } from "./Spread.tsx";

/** A panel of the bag's body, opened. */
export function PanelSpread({ panel }: { panel: Panel }) {
  const texts = useTexts();
  const project = useProject();
  const change = useChange();
  const words = texts.bag.panel;
  const path = (field: string) => `panels[${project.panels.indexOf(panel)}].${field}`;
  const set = (part: Partial<Panel>, label: string, key?: string) =>
    change((now) => withPanel(now, panel.id, part), `${panel.name}: ${label}`, key);
  const setShape = (shape: PanelShape, label: string, key?: string) =>
    change((now) => withPanelShape(now, panel.id, shape), `${panel.name}: ${label}`, key);
  const [marked, setMarked] = useState<Marked | null>(null);
  const [openParts, setOpenParts] = useState(0);
  const picture = openParts > 0 ? <DrawnPicture panel={panel} marked={marked} /> : <PanelPicture panel={panel} />;
  const copy = () => {
    const id = freshIdIn(project, "panel");
    const name = freshName(texts.bag.copyName(panel.name), partNames(project));
    change((now) => withPartCopied(now, panel.id, { id, name }), texts.bag.copy);
    location.hash = routeHash("bag", id);
  };
  return (
    <Spread id={panel.id} name={panel.name} picture={picture} onCopy={copy}>
      <TextBlank
        labelled
        label={texts.bag.name}
        path={path("name")}
        value={panel.name}
        onValue={(name, key) => set({ name }, texts.bag.name, key)}
      />
      <p class="sentence">
        <PanelShapeWords panel={panel} path={path("shape")} onShape={setShape} />{" "}
        {words.seam(
          <LengthBlank
            label={words.seamLabel}
            path={path("seamAllowance")}
            value={lengthNow(project, panel.seamAllowance) ?? 0}
            range={{ minMm: 0, maxMm: 100 }}
            onValue={(seamAllowance, key) => set({ seamAllowance }, words.seamLabel, key)}
          />,
          <Term id="seamAllowance" />,
          <MaterialBlank
            label={texts.bag.material}
            path={path("materialId")}
            value={panel.materialId}
            onValue={(materialId, key) => materialId !== null && set({ materialId }, texts.bag.material, key)}
          />,
        )}{" "}
        {words.counts(
          <CountBlank
            label={words.countLabel}
            path={path("count")}
            value={panel.count}
            min={0}
            max={999}
            onValue={(count, key) => set({ count }, words.countLabel, key)}
          />,
          <CountBlank
            label={words.mirroredLabel}
            path={path("mirroredCount")}
            value={panel.mirroredCount}
            min={0}
            max={999}
            onValue={(mirroredCount, key) => set({ mirroredCount }, words.mirroredLabel, key)}
          />,
        )}{" "}
        {words.grain(
          <Term id="grain" />,
          <GrainBlank
            label={words.grainLabel}
            path={path("grain")}
            value={panel.grain}
            onValue={(grain) => set({ grain }, words.grainLabel)}
          />,
        )}
      </p>
      <PanelOutline panel={panel} path={path("shape.contour")} />
      <FollowedSizes panel={panel} path={path("shape")} onShape={setShape} />
      <ShapePicture panel={panel} />
      <PanelMarks
        panel={panel}
        path={path}
        set={set}
        onMark={setMarked}
        onOpen={(isOpen) => setOpenParts((count) => count + (isOpen ? 1 : -1))}
      />
      <FollowingPieces panel={panel} path={path} set={set} />
      <PartTroubles path={`panels[${project.panels.indexOf(panel)}]`} partId={panel.id} />
    </Spread>
  );
}

function PanelPicture({ panel }: { panel: Panel }) {
  const texts = useTexts();
  const lengths = useLengths();
  const piece = useDerived().pieces.find(({ partId }) => partId === panel.id);
  if (piece === undefined) return null;
  const box = contourBox(piece.contour);
  const size = lengths.box(box.maxX - box.minX, box.maxY - box.minY);
  return (
    <figure class="stack">
      <PiecePicture piece={piece} name={texts.bag.pictureOf(piece.name, size)} />
      <figcaption>{texts.bag.cutSize(size)}</figcaption>
    </figure>
  );
}
