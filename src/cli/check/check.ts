import { isPlanDocument, readPlanDocument } from "../../core/job/planDocument/readPlan.ts";
import { checkPlan } from "../../core/lay/check/checkPlan.ts";
import { copiesLeftOut } from "../../core/lay/problem/planSums.ts";
import type { Problem } from "../../core/problems/problem.ts";
import { unevenSeams } from "../../core/project/unevenSeams.ts";
import { formatLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import { PANEL_WORDS } from "../../core/words/words.ts";
import { type Command, EXIT, type ExitCode, type Io, JSON_OPTION, type ParsedArgs } from "../command.ts";
import { readProjectFile } from "../inOut/editProjectFile.ts";
import { readInput, withItsWorkshop } from "../inOut/readInput.ts";
import { InputProblem, inputProblem } from "../inOut/toldProblem.ts";
import type { CliTexts } from "../words/cliTexts.ts";
import { CLI_TEXTS } from "../words/words.ts";

/** `check`: is this project sound, is this plan right? */
export const checkCommand: Command = {
  name: "check",
  synopsis: "PROJECT|PLAN [options]",
  about:
    "Tells everything that is wrong with a project file at once. A plan file that lay wrote is verified from its own pieces, cloth and placements, by code that shares nothing with the search: overlap, edges, flaws, gap and margin, grain and nap, mirroring, counts.\nEnds with 1 when something is wrong.",
  options: [JSON_OPTION],
  operands: [1, 1],
  run: runCheck,
};

async function runCheck(args: ParsedArgs, io: Io): Promise<ExitCode> {
  const path = args.operands[0]!;
  const text = readInput(path);
  const words = CLI_TEXTS[io.language].check;
  const plan = planIn(text);
  const told = plan
    ? checkPlanFile(plan, path, words)
    : checkProjectText(withItsWorkshop(text, path), words, io.language);
  if (args.switches.has("json")) io.out(`${JSON.stringify(told.data)}\n`);
  else io.out(`${told.sentence}\n`);
  return EXIT.done;
}

interface Told {
  readonly data: object;
  readonly sentence: string;
}

function planIn(text: string): unknown {
  try {
    const data: unknown = JSON.parse(text);
    return isPlanDocument(data) ? data : null;
  } catch {
    return null;
  }
}

function checkPlanFile(data: unknown, path: string, words: CliTexts["check"]): Told {
  const read = readPlanDocument(data);
  if (!read.ok)
    throw new InputProblem((language) =>
      read.faults.map((fault) => ({
        code: "plan-unreadable",
        path: fault.path,
        message: CLI_TEXTS[language].files.notAPlan(path, fault.path, fault.wanted),
      })),
    );
  const { plans } = read;
  const problems = plans.flatMap(({ problem, plan }): Problem[] =>
    checkPlan(problem, plan).map((finding) => ({ ...finding, path: `${problem.materialId}.${finding.path}` })),
  );
  if (problems.length > 0) throw inputProblem(problems);
  const placed = plans.reduce((sum, { plan }) => sum + plan.placements.length, 0);
  const left = plans.reduce((sum, { plan }) => sum + copiesLeftOut(plan), 0);
  return {
    data: { problems: [], kind: "plan", materials: plans.length, placed, unplaced: left },
    sentence: words.plan(placed, plans.length, left),
  };
}

function checkProjectText(text: string, words: CliTexts["check"], language: Language): Told {
  const { project, pieces, lays } = readProjectFile(text);
  const seams = unevenSeams(project, PANEL_WORDS[language]);
  const told = seams.map(({ first, second, overMm }) => {
    const over = formatLength(Math.abs(overMm), project.output.lengths, language);
    return overMm > 0 ? words.uneven(first, second, over) : words.uneven(second, first, over);
  });
  const copies = pieces.reduce((sum, { count, mirroredCount }) => sum + count + mirroredCount, 0);
  return {
    data: {
      problems: [],
      kind: "project",
      name: project.name,
      materials: lays.length,
      pieces: copies,
      unevenSeams: seams,
    },
    sentence: [words.project(project.name, copies, lays.length), ...told].join("\n"),
  };
}
