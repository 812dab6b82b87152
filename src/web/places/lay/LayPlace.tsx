import { useEffect } from "preact/hooks";
import { LeftOutParts } from "../../parts/LeftOutParts.tsx";
import { routeHash } from "../../state/route.ts";
import { useStore } from "../../state/store.ts";
import { useProject, useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { LayAnswer } from "./LayAnswer.tsx";
import { LayChoices } from "./LayChoices.tsx";
import { LayTable } from "./LayTable.tsx";

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
        <LayTable key={id} lay={chosen} project={project} />
        <LayAnswer lay={chosen} project={project} />
      </div>
      <LayChoices key={`choices ${id}`} lay={chosen} project={project} />
    </>
  );
}
