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

const page = document.getElementById("page");
if (page === null) throw new TypeError("main: the page has no #page");
const bench = await openBench();
render(<App bench={bench} />, page);
// For benches and for the curious at the console.
Object.assign(globalThis, { laywright: bench });
keepOffline();
