import { useEffect, useMemo, useState } from "preact/hooks";
import type { LaidCloth } from "../../../core/job/laidCloth.ts";
import { checkPlan } from "../../../core/lay/check/checkPlan.ts";
import { copiesLeftOut } from "../../../core/lay/problem/planSums.ts";
import { Tick } from "../../fields/blanks.tsx";
import { Refusal } from "../../fields/TypedBlank.tsx";
import { LeftOutParts } from "../../parts/LeftOutParts.tsx";
import { useDerived } from "../../state/derived.ts";
import { leftOutParts } from "../../state/leftOutParts.ts";
import { routeHash } from "../../state/route.ts";
import { useStore } from "../../state/store.ts";
import { useProject, useWorkbench } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { CutSheetStack } from "./CutSheetStack.tsx";
import { CuttingMode } from "./CuttingMode.tsx";
import { MachineStack } from "./MachineStack.tsx";
import { PaperStackView } from "./PaperStackView.tsx";
import { RulerStackView } from "./RulerStackView.tsx";
import { ShoppingStack } from "./ShoppingStack.tsx";

const STACKS = ["paper", "machine", "ruler", "sheet", "shopping"] as const;

/** What goes to the cutting table: paper, machine files, the cut sheet. */
export function TablePlace({ open }: { open: string | null }) {
  const { board } = useWorkbench();
  const texts = useTexts();
  const project = useProject();
  const lays = useStore(board.lays, (all) => all);
  const isCutting = open === "cutting";
  const stack = STACKS.find((name) => name === open) ?? (isCutting ? "ruler" : "paper");
  const laid = useMemo(
    () =>
      [...lays.values()].flatMap(({ job, plan }): LaidCloth[] =>
        plan === null ? [] : [{ material: job.material, problem: job.problem, plan }],
      ),
    [lays],
  );
  const findings = useMemo(() => laid.flatMap(({ problem, plan }) => checkPlan(problem, plan)), [laid]);
  useEffect(() => {
    board.hush(true);
    return () => board.hush(false);
  }, [board]);
  const [chosen, choose] = useState<string | null>(null);
  const shown = laid.find(({ material }) => material.id === chosen) ?? laid[0] ?? null;
  const { pieces, troubles } = useDerived();
  const leftOut = leftOutParts(project, troubles);
  const names = leftOut.map(({ name }) => name).join(", ");
  // Agreed to for these parts alone: another that drops out is asked about anew.
  const [agreed, agree] = useState<string | null>(null);
  if (pieces.length === 0)
    return (
      <div class="sheet stack empty">
        <h2>{texts.table.emptyHeading}</h2>
        <p>{texts.table.emptyWords}</p>
        <LeftOutParts />
        <p>
          <a href={routeHash("bag")}>{texts.lay.toBag}</a>
        </p>
      </div>
    );
  const unplaced = laid.reduce((sum, { plan }) => sum + copiesLeftOut(plan), 0);
  const shared = { project, pieces, lays: laid, shown, maySave: names === "" || agreed === names };
  return (
    <div class="stack table">
      <nav class="row" aria-label={texts.table.stacks}>
        {STACKS.map((name) => (
          <a
            key={name}
            class="press stack-link"
            href={routeHash("table", name)}
            aria-current={name === stack ? "true" : undefined}
          >
            {texts.table.stackNames[name]}
          </a>
        ))}
      </nav>
      {stack !== "sheet" && stack !== "shopping" && laid.length > 1 && (
        <div class="row lay-materials" role="group" aria-label={texts.cloth.swatches}>
          {laid.map(({ material }) => (
            <button
              key={material.id}
              type="button"
              class="press plain"
              aria-pressed={material === shown?.material}
              onClick={() => choose(material.id)}
            >
              {material.name}
            </button>
          ))}
        </div>
      )}
      {laid.length < lays.size && <p class="soft">{texts.table.stillFinding}</p>}
      <LeftOutParts />
      {leftOut.length > 0 && (
        <Tick
          label={texts.leftOut.saveWithout(names)}
          path="table.saveWithout"
          value={agreed === names}
          onValue={(isAgreed) => agree(isAgreed ? names : null)}
        />
      )}
      {unplaced > 0 && <p class="caution">{texts.table.unplaced(unplaced)}</p>}
      {findings.length > 0 ? (
        <div class="sheet stack">
          <p>{texts.table.refused}</p>
          <Refusal problems={findings.slice(0, 8)} />
        </div>
      ) : (
        <>
          {laid.length > 0 && (
            <div class="row not-on-paper">
              <a class="press main" href={routeHash("table", "cutting")}>
                {texts.table.cutting.start}
              </a>
              <span class="soft">{texts.table.cutting.told}</span>
            </div>
          )}
          {isCutting && <CuttingMode input={shared} onChoose={choose} />}
          {stack === "paper" && <PaperStackView {...shared} />}
          {stack === "machine" && <MachineStack {...shared} />}
          {stack === "ruler" && <RulerStackView {...shared} />}
          {stack === "sheet" && <CutSheetStack {...shared} />}
          {stack === "shopping" && <ShoppingStack {...shared} />}
        </>
      )}
    </div>
  );
}
