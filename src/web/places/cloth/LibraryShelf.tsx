import { Icon } from "../../parts/Icon.tsx";
import { routeHash } from "../../state/route.ts";
import { useStore } from "../../state/store.ts";
import { useChange, useProject, useWorkbench } from "../../state/workbench.ts";
import { takenInto } from "../../storage/materialLibrary.ts";
import { useTexts } from "../../texts/texts.ts";
import { Swatch } from "./Swatch.tsx";

/** Her own materials that this project does not have yet: a press brings one in, with its price, folds and rolls. */
export function LibraryShelf() {
  const texts = useTexts();
  const words = texts.cloth.library;
  const { library } = useWorkbench();
  const project = useProject();
  const change = useChange();
  const all = useStore(library.materials, (materials) => materials);
  const others = all.filter(({ name }) => project.materials.every((own) => own.name !== name));
  if (others.length === 0) return null;
  return (
    <details class="more" open={project.materials.length < 2}>
      <summary>{words.heading}</summary>
      <ul class="shelf">
        {others.map((material) => (
          <li key={material.name} class="library-card">
            <button
              type="button"
              class="card"
              onClick={() => {
                const fresh = takenInto(project, material);
                change((now) => ({ ...now, materials: [...now.materials, fresh] }), material.name);
                location.hash = routeHash("cloth", fresh.id);
              }}
            >
              <Swatch material={material} />
              <span class="card-name">{material.name}</span>
              <span class="soft small">{texts.kinds[material.kind]}</span>
            </button>
            <button
              type="button"
              class="press plain"
              aria-label={words.forget(material.name)}
              title={words.forget(material.name)}
              onClick={() => library.forget(material.name)}
            >
              <Icon name="bin" />
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
