import type { ComponentChildren } from "preact";
import { useEffect, useMemo, useState } from "preact/hooks";
import type { Contour } from "../../../core/geometry/contour.ts";
import { poseContour } from "../../../core/geometry/contourArcs.ts";
import { LengthBlank } from "../../fields/blanks.tsx";
import { PicturePicker } from "../../parts/PicturePicker.tsx";
import { TablePhoto } from "../../parts/TablePhoto.tsx";
import type { PatternWish } from "../../patterns/protocol.ts";
import { usePatternReading } from "../../patterns/usePatternReading.ts";
import { useTexts } from "../../texts/texts.ts";

/** A photograph is read as it is: what is wrong with its lines is the maker's to draw. */
const AS_IT_IS: PatternWish = { lie: {}, mend: [], unit: "", roles: {}, rolesAt: [] };

interface PhotoProps {
  readonly path: string;
  /** How wide the leftover is now, mm: what a photograph without a scale is taken to show. */
  readonly wide: number;
  readonly onContour: (contour: Contour, label: string) => void;
  /** The desk, with what lies under the outline. */
  readonly children: (under: ComponentChildren | undefined) => ComponentChildren;
}

/** A photograph of a leftover under its outline, as long as the page is open: she draws over it. */
export function LeftoverPhoto(props: PhotoProps) {
  const words = useTexts().photos;
  const [file, setFile] = useState<File | null>(null);
  return (
    <>
      <div class="row">
        <PicturePicker label={words.underlay} picker="leftover" onFile={setFile} />
        {file !== null && (
          <button type="button" class="press plain" onClick={() => setFile(null)}>
            {words.takeAway}
          </button>
        )}
      </div>
      {file === null ? (
        props.children(undefined)
      ) : (
        <ReadPhoto key={`${file.name} ${file.lastModified}`} {...props} file={file} />
      )}
    </>
  );
}

/** With our photo sheet in it a photograph has its own scale and outline; without it, she says how wide it is. */
function ReadPhoto({ file, path, wide, onContour, children }: PhotoProps & { file: File }) {
  const words = useTexts().photos;
  const { read, state } = usePatternReading(file, AS_IT_IS);
  const picture = read?.pattern.picture;
  const outline = useMemo(
    () =>
      (read?.pattern.outlines ?? [])
        .filter(({ closed }) => closed)
        .reduce<{ areaMm2: number; contour: Contour; box: { minX: number; minY: number } } | null>(
          (most, each) => (most === null || each.areaMm2 > most.areaMm2 ? each : most),
          null,
        ),
    [read],
  );
  if (state === "reading") return <>{[<p class="soft">{words.reading}</p>, children(undefined)]}</>;
  if (picture === undefined)
    return (
      <PlainPhoto file={file} path={path} wide={wide}>
        {children}
      </PlainPhoto>
    );
  // The leftover's own frame begins at its corner, wherever it lay beside the sheet.
  const { minX, minY } = outline?.box ?? picture.box;
  return (
    <>
      <p class="soft">
        {words.straightened}{" "}
        {outline !== null && (
          <button
            type="button"
            class="press"
            onClick={() =>
              onContour(
                poseContour(outline.contour, { x: -minX, y: -minY, turnDeg: 0, mirrored: false }),
                words.tookOutline,
              )
            }
          >
            {words.takeOutline}
          </button>
        )}
      </p>
      {children(
        <g transform={`translate(${-minX} ${-minY})`}>
          <TablePhoto picture={picture} />
        </g>,
      )}
    </>
  );
}

function PlainPhoto(props: { file: File; path: string; wide: number; children: PhotoProps["children"] }) {
  const words = useTexts().photos;
  const [across, setAcross] = useState(Math.round(props.wide));
  const [shown, setShown] = useState<{ url: string; aspect: number } | "unread" | null>(null);
  useEffect(() => {
    const url = URL.createObjectURL(props.file);
    const picture = new Image();
    picture.onload = () => setShown({ url, aspect: picture.naturalHeight / picture.naturalWidth });
    picture.onerror = () => setShown("unread");
    picture.src = url;
    return () => URL.revokeObjectURL(url);
  }, [props.file]);
  if (shown === "unread")
    return (
      <>
        <p role="alert" class="refusal">
          {words.unread(props.file.name)}
        </p>
        {props.children(undefined)}
      </>
    );
  const high = shown === null ? 0 : across * shown.aspect;
  return (
    <>
      <p class="sentence">
        {words.shows(
          <LengthBlank
            label={words.showsLabel}
            path={`${props.path}.photo`}
            value={across}
            range={{ minMm: 20, maxMm: 10_000 }}
            onValue={setAcross}
          />,
        )}
      </p>
      {props.children(
        shown === null ? undefined : (
          <image
            href={shown.url}
            width={across}
            height={high}
            transform={`translate(0 ${high}) scale(1 -1)`}
            preserveAspectRatio="none"
          />
        ),
      )}
    </>
  );
}
