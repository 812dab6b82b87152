import { existsSync } from "node:fs";
import { basename, dirname } from "node:path";
import { yieldCurvePicture, yieldPlanPicture } from "../../core/drawing/lay/yieldPictures.ts";
import { rectangleRing, solid } from "../../core/geometry/ring.ts";
import { svgText } from "../../export/svg/svgText.ts";
import type { Io } from "../command.ts";
import { plainProblem } from "../inOut/toldProblem.ts";
import { writeFiles } from "../inOut/writeFiles.ts";
import { CLI_TEXTS } from "../words/words.ts";
import type { YieldAsked } from "./readYield.ts";
import { shownIn, type YieldAnswer } from "./yieldText.ts";

/** Writes the curve where one is asked for, else the plan, as SVG. Throws `InputProblem` when the folder is not there. */
export async function writeYieldPicture(
  file: string,
  asked: YieldAsked,
  answer: YieldAnswer,
  io: Io,
): Promise<void> {
  if (!existsSync(dirname(file)))
    throw plainProblem("cannot-write", file, ({ files }) => files.notWritten(file, files.faults.missing));
  const texts = CLI_TEXTS[io.language].yields;
  const show = shownIn(asked.strips[0]!.text, io.language);
  const [title] = answer.text.split("\n");
  const { curve, plan } = answer;
  if (curve === undefined && plan === null)
    throw plainProblem("cannot-write", file, ({ yields }) => yields.nothingToDraw);
  const drawing =
    curve === undefined
      ? yieldPlanPicture(
          plan!.stock.kind === "remnant"
            ? plan!.stock.outline
            : solid(rectangleRing(0, 0, plan!.stock.length!, plan!.stock.width)),
          plan!.stock.flaws,
          plan!.strips,
          title!,
        )
      : yieldCurvePicture(
          curve.map(({ length, count }) => ({ length, count, label: show(length) })),
          asked.curveTo!,
          { length: texts.lengthAxis, count: asked.strips.length > 1 ? texts.setAxis : texts.countAxis },
        );
  const data = svgText(drawing, { title: title! });
  for (const path of writeFiles(dirname(file), [{ name: basename(file), data }]))
    io.err(`${CLI_TEXTS[io.language].files.written(path)}\n`);
}
