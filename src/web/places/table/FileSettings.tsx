import { isDrawn, styledAs } from "../../../core/drawing/list/roleStyles.ts";
import { ok, type Result } from "../../../core/problems/problem.ts";
import { LAYER_NAME } from "../../../core/project/outputProblems.ts";
import type { DrawingRole, LineWish, OutputSettings } from "../../../core/project/outputSettings.ts";
import { DRAWING_ROLES, OUTPUT_CHOICES } from "../../../core/project/outputSettings.ts";
import { ChoiceBlank, LengthBlank } from "../../fields/blanks.tsx";
import { TypedBlank } from "../../fields/TypedBlank.tsx";
import { useTexts } from "../../texts/texts.ts";
import type { SetOutput } from "./tableParts.ts";

/** Letters, shared edges, layers and lines of the SVG and DXF files, each choice with what follows from it. */
export function FileSettings({ output, set }: { output: OutputSettings; set: SetOutput }) {
  const words = useTexts().table.files;
  const { letters, sharedEdges } = output;
  return (
    <details class="more">
      <summary>{words.summary}</summary>
      <div class="stack">
        <p class="sentence">
          {words.sentence(
            <ChoiceBlank<OutputSettings["letters"]>
              label={words.lettersLabel}
              path="output.letters"
              value={letters}
              options={OUTPUT_CHOICES.letters.map((choice) => [choice, words.letters[choice]])}
              onValue={(next) => set({ letters: next }, words.lettersLabel)}
            />,
            <ChoiceBlank<OutputSettings["sharedEdges"]>
              label={words.sharedLabel}
              path="output.sharedEdges"
              value={sharedEdges}
              options={OUTPUT_CHOICES.sharedEdges.map((choice) => [choice, words.shared[choice]])}
              onValue={(next) => set({ sharedEdges: next }, words.sharedLabel)}
            />,
          )}
        </p>
        <p class="soft">{`${words.lettersTold[letters]} ${words.sharedTold[sharedEdges]}`}</p>
        <LineTable output={output} set={set} />
        <p class="soft">{words.linesTold}</p>
      </div>
    </details>
  );
}

function LineTable({ output, set }: { output: OutputSettings; set: SetOutput }) {
  const words = useTexts().table.files;
  return (
    /* biome-ignore lint/a11y/noNoninteractiveTabindex: a wide table is scrolled by keys */
    <div class="wide-table file-lines" tabIndex={0} role="group" aria-label={words.lines}>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.role}</th>
            <th scope="col">{words.draw}</th>
            <th scope="col">{words.layer}</th>
            <th scope="col">{words.color}</th>
            <th scope="col">{words.width}</th>
          </tr>
        </thead>
        <tbody>
          {DRAWING_ROLES.toReversed().map((role) => (
            <LineRow key={role} role={role} output={output} set={set} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function LineRow({ role, output, set }: { role: DrawingRole; output: OutputSettings; set: SetOutput }) {
  const words = useTexts().table.files;
  const line = output.lines[role] ?? {};
  const style = styledAs(output.lines)[role];
  const name = words.roles[role];
  const path = `output.lines.${role}`;
  const put = (part: LineWish, label: string, key?: string) =>
    set({ lines: { ...output.lines, [role]: { ...line, ...part } } }, `${name}: ${label}`, key);
  return (
    <tr>
      <th scope="row">{name}</th>
      <td>
        <input
          type="checkbox"
          aria-label={`${name}: ${words.draw}`}
          data-path={`${path}.draw`}
          checked={isDrawn(role, output.lines, output.machine !== null)}
          onChange={(event) => put({ draw: event.currentTarget.checked }, words.draw)}
        />
      </td>
      <td>
        <TypedBlank
          label={`${name}: ${words.layer}`}
          path={`${path}.layer`}
          written={line.layer ?? role}
          read={(text) => readLayer(text, `${path}.layer`)}
          onValue={(layer, key) => put({ layer }, words.layer, key)}
        />
      </td>
      <td>
        <input
          type="color"
          aria-label={`${name}: ${words.color}`}
          data-path={`${path}.color`}
          value={style.color}
          onChange={(event) => put({ color: event.currentTarget.value }, words.color)}
        />
      </td>
      <td>
        <LengthBlank
          fine
          label={`${name}: ${words.width}`}
          path={`${path}.width`}
          value={style.width}
          range={{ minMm: 0.01, maxMm: 5 }}
          onValue={(width, key) => put({ width }, words.width, key)}
        />
      </td>
    </tr>
  );
}

function readLayer(text: string, path: string): Result<string> {
  const layer = text.trim();
  if (LAYER_NAME.test(layer)) return ok(layer);
  return { ok: false, problems: [{ code: "layer-name-unusable", path, value: layer }] };
}
