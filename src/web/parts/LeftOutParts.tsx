import { Refusal } from "../fields/TypedBlank.tsx";
import { useDerived } from "../state/derived.ts";
import { leftOutParts } from "../state/leftOutParts.ts";
import { routeHash } from "../state/route.ts";
import { useProject } from "../state/workbench.ts";
import { useTexts } from "../texts/texts.ts";
import { PinTroubles } from "./PinTroubles.tsx";

/** What cannot be as the project has it: parts that cannot be worked out, pieces pinned where they cannot lie. */
export function LeftOutParts() {
  return (
    <>
      <UncountedParts />
      <PinTroubles />
    </>
  );
}

/** Straps and panels that cannot be worked out: nothing that is laid, printed, listed or bought counts them. */
function UncountedParts() {
  const words = useTexts().leftOut;
  const parts = leftOutParts(useProject(), useDerived().troubles);
  if (parts.length === 0) return null;
  return (
    <section class="left-out" aria-label={words.label}>
      <p>{words.told(parts.length)}</p>
      <ul class="stack">
        {parts.map(({ id, name, problems }) => (
          <li key={id}>
            {id === "" ? <strong>{name}</strong> : <a href={routeHash("bag", id)}>{name}</a>}{" "}
            <Refusal problems={problems} />
          </li>
        ))}
      </ul>
    </section>
  );
}
