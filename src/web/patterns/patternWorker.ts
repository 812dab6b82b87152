/// <reference lib="webworker" />
// Reads one pattern away from the page's own thread, so that it can be stopped; carries the readers with it.
import type { Contour } from "../../core/geometry/contour.ts";
import { pointOnContour } from "../../core/geometry/pointOnContour.ts";
import type { PatternRole } from "../../core/patterns/patternOutline.ts";
import { patternPanels } from "../../core/patterns/patternPanels.ts";
import { FIT_TOLERANCE } from "../../core/patterns/understandPattern.ts";
import { answerPattern } from "../../reading/patternJob.ts";
import type { PatternAsk, PatternReply, ReadPattern, RoleAt } from "./protocol.ts";

const worker = globalThis as unknown as DedicatedWorkerGlobalScope;

worker.addEventListener(
  "message",
  async (event: MessageEvent<PatternAsk>) => {
    let reply: PatternReply;
    try {
      reply = { laywrightRead: true, read: await readPattern(event.data) };
    } catch (error) {
      reply = { laywrightRead: false, reason: error instanceof Error ? `${error.stack}` : String(error) };
    }
    worker.postMessage(reply);
  },
  // A library in here may talk to itself through the same door.
  { once: true },
);

/** Nearer than this, a point is on a line, mm: what fitting with arcs may move it, with room. */
const ON_LINE = 4 * FIT_TOLERANCE;

function roleAt(contour: Contour, spots: readonly RoleAt[]): PatternRole | undefined {
  return spots.find(({ x, y }) => pointOnContour(contour, x, y).distance <= ON_LINE)?.role;
}

async function readPattern({ bytes, wish }: PatternAsk): Promise<ReadPattern> {
  const unit = wish.unit === "" ? undefined : wish.unit;
  const options = { tolerance: FIT_TOLERANCE, mend: new Set(wish.mend), roles: new Map(), unit };
  const { sheets, image } = wish.lie;
  const read = await answerPattern({ bytes, options, pdf: { sheets }, image: { ...image, withPicture: true } });
  const asked = new Map(Object.entries(wish.roles));
  const outlines = read.outlines.map((outline) => {
    const role = asked.get(outline.name) ?? roleAt(outline.contour, wish.rolesAt);
    return role === undefined ? outline : { ...outline, role, reason: "asked" as const };
  });
  const pattern = { ...read, outlines };
  return { pattern, panels: patternPanels(pattern) };
}
