declare const __ONE_FILE__: boolean;

/** The page has settled this long after it was opened, ms. */
const SETTLED = 4_000;

/** Stores the page on the device for work without a network. Does nothing where the browser has no such store. */
export function keepOffline(): void {
  if (__ONE_FILE__ || import.meta.env.DEV || !("serviceWorker" in navigator)) return;
  const { serviceWorker } = navigator;
  // Refused (private window, no https): the page works all the same while it is open.
  serviceWorker.register("./serviceWorker.js").catch(() => undefined);
  serviceWorker.addEventListener("message", (event) => {
    if (event.data === "all kept") document.documentElement.dataset["offline"] = "whole";
  });
  serviceWorker.ready.then(({ active }) => whenIdle(() => active?.postMessage("keep the rest")));
}

/** Runs once the page has settled and has nothing else to do. */
function whenIdle(act: () => void): void {
  setTimeout(
    () => ("requestIdleCallback" in window ? requestIdleCallback(act, { timeout: 5_000 }) : act()),
    SETTLED,
  );
}
