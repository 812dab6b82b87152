// Hands on the plan for `page.ts`: what a step of the wheel, of a pan and of a drag costs the page's own thread.
import type { CDPSession, Page } from "playwright-core";

/** What one step costs the main thread, ms of its processor time: other programs on the machine do not count. */
export interface StepCost {
  readonly thread: number;
  readonly script: number;
}

const STEPS = 60;

/** Costs of zooming, panning, picking up and dragging on the plan that is open. */
export async function handCosts(page: Page): Promise<Record<string, StepCost | number>> {
  const protocol = await page.context().newCDPSession(page);
  await protocol.send("Performance.enable", { timeDomain: "threadTicks" });
  const zoom = await costOf(protocol, STEPS, () => page.evaluate(wheel, STEPS));
  const sharp = await costOf(protocol, 1, () => page.waitForTimeout(1500));
  const pan = await costOf(protocol, STEPS, () =>
    page.evaluate(pull, { steps: STEPS, onPiece: false, isDown: true }),
  );
  await page.waitForTimeout(1500);
  const take = await costOf(protocol, 1, () => page.evaluate(pull, { steps: 1, onPiece: true, isDown: true }));
  const drag = await costOf(protocol, STEPS, () =>
    page.evaluate(pull, { steps: STEPS, onPiece: true, isDown: false }),
  );
  const pieces = await page.locator(".piece").count();
  await protocol.detach();
  return { pieces, zoomStep: zoom, sharpAfterZoom: sharp, panStep: pan, pickUp: take, dragStep: drag };
}

async function costOf(protocol: CDPSession, steps: number, run: () => Promise<unknown>): Promise<StepCost> {
  const read = async () => {
    const { metrics } = await protocol.send("Performance.getMetrics");
    return (name: string) => metrics.find((metric) => metric.name === name)?.value ?? Number.NaN;
  };
  const before = await read();
  await run();
  const after = await read();
  const ms = (name: string) => Math.round(((after(name) - before(name)) / steps) * 10_000) / 10;
  return { thread: ms("ThreadTime"), script: ms("ScriptDuration") };
}

/** Turns the wheel to and fro over the middle of the plan, a step a frame. Runs in the page. */
async function wheel(steps: number): Promise<void> {
  const view = document.querySelector<HTMLElement>(".lay-view")!;
  const { x, y, width, height } = view.getBoundingClientRect();
  for (let step = 0; step < steps; step++) {
    const deltaY = 40 * Math.sin(step / 12);
    view.dispatchEvent(
      new WheelEvent("wheel", { clientX: x + width / 2, clientY: y + height / 2, deltaY, cancelable: true }),
    );
    await new Promise(requestAnimationFrame);
  }
}

/** Pulls the table, or the last piece, to and fro, a step a frame; one step alone leaves it in hand. Runs in the page. */
async function pull(how: { steps: number; onPiece: boolean; isDown: boolean }): Promise<void> {
  const view = document.querySelector<HTMLElement>(".lay-view")!;
  view.setPointerCapture = () => undefined;
  const piece = [...document.querySelectorAll<SVGElement>(".piece")].at(-1)!;
  const box = (how.onPiece ? piece : view).getBoundingClientRect();
  const x = how.onPiece ? box.x + box.width / 2 : box.x + 5;
  const y = how.onPiece ? box.y + box.height / 2 : box.y + 5;
  const at = (dx: number) => ({
    ...{ bubbles: true, pointerId: 1, isPrimary: true, button: 0 },
    ...{ clientX: x + dx, clientY: y },
  });
  if (how.isDown) (how.onPiece ? piece : view).dispatchEvent(new PointerEvent("pointerdown", at(0)));
  for (let step = 1; step <= how.steps; step++) {
    view.dispatchEvent(new PointerEvent("pointermove", at(80 * Math.sin(step / 10))));
    await new Promise(requestAnimationFrame);
  }
  if (how.steps > 1) view.dispatchEvent(new PointerEvent("pointercancel", at(0)));
}
