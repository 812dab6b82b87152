import { useState } from "preact/hooks";
import { PAPERS, paperNamed } from "../../../../core/project/papers.ts";
import { ChoiceBlank, CountBlank, LengthBlank } from "../../../fields/blanks.tsx";
import type { PatternLie as Lie } from "../../../patterns/protocol.ts";
import { useTexts } from "../../../texts/texts.ts";
import { PhotoPoints, type Spot } from "./PhotoPoints.tsx";

interface LieProps {
  readonly file: File;
  readonly onLie: (lie: Lie) => void;
}

/** How the sheets of a PDF lie, or what says how large things in a photograph are; nothing for other files. */
export function PatternLie(props: LieProps) {
  const { name, type } = props.file;
  if (type === "application/pdf" || /\.pdf$/iu.test(name)) return <PdfSheets {...props} />;
  if (type.startsWith("image/") && !type.includes("svg")) return <PhotoScale {...props} />;
  return null;
}

const SHEETS = ["marked", "rows"] as const;

/** Sheets that nothing joins, laid in rows by hand. */
function PdfSheets({ onLie }: LieProps) {
  const { lie: words } = useTexts().pattern;
  const [way, setWay] = useState<(typeof SHEETS)[number]>("marked");
  const [rows, setRows] = useState({ columns: 2, rows: 1, trim: 0 });
  const put = (next: typeof rows) => {
    setRows(next);
    onLie({ sheets: next });
  };
  return (
    <p class="sentence">
      {words.sheets(
        <ChoiceBlank
          label={words.sheetsLabel}
          path="pattern.sheets"
          value={way}
          options={SHEETS.map((each) => [each, words.sheetWays[each]] as const)}
          onValue={(next) => {
            setWay(next);
            onLie(next === "rows" ? { sheets: rows } : {});
          }}
        />,
      )}{" "}
      {way === "rows" &&
        words.inRows(
          <CountBlank
            label={words.columnsLabel}
            path="pattern.columns"
            value={rows.columns}
            max={100}
            onValue={(columns) => put({ ...rows, columns })}
          />,
          <CountBlank
            label={words.rowsLabel}
            path="pattern.rows"
            value={rows.rows}
            max={100}
            onValue={(count) => put({ ...rows, rows: count })}
          />,
          <LengthBlank
            label={words.trimLabel}
            path="pattern.trim"
            value={rows.trim}
            range={{ minMm: 0, maxMm: 100 }}
            onValue={(trim) => put({ ...rows, trim })}
          />,
        )}
    </p>
  );
}

const SCALES = ["photo-sheet", "paper", "corners", "points"] as const;

/** A photograph without our sheet: by a sheet of paper of known size, found or pressed, or by two points. */
function PhotoScale({ file, onLie }: LieProps) {
  const { lie: words } = useTexts().pattern;
  const [way, setWay] = useState<(typeof SCALES)[number]>("photo-sheet");
  const [paper, setPaper] = useState("A4");
  const [spots, setSpots] = useState<readonly Spot[]>([]);
  const [apart, setApart] = useState(100);
  const put = (next: typeof way, id: string, pressed: readonly Spot[], apartMm: number) => {
    setWay(next);
    setPaper(id);
    setSpots(pressed);
    setApart(apartMm);
    const { width, height } = paperNamed(id)!;
    const sheet = { widthMm: width, heightMm: height };
    if (next === "photo-sheet") onLie({});
    if (next === "paper") onLie({ image: { sheet } });
    if (next === "corners" && pressed.length === 4) onLie({ image: { sheet, corners: pressed } });
    if (next === "points" && pressed.length === 2)
      onLie({ image: { points: [pressed[0]!, pressed[1]!], apartMm } });
  };
  const wanted = way === "corners" ? 4 : way === "points" ? 2 : 0;
  return (
    <div class="stack">
      <p class="sentence">
        {words.scale(
          <ChoiceBlank
            label={words.scaleLabel}
            path="pattern.scale"
            value={way}
            options={SCALES.map((each) => [each, words.scaleWays[each]] as const)}
            onValue={(next) => put(next, paper, [], apart)}
          />,
        )}{" "}
        {(way === "paper" || way === "corners") &&
          words.paper(
            <ChoiceBlank
              label={words.paperLabel}
              path="pattern.paper"
              value={paper}
              options={PAPERS.map(({ id }) => [id, id] as const)}
              onValue={(id) => put(way, id, spots, apart)}
            />,
          )}
        {way === "points" &&
          words.apart(
            <LengthBlank
              label={words.apartLabel}
              path="pattern.apart"
              value={apart}
              range={{ minMm: 1, maxMm: 10_000 }}
              onValue={(mm) => put(way, paper, spots, mm)}
            />,
          )}
      </p>
      {wanted > 0 && (
        <PhotoPoints file={file} wanted={wanted} spots={spots} onSpots={(next) => put(way, paper, next, apart)} />
      )}
    </div>
  );
}
