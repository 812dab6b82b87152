import type { RefObject } from "preact";
import { useEffect, useRef } from "preact/hooks";

/** For what opens under a long list: scrolls to it when most of it would open below the edge of the window. */
export function useBroughtIntoView<E extends Element>(): RefObject<E | null> {
  const opened = useRef<E>(null);
  useEffect(() => {
    const { current } = opened;
    if (current !== null && current.getBoundingClientRect().top > innerHeight * 0.7) current.scrollIntoView();
  }, []);
  return opened;
}
