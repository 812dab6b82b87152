import "./style/base.css";
import "./style/fields.css";
import "./style/shell.css";
import "./style/places.css";
import "./style/outline.css";
import "./style/lay.css";
import "./style/table.css";
import "./style/cutting.css";
import { render } from "preact";
import { App } from "./app/App.tsx";
import { keepOffline } from "./offline/register.ts";
import { openBench } from "./state/openBench.ts";

/** After so long, as browsers themselves do, the page shows itself in whatever letters there are, ms. */
const MOST_WAIT = 3000;

const page = document.getElementById("page");
if (page === null) throw new TypeError("main: the page has no #page");
const [bench] = await Promise.all([openBench(), lettersOf(page)]);
render(<App bench={bench} />, page);
// For benches and for the curious at the console.
Object.assign(globalThis, { laywright: bench });
keepOffline();

/** Waits for the page's own letters, but not for long: letters that change later move every line under them. */
async function lettersOf(element: HTMLElement): Promise<void> {
  const patience = new Promise<void>((resolve) => setTimeout(resolve, MOST_WAIT));
  await Promise.race([
    document.fonts.load(`1em ${getComputedStyle(element).fontFamily}`).catch(() => []),
    patience,
  ]);
}
