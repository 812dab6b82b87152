import fc from "fast-check";
import { expect, test } from "vitest";
import { PLACES, readRoute, routeHash } from "./route.ts";

test("an address reads back to its route", () => {
  fc.assert(
    fc.property(fc.constantFrom(...PLACES), fc.option(fc.string({ minLength: 1 })), (place, open) => {
      expect(readRoute(routeHash(place, open))).toEqual({ place, open });
    }),
  );
});

test("an unknown or broken address is the first place", () => {
  for (const hash of ["", "#", "#/", "#/nowhere", "nonsense"])
    expect(readRoute(hash)).toEqual({ place: "bag", open: null });
  expect(readRoute("#/lay/%E0%A4%A")).toEqual({ place: "lay", open: "%E0%A4%A" });
});
