declare const __ONE_FILE__: boolean;

/** Stores the page on the device for work without a network. Does nothing where the browser has no such store. */
export function keepOffline(): void {
  if (__ONE_FILE__ || import.meta.env.DEV || !("serviceWorker" in navigator)) return;
  // Refused (private window, no https): the page works all the same while it is open.
  navigator.serviceWorker.register("./serviceWorker.js").catch(() => undefined);
}
