import { createStore, type Store } from "./store.ts";

/** The four places of the page, in the order of the work. */
export const PLACES = ["bag", "cloth", "lay", "table"] as const;
export type Place = (typeof PLACES)[number];

/** Where the page is: a place, and what is open there (a part, a material, a stack). */
export interface Route {
  readonly place: Place;
  readonly open: string | null;
}

/** Reads `#/lay/cotton`; anything unknown is the first place. */
export function readRoute(hash: string): Route {
  const [, place = "", open] = hash.split("/");
  const known = PLACES.find((name) => name === place);
  if (known === undefined) return { place: "bag", open: null };
  return { place: known, open: open === undefined || open === "" ? null : safelyDecoded(open) };
}

/** The address of a route, for links. */
export function routeHash(place: Place, open: string | null = null): string {
  return open === null ? `#/${place}` : `#/${place}/${encodeURIComponent(open)}`;
}

/** The route of this window; follows the address. */
export function watchRoute(): Store<Route> {
  const store = createStore(readRoute(location.hash));
  addEventListener("hashchange", () => store.set(readRoute(location.hash)));
  return store;
}

function safelyDecoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
