import type { Problem } from "../../core/problems/problem.ts";
import type { Project } from "../../core/project/project.ts";

/** A strap or panel that cannot be worked out, and why. `id` is empty for what concerns the whole project. */
export interface LeftOutPart {
  readonly id: string;
  readonly name: string;
  readonly problems: readonly Problem[];
}

const PLACE = /^(straps|panels)\[(\d+)\]/u;

/** The parts that the problems speak of, in the order of the shelf. */
export function leftOutParts(project: Project, problems: readonly Problem[]): readonly LeftOutPart[] {
  const shelf = [...project.straps, ...project.panels];
  const partOf = ({ path }: Problem) => {
    const [, list, index] = PLACE.exec(path) ?? [];
    if (list === "straps") return project.straps[Number(index)];
    if (list === "panels") return project.panels[Number(index)];
    return shelf.find(({ id }) => id === path);
  };
  const of = (part: ReturnType<typeof partOf>) => problems.filter((problem) => partOf(problem) === part);
  const whole = of(undefined);
  return [
    ...(whole.length === 0 ? [] : [{ id: "", name: project.name, problems: whole }]),
    ...shelf.flatMap((part) => {
      const own = of(part);
      return own.length === 0 ? [] : [{ id: part.id, name: part.name, problems: own }];
    }),
  ];
}
