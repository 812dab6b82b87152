import { useMemo } from "preact/hooks";
import { pinFaults } from "../../core/job/pinFaults.ts";
import { Refusal } from "../fields/TypedBlank.tsx";
import { useDerived } from "../state/derived.ts";
import { useChange, useProject } from "../state/workbench.ts";
import { useTexts } from "../texts/texts.ts";
import { Icon } from "./Icon.tsx";

/** Told of each cloth at once; the rest is told when these are out. */
const TOLD = 6;

/** Pieces that are pinned where they cannot lie, from a file or since the bag was changed, and the way out. */
export function PinTroubles() {
  const words = useTexts().leftOut;
  const project = useProject();
  const { lays } = useDerived();
  const change = useChange();
  const faults = useMemo(() => lays.flatMap(({ problem }) => pinFaults(project, problem)), [project, lays]);
  if (faults.length === 0) return null;
  const wrong = new Set(faults.map(({ path }) => path));
  const takeOut = () =>
    change((now) => ({ ...now, pins: now.pins.filter((_, i) => !wrong.has(`pins[${i}]`)) }), words.takePinsOut);
  return (
    <section class="left-out pin-troubles" role="alert" aria-label={words.pinsLabel}>
      <p>{words.pinsTold}</p>
      <Refusal problems={faults.slice(0, TOLD)} />
      <p>
        <button type="button" class="press" onClick={takeOut}>
          <Icon name="bin" /> {words.takePinsOut}
        </button>
      </p>
    </section>
  );
}
