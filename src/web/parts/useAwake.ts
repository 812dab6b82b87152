import { useEffect, useState } from "preact/hooks";

/**
 * Keeps the screen from going dark while something is shown. `awake`: the browser does it. `may-sleep`: it cannot, or
 * will not (a low battery, no permission).
 */
export function useAwake(): "awake" | "may-sleep" {
  const [state, setState] = useState<"awake" | "may-sleep">("may-sleep");
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let isOver = false;
    const ask = async () => {
      if (document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
      try {
        const fresh = await navigator.wakeLock.request("screen");
        if (isOver) {
          await fresh.release();
          return;
        }
        lock = fresh;
        setState("awake");
        fresh.addEventListener("release", () => setState("may-sleep"));
      } catch {
        setState("may-sleep");
      }
    };
    void ask();
    // The browser lets go whenever the page is out of sight.
    document.addEventListener("visibilitychange", ask);
    return () => {
      isOver = true;
      document.removeEventListener("visibilitychange", ask);
      void lock?.release();
    };
  }, []);
  return state;
}
