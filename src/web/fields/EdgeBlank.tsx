import type { EdgeRef } from "../../core/panels/panel.ts";
import type { Project } from "../../core/project/project.ts";
import { sizedPanelOf } from "../../core/project/sizedPanels.ts";
import { PANEL_WORDS } from "../../core/words/words.ts";
import { useLanguage, useTexts } from "../texts/texts.ts";
import { ChoiceBlank } from "./blanks.tsx";

/** The edges of a panel by name, by number where they have none; edge 0 where it cannot be worked out. */
export function edgesOf(project: Project, id: string): readonly EdgeRef[] {
  const outline = sizedPanelOf(project, id)?.outline;
  if (outline === undefined) return [0];
  if (outline.edges.length > 0) return outline.edges.map(({ name }) => name);
  return Array.from({ length: outline.contour.vertices.length / 3 }, (_, i) => i);
}

/** Gives the words for an edge; without a name, its number counted from 1 as on the drawing desk. */
export function useEdgeWords(): (edge: EdgeRef) => string {
  const words = useTexts().matching;
  const names: Readonly<Record<string, string>> = PANEL_WORDS[useLanguage()].edges;
  return (edge) => {
    if (typeof edge === "number") return words.edgeNumber(edge + 1);
    return Object.hasOwn(names, edge) ? names[edge]! : edge;
  };
}

/** An edge of a panel by its name; with `none`, also no edge. */
export function EdgeBlank<T extends EdgeRef | null>(props: {
  label: string;
  path: string;
  value: T;
  edges: readonly EdgeRef[];
  none?: string;
  onValue: (edge: T | EdgeRef) => void;
}) {
  const said = useEdgeWords();
  // A name cannot be mistaken for a number: numbers stand behind a hash.
  const keyOf = (edge: EdgeRef | null): string =>
    edge === null ? "" : typeof edge === "number" ? `#${edge}` : edge;
  const isKnown = props.value === null || props.edges.some((edge) => edge === props.value);
  const edges = isKnown ? props.edges : [props.value as EdgeRef, ...props.edges];
  const none: readonly (readonly [string, string])[] = props.none === undefined ? [] : [["", props.none]];
  return (
    <ChoiceBlank<string>
      label={props.label}
      path={props.path}
      value={keyOf(props.value)}
      options={[...none, ...edges.map((edge) => [keyOf(edge), said(edge)] as const)]}
      onValue={(key) => props.onValue(edges.find((edge) => keyOf(edge) === key) ?? (null as T))}
    />
  );
}
