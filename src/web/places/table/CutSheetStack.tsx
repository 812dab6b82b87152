import { contourBox } from "../../../core/geometry/contourArcs.ts";
import type { CutPiece } from "../../../core/materials/cutPiece.ts";
import { formatLength } from "../../../core/units/formatLength.ts";
import { useTexts } from "../../texts/texts.ts";
import { SaveFiles } from "./SaveFiles.tsx";
import type { StackInput } from "./tableParts.ts";

/** Every piece with its size in both units, count and grain, to read, print or save. */
export function CutSheetStack(input: StackInput) {
  const texts = useTexts();
  const words = texts.table.sheet;
  const { project, pieces } = input;
  return (
    <section class="stack" aria-label={texts.table.stackNames.sheet}>
      <div class="sheet row not-on-paper">
        <SaveFiles main input={input} label={words.savePdf} wanted={({ name }) => name === "cut-sheet.pdf"} />
        <SaveFiles input={input} label={words.saveCsv} wanted={({ name }) => name === "cut-sheet.csv"} />
        <SaveFiles input={input} label={words.saveLabels} wanted={({ name }) => name === "labels.pdf"} />
      </div>
      {project.materials.map((material) => {
        const own = pieces.filter(({ materialId }) => materialId === material.id);
        return (
          own.length > 0 && (
            <section key={material.id} class="sheet stack" aria-label={material.name}>
              <h2>{material.name}</h2>
              {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keys */}
              <div class="wide-table" tabIndex={0} role="group" aria-label={words.tableOf(material.name)}>
                <table>
                  <thead>
                    <tr>
                      <th scope="col">{words.piece}</th>
                      <th scope="col">{words.count}</th>
                      <th scope="col">{words.along}</th>
                      <th scope="col">{words.across}</th>
                      <th scope="col">{words.grain}</th>
                    </tr>
                  </thead>
                  <tbody>
                    {own.map((piece) => (
                      <PieceRow key={piece.id} piece={piece} />
                    ))}
                  </tbody>
                </table>
              </div>
            </section>
          )
        );
      })}
      <p class="caution">{words.caution}</p>
    </section>
  );
}

function PieceRow({ piece }: { piece: CutPiece }) {
  const texts = useTexts();
  const box = contourBox(piece.contour);
  const both = (mm: number) => `${formatLength(mm, "mm")} · ${formatLength(mm, "in/16")}`;
  return (
    <tr>
      <th scope="row">{piece.name}</th>
      <td>{texts.table.sheet.counted(piece.count, piece.mirroredCount)}</td>
      <td class="number">{both(box.maxX - box.minX)}</td>
      <td class="number">{both(box.maxY - box.minY)}</td>
      <td>{texts.grains[piece.grain]}</td>
    </tr>
  );
}
