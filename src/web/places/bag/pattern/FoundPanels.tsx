import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Panel } from "../../../../core/panels/panel.ts";
import { MOST_ALLOWANCE } from "../../../../core/panels/sizePanels.ts";
import type { Problem } from "../../../../core/problems/problem.ts";
import { foundPanels } from "../../../../core/project/foundPanels.ts";
import { CountBlank, LengthBlank } from "../../../fields/blanks.tsx";
import { Refusal } from "../../../fields/TypedBlank.tsx";
import type { ReadPattern } from "../../../patterns/protocol.ts";
import { routeHash } from "../../../state/route.ts";
import { useChange, useProject, useRefusal } from "../../../state/workbench.ts";
import { useTexts } from "../../../texts/texts.ts";
import { MaterialBlank } from "../MaterialBlank.tsx";

/** What a pattern cannot say of its panels, and the press that adds them in one step. */
export function FoundPanels(props: {
  file: string;
  read: ReadPattern;
  /** What is shown is being read anew. */
  isStale: boolean;
  onClose: () => void;
  children: ComponentChildren;
}) {
  const { pattern: words } = useTexts();
  const project = useProject();
  const change = useChange();
  const takeRefusal = useRefusal();
  const inches = project.output.lengths.startsWith("in");
  const [chosen, setChosen] = useState<string | null>(null);
  const [count, setCount] = useState(1);
  const [seamAllowance, setAllowance] = useState(inches ? 9.525 : 10);
  const [refused, setRefused] = useState<{ of: ReadPattern; problems: readonly Problem[] } | null>(null);
  const { panels, pattern } = props.read;
  if (panels.length === 0)
    return (
      <>
        {pattern.outlines.length > 0 && <p>{words.noPanel}</p>}
        <div class="row">{props.children}</div>
      </>
    );
  const { materials } = project;
  const cloth = materials.find(({ kind }) => kind !== "interfacing" && kind !== "webbing") ?? materials[0]!;
  const materialId = materials.some(({ id }) => id === chosen) ? chosen! : cloth.id;
  const add = () => {
    const added = foundPanels(project, panels, { materialId, count, seamAllowance });
    change((now) => ({ ...now, panels: [...now.panels, ...added] }), words.added(props.file));
    const problems = takeRefusal().map((problem) => underName(problem, project.panels.length, added));
    setRefused({ of: props.read, problems });
    if (problems.length > 0) return;
    location.hash = routeHash("bag", added[0]!.id);
    props.onClose();
  };
  return (
    <>
      <p class="sentence">
        {words.becomes(
          panels.map(({ name }) => name),
          <MaterialBlank label={words.material} path="pattern.material" value={materialId} onValue={setChosen} />,
          <CountBlank label={words.count} path="pattern.count" value={count} max={1000} onValue={setCount} />,
        )}
        {panels.some((panel) => panel.seamAllowance === null) && (
          <>
            {" "}
            {words.sewn(
              <LengthBlank
                label={words.allowance}
                path="pattern.allowance"
                value={seamAllowance}
                range={{ minMm: 0, maxMm: MOST_ALLOWANCE }}
                onValue={setAllowance}
              />,
            )}
          </>
        )}
      </p>
      {refused?.of === props.read && <Refusal problems={refused.problems} isAway />}
      <div class="row">
        <button type="button" class="press main" disabled={props.isStale} onClick={add}>
          {words.add(panels.length)}
        </button>
        {props.children}
      </div>
    </>
  );
}

/** A refusal told of a panel's name instead of its place in a file that nobody has seen. */
function underName(problem: Problem, before: number, added: readonly Panel[]): Problem {
  const place = /^panels\[(\d+)\]/u.exec(problem.path);
  const panel = place ? added[Number(place[1]) - before] : undefined;
  return panel === undefined ? problem : { ...problem, path: panel.name };
}
