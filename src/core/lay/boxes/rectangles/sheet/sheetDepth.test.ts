import { expect, test } from "vitest";
import { searchTables, type TableSize } from "../../../problem/rectangles/searchTables.ts";
import { seededRng } from "../../../search/rng.ts";
import { deepPlans } from "./sheetDepth.ts";

function mostLaid(width: number, length: number, sizes: readonly TableSize[], looks: number) {
  const tables = searchTables(width, sizes, []);
  let most = 0;
  let spent = 0;
  const offer = (laid: number): void => {
    expect(laid).toBeGreaterThan(most);
    most = laid;
  };
  const search = deepPlans(tables, length, () => most, offer, seededRng(1), 100_000);
  for (let step = search.next(); !step.done && spent < looks; step = search.next()) spent += step.value;
  return { most, spent };
}

// Beasley 1985 (J. Opl Res. Soc. 36), problem gcut2, data by way of the ESICUP collection (CC0 1.0); the most area that
// lies on its sheet, each piece once: Egeblad & Pisinger 2009 (Comput. Oper. Res. 36).
const GCUT2 = [
  [120, 133],
  [135, 186],
  [86, 75],
  [103, 73],
  [66, 85],
  [135, 97],
  [91, 175],
  [131, 176],
  [71, 176],
  [153, 72],
  [87, 148],
  [168, 107],
  [118, 90],
  [140, 109],
  [132, 159],
  [152, 93],
  [135, 68],
  [121, 158],
  [68, 94],
  [155, 76],
] as const;

test("gcut2: the published best, as given and with quarter turns", () => {
  const fixed = GCUT2.map(([w, h]) => ({ count: 1, ways: [[h, w] as const] }));
  const turned = GCUT2.map(([w, h]) => ({ count: 1, ways: [[h, w] as const, [w, h] as const] }));
  expect(mostLaid(250, 250, fixed, 5e7).most).toBe(59_798);
  expect(mostLaid(250, 250, turned, 5e7).most).toBe(60_656);
});

/** The most area by trying every order, each piece at every free whole-number place: the slow twin. */
function slowMost(width: number, length: number, pieces: readonly (readonly [number, number])[]): number {
  let most = 0;
  const cells = new Uint8Array(width * length);
  const isFree = (x: number, y: number, dx: number, dy: number): boolean => {
    for (let i = x; i < x + dx; i++) for (let j = y; j < y + dy; j++) if (cells[i * width + j] === 1) return false;
    return true;
  };
  const fill = (x: number, y: number, dx: number, dy: number, value: number): void => {
    for (let i = x; i < x + dx; i++) cells.fill(value, i * width + y, i * width + y + dy);
  };
  const lay = (next: number, laid: number): void => {
    most = Math.max(most, laid);
    if (next === pieces.length) return;
    const [dx, dy] = pieces[next]!;
    lay(next + 1, laid);
    for (let x = 0; x + dx <= length; x++)
      for (let y = 0; y + dy <= width; y++) {
        if (!isFree(x, y, dx, dy)) continue;
        fill(x, y, dx, dy, 1);
        lay(next + 1, laid + dx * dy);
        fill(x, y, dx, dy, 0);
      }
  };
  lay(0, 0);
  return most;
}

test("on small sheets it lays as much as a search of every place, and comes to an end", () => {
  const rng = seededRng(4);
  for (let round = 0; round < 20; round++) {
    const pieces = Array.from({ length: 4 }, () => [2 + rng.below(4), 2 + rng.below(4)] as const);
    const sizes = pieces.map(([along, across]) => ({ count: 1, ways: [[across, along] as const] }));
    const { most, spent } = mostLaid(7, 7, sizes, 1e7);
    expect(most, `round ${round}`).toBe(slowMost(7, 7, pieces));
    expect(spent).toBeLessThan(1e7);
  }
});
