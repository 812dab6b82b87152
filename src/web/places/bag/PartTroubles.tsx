import { Refusal } from "../../fields/TypedBlank.tsx";
import { useDerived } from "../../state/useDerived.ts";

/** What stands in the way of cutting this part, with the next step. */
export function PartTroubles({ path, partId }: { path: string; partId: string }) {
  const problems = useDerived().troubles.filter(
    (problem) => problem.path.startsWith(path) || problem.path === partId,
  );
  return <Refusal problems={problems} />;
}
