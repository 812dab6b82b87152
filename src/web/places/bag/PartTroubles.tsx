import { Refusal } from "../../fields/TypedBlank.tsx";
import { troublesOf } from "../../state/derived.ts";
import { useProject } from "../../state/workbench.ts";

/** What stands in the way of cutting this part, with the next step. */
export function PartTroubles({ path, partId }: { path: string; partId: string }) {
  const problems = troublesOf(useProject()).filter(
    (problem) => problem.path.startsWith(path) || problem.path === partId,
  );
  return <Refusal problems={problems} />;
}
