import type { ComponentChildren } from "preact";
import { useProject } from "../../../state/workbench.ts";
import { useTexts } from "../../../texts/texts.ts";
import type { MarkProps } from "./DrawnPicture.tsx";
import { EdgeList } from "./EdgeList.tsx";
import { MarkList } from "./MarkList.tsx";
import { SeamList } from "./SeamList.tsx";

/** Edges, marks and seams of a panel, each folded away until it is wanted. */
export function PanelMarks(props: MarkProps & { onOpen: (isOpen: boolean) => void }) {
  const words = useTexts().marks;
  const { panel, onOpen } = props;
  const { seams = [] } = useProject();
  const own = new Set([
    ...(panel.edges ?? []).map(({ edge }) => edge),
    ...(panel.corners ?? []).map((c) => c.corner),
  ]);
  const marks = panel.notches.length + (panel.drills?.length ?? 0) + (panel.texts?.length ?? 0);
  const sewn = seams.filter(({ first, second }) => [...first, ...second].some((one) => one.panel === panel.id));
  return (
    <div>
      <Section summary={words.edges.summary(own.size)} part="edges" onOpen={onOpen}>
        <EdgeList {...props} />
      </Section>
      <Section summary={words.marks.summary(marks)} part="marks" onOpen={onOpen}>
        <MarkList {...props} />
      </Section>
      <Section summary={words.seams.summary(sewn.length)} part="seams" onOpen={onOpen}>
        <SeamList panel={panel} onMark={props.onMark} />
      </Section>
    </div>
  );
}

function Section(props: {
  summary: string;
  part: string;
  onOpen: (isOpen: boolean) => void;
  children: ComponentChildren;
}) {
  return (
    <details class="more" data-part={props.part} onToggle={(event) => props.onOpen(event.currentTarget.open)}>
      <summary>{props.summary}</summary>
      {props.children}
    </details>
  );
}
