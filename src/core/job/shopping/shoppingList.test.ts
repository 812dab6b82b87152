import { expect, test } from "vitest";
import type { Material } from "../../materials/material.ts";
import type { Price } from "../../materials/price.ts";
import type { Project } from "../../project/project.ts";
import type { StrapResult } from "../../straps/build/strapResult.ts";
import { listTotals, type ProjectToBuy, shoppingList } from "./shoppingList.ts";

const perMetre: Price = { amount: 12, basis: { kind: "length", mm: 1000 }, step: 100 };

/** A project that takes so much of a cloth off a new roll, with a strap of a ring, tape and thread a bag. */
function toBuy(
  name: string,
  used: number,
  part: Partial<Project> = {},
  price: Price | null = perMetre,
): ProjectToBuy {
  const roll = {
    kind: "roll",
    id: "roll",
    width: 1400,
    selvedge: 0,
    length: null,
    squaring: 0,
    flaws: [],
  } as const;
  const material = {
    id: "c",
    name: name.length % 2 ? "Sailcloth" : " sailcloth",
    price,
    repeat: null,
    stock: [roll],
  };
  const bill = { stockId: "roll", source: "buy", usedLength: used, buyLength: used, area: 0, cost: null } as const;
  const ring = { kind: "ring", count: 2, innerWidth: 39, opening: null, named: true };
  const strap = { hardware: [ring], consumables: [{ kind: "tape", code: "tape-edge", mm: 404 }] };
  return {
    project: { name, bags: 1, currency: "EUR", ...part } as Project,
    straps: [strap as unknown as StrapResult],
    cloths: [{ material: material as unknown as Material, purchase: { bills: [bill] } as never }],
  };
}

test("the same cloth of two projects is one line, rounded once to the shop's step", () => {
  const list = shoppingList([toBuy("One", 620), toBuy("Other ", 620)]);
  // 2 × 0.62 m is 1.24 m, in steps of 10 cm 1.3 m; each by itself would be 0.7 m, in all 1.4 m.
  expect(list.cloths).toEqual([
    expect.objectContaining({ needed: 1240, buy: 1300, toPay: 1560, projects: ["One", "Other "] }),
  ]);
  expect(listTotals(list)).toEqual(new Map([["EUR", 1560]]));
});

test("another price, width or currency is another line; without a price nothing is made up", () => {
  const dear = { ...perMetre, amount: 14 };
  const list = shoppingList([toBuy("One", 620), toBuy("Two", 620, {}, dear), toBuy("Six", 620, {}, null)]);
  expect(list.cloths.map(({ buy, toPay }) => [buy, toPay])).toEqual([
    [700, 840],
    [700, 980],
    [620, null],
  ]);
  expect(listTotals(list)).toEqual(new Map([["EUR", null]]));
  expect(shoppingList([toBuy("One", 9), toBuy("Two", 9, { currency: "CHF" })]).cloths).toHaveLength(2);
});

test("cloth of two shops is two lines", () => {
  const quay = toBuy("One", 620);
  const [{ material, purchase }] = quay.cloths as [(typeof quay.cloths)[number]];
  const cloths = [{ material: { ...material, source: "Quay market" }, purchase }];
  const list = shoppingList([{ ...quay, cloths }, toBuy("Two", 620)]);
  expect(list.cloths.map(({ source, buy }) => [source, buy])).toEqual([
    ["Quay market", 700],
    [null, 700],
  ]);
});

test("hardware, tape and packs add up over bags and projects", () => {
  const zip = { id: "zip", name: "Zip 30 cm", perBag: 1, price: 2.5, pack: 5 };
  const list = shoppingList([
    toBuy("One", 1, { bags: 3, supplies: [zip] }),
    toBuy("Two", 1, { bags: 4, supplies: [{ ...zip, id: "z", name: "zip 30 cm" }] }),
  ]);
  expect(list.hardware).toEqual([expect.objectContaining({ kind: "ring", count: 14 })]);
  expect(list.consumables).toEqual([{ code: "tape-edge", mm: 2830 }]);
  // Seven zips are two packs of five; project by project it would be the same two, but three and three one.
  expect(list.supplies).toEqual([expect.objectContaining({ needed: 7, packs: 2, toPay: 500 })]);
  const few = shoppingList([1, 2].map((n) => toBuy(`P${n}`, 1, { bags: 2, supplies: [zip] })));
  expect(few.supplies).toEqual([expect.objectContaining({ needed: 4, packs: 1, toPay: 250 })]);
});

test("panels cut to size are counted, equal ones on one line, and a limited roll is a length", () => {
  const one = toBuy("One", 0);
  const [{ material }] = one.cloths as [(typeof one.cloths)[number]];
  const shape = { kind: "rectangle", along: 460, across: 530 } as const;
  const quarter = { kind: "remnant", id: "q", shape, flaws: [], count: 3, toBuy: true } as const;
  const end = { ...material.stock[0]!, id: "end", length: 900, toBuy: true };
  const bill = { source: "buy", area: 0, usedLength: null, buyLength: null, cost: 420 } as const;
  const bills = [
    { ...bill, stockId: "q" },
    { ...bill, stockId: "q (2)" },
    { ...bill, stockId: "end", usedLength: 620, buyLength: 700, cost: 840 },
  ];
  const stock = [quarter, end] as never;
  const { pieces } = shoppingList([
    { ...one, cloths: [{ material: { ...material, stock }, purchase: { bills } as never }] },
  ]);
  expect(pieces).toEqual([
    expect.objectContaining({ stockId: "q", count: 2, along: 460, across: 530, length: null, toPay: 840 }),
    expect.objectContaining({ stockId: "end", count: 1, across: 1400, length: 700, toPay: 840 }),
  ]);
});
