import { useEffect } from "preact/hooks";
import type { Project } from "../../../core/project/project.ts";
import { LeftOutParts } from "../../parts/LeftOutParts.tsx";
import type { LayState, Lays } from "../../state/layBoard.ts";
import { routeHash } from "../../state/route.ts";
import { useStore } from "../../state/store.ts";
import { useProject, useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { KeptPlanList } from "./KeptPlanList.tsx";
import { LayChoices } from "./LayChoices.tsx";
import { LayDetails } from "./LayDetails.tsx";
import { LayLine } from "./LayLine.tsx";
import { LayOptions } from "./LayOptions.tsx";
import { LayTable } from "./LayTable.tsx";
import { MoneySheet } from "./MoneySheet.tsx";
import { useChoices } from "./useChoices.ts";
import { useWays } from "./useWays.ts";

/** The plan of one material, to scale; the others one tap away. */
export function LayPlace({ open }: { open: string | null }) {
  const { board } = useWorkbench();
  const texts = useTexts();
  const project = useProject();
  const lays = useStore(board.lays, (all) => all);
  const chosen = (open === null ? undefined : lays.get(open)) ?? lays.values().next().value;
  const id = chosen?.job.material.id ?? null;
  useEffect(() => {
    board.attend(id);
    return () => board.attend(null);
  }, [board, id]);
  if (chosen === undefined || id === null)
    return (
      <div class="sheet stack empty">
        <h2>{texts.lay.emptyHeading}</h2>
        <p>{texts.lay.emptyWords}</p>
        <LeftOutParts />
        <p>
          <a href={routeHash("bag")}>{texts.lay.toBag}</a> · <a href={routeHash("cloth")}>{texts.lay.toCloth}</a>
        </p>
      </div>
    );
  return (
    <>
      <LeftOutParts />
      <div class="lay">
        {lays.size > 1 && (
          <nav class="row lay-materials" aria-label={texts.cloth.swatches}>
            {[...lays.values()].map(({ job: { material } }) => (
              <a
                key={material.id}
                class="press"
                href={routeHash("lay", material.id)}
                aria-current={material.id === id ? "true" : undefined}
              >
                {material.name}
              </a>
            ))}
          </nav>
        )}
        <LayView key={id} lay={chosen} lays={lays} project={project} />
      </div>
    </>
  );
}

/** The first screen is the plan and its line; what else there is to know and to choose comes below. */
function LayView({ lay, lays, project }: { lay: LayState; lays: Lays; project: Project }) {
  const ways = useWays(lay, project);
  const choices = useChoices(lay);
  return (
    <>
      <LayTable lay={lay} project={project} />
      <LayLine lay={lay} project={project} ways={ways} />
      <div class="lay-below">
        <LayDetails lay={lay} project={project} />
        <KeptPlanList lay={lay} />
        <LayOptions lay={lay} project={project} choices={choices} ways={ways} />
        <MoneySheet lays={lays} project={project} />
        <LayChoices lay={lay} project={project} choices={choices} />
      </div>
    </>
  );
}
