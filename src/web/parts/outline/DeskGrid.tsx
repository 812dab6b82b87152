import { type DeskView, toScreen, toTable } from "./deskView.ts";

/** Lines nearer to each other than this are left out, px. */
const LEAST_APART = 7;

/** The table's grid: a line a step, every second, fourth … where they would stand too close. */
export function DeskGrid({ view, step }: { view: DeskView; step: number }) {
  let apart = step;
  while (apart * view.scale < LEAST_APART) apart *= 2;
  const [left, top] = toTable(view, 0, 0);
  const [right, bottom] = toTable(view, view.width, view.height);
  let path = "";
  for (let i = Math.ceil(left / apart); i * apart <= right; i++)
    path += `M${Math.round(toScreen(view, i * apart, 0)[0])} 0V${view.height}`;
  for (let i = Math.ceil(bottom / apart); i * apart <= top; i++)
    path += `M0 ${Math.round(toScreen(view, 0, i * apart)[1])}H${Math.round(view.width)}`;
  return <path class="desk-grid" d={path} />;
}
