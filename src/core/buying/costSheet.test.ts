import fc from "fast-check";
import { expect, test } from "vitest";
import type { Pricing, SalesTax, Supply } from "../project/project.ts";
import { type CostRules, costSheet } from "./costSheet.ts";
import type { Purchase } from "./purchase.ts";

const paid = (toPay: number | null, ownWorth: number | null = 0, area = 0): Purchase => ({
  materialId: "cloth",
  bills: area > 0 ? [{ stockId: "roll", source: "buy", usedLength: 1, buyLength: 1, area, cost: toPay }] : [],
  buyLength: 0,
  toPay,
  ownWorth,
});

// Common practice, no source: materials 32.50, labour 75, overhead 5: 112.50; 50 % on top 168.75, 50 % left of it 225.
// One pricing page prints the second as the first: both must come out, and be told apart.
test("price of a bag from cloth, work and overhead, by mark-up or by margin, said both ways", () => {
  const cost = (by: "markup" | "margin") =>
    costSheet([{ purchase: paid(5000, 1500) }], {
      ...{ bags: 2, currency: "USD" },
      pricing: { workPerBag: 0, minutesPerBag: 150, hourlyRate: 30, overheadPerBag: 5, by, share: 0.5 },
    });
  expect(cost("markup")).toMatchObject({ clothPerBag: 3250, work: 15000, overhead: 1000, costPerBag: 11250 });
  expect(cost("markup")).toMatchObject({ pricePerBag: 16875, markup: 0.5, batchPrice: 33750, batchLeft: 11250 });
  expect(cost("markup").margin).toBeCloseTo(1 / 3, 12);
  expect(cost("margin")).toMatchObject({ pricePerBag: 22500, markup: 1, margin: 0.5, batchPrice: 45000 });
});

test("without pricing no price; without a price of cloth nothing is made up", () => {
  const rules = { bags: 2, currency: "EUR" };
  expect(costSheet([{ purchase: paid(6500) }], rules)).toMatchObject({
    ...{ toPay: 6500, clothPerBag: 3250, total: null, pricePerBag: null, work: null },
  });
  const half = costSheet([{ purchase: paid(6500, null) }], {
    ...rules,
    pricing: { workPerBag: 1, by: "markup", share: 1 },
  });
  expect(half).toMatchObject({ toPay: 6500, clothPerBag: null, costPerBag: null, pricePerBag: null, work: 200 });
});

// By hand: 2 rings a bag at 4.90 for a pack of 10, 3 bags: 6 rings are 2.94, one pack is paid; 0.2 reel of thread.
test("supplies: bags are charged with what goes into them, whole packs are paid", () => {
  const supplies: readonly Supply[] = [
    { id: "ring", name: "ring", perBag: 2, price: 4.9, pack: 10 },
    { id: "thread", name: "thread", perBag: 0.1, price: 3.2, pack: 1 },
  ];
  const sheet = costSheet([{ purchase: paid(0) }], { bags: 30, currency: "EUR", supplies });
  expect(sheet.supplies).toMatchObject([
    { needed: 60, packs: 6, toPay: 2940, cost: 2940 },
    { needed: 3, packs: 3, toPay: 960, cost: 960 },
  ]);
  const few = costSheet([{ purchase: paid(0) }], { bags: 3, currency: "EUR", supplies });
  expect(few.supplies).toMatchObject([
    { packs: 1, toPay: 490, cost: 294 },
    { packs: 1, toPay: 320, cost: 96 },
  ]);
  expect(few).toMatchObject({ suppliesToPay: 810, total: 390, costPerBag: 130 });
  const unknown = [{ ...supplies[0]!, price: null }];
  expect(costSheet([], { bags: 3, currency: "EUR", supplies: unknown })).toMatchObject({ total: null });
});

test("of the cloth that is paid the part without pieces is told", () => {
  const [cloth] = costSheet([{ purchase: paid(1000, 0, 400), piecesArea: 300 }], {
    bags: 1,
    currency: "EUR",
  }).cloths;
  expect(cloth).toMatchObject({ cost: 1000, wasted: 250 });
});

// By hand: 119.00 with 19 % in it are 100.00 without; a bag of 200.00 sells at 238.00.
test("a maker who charges tax counts costs without it and prices with it", () => {
  const tax = { rate: 0.19, inPrices: true, onBags: true };
  const pricing: Pricing = { workPerBag: 0, by: "markup", share: 1 };
  const rules = { bags: 1, currency: "EUR", pricing };
  const sheet = costSheet([{ purchase: paid(11900) }], { ...rules, tax });
  expect(sheet).toMatchObject({ toPay: 11900, costPerBag: 10000, pricePerBag: 20000, priceWithTax: 23800 });
  expect(costSheet([{ purchase: paid(11900) }], rules)).toMatchObject({ costPerBag: 11900, priceWithTax: null });
});

/** A fraction of whole numbers; decimals are read from their text, so that no binary fraction comes in. */
interface Fraction {
  readonly top: bigint;
  readonly bottom: bigint;
}
function fraction(value: number): Fraction {
  const [whole = "0", decimals = ""] = value.toFixed(6).split(".");
  return { top: BigInt(whole + decimals), bottom: 10n ** BigInt(decimals.length) };
}
const whole = (value: number): Fraction => ({ top: BigInt(value), bottom: 1n });
const times = (a: Fraction, b: Fraction): Fraction => ({ top: a.top * b.top, bottom: a.bottom * b.bottom });
const over = (a: Fraction, b: Fraction): Fraction => times(a, { top: b.bottom, bottom: b.top });
const plus = (a: Fraction, b: Fraction): Fraction => ({
  top: a.top * b.bottom + b.top * a.bottom,
  bottom: a.bottom * b.bottom,
});
/** Whole coins, half up: the least whole number of which the fraction is less than half above. */
function coins({ top, bottom }: Fraction): number {
  const floor = top / bottom;
  return Number(2n * (top - floor * bottom) >= bottom ? floor + 1n : floor);
}

// Reference: fractions of whole numbers, kept apart from the program's own arithmetic.
test("every sum is right to the last coin", () => {
  const cents = fc.integer({ min: 0, max: 5_000_000 });
  const money = cents.map((minor) => minor / 100);
  const share = fc.integer({ min: 0, max: 900 }).map((per) => per / 1000);
  const taxes: fc.Arbitrary<SalesTax | undefined> = fc.option(
    fc.record({ rate: share, inPrices: fc.boolean(), onBags: fc.boolean() }),
    { nil: undefined },
  );
  const supply = fc.record({
    ...{ id: fc.constant("s"), name: fc.constant("s"), price: money },
    ...{ perBag: fc.integer({ min: 0, max: 40 }), pack: fc.integer({ min: 1, max: 50 }) },
  });
  fc.assert(
    fc.property(
      fc.array(fc.tuple(cents, cents), { minLength: 1, maxLength: 4 }),
      fc.array(supply, { maxLength: 4 }),
      fc.integer({ min: 1, max: 500 }),
      taxes,
      fc.record({
        ...{ workPerBag: money, minutesPerBag: fc.integer({ min: 0, max: 900 }), hourlyRate: money },
        ...{ overheadShare: share, overheadPerBag: money, share },
        by: fc.constantFrom("markup" as const, "margin" as const),
      }),
      (cloths, supplies, bags, tax, pricing) => {
        const rules: CostRules = { bags, currency: "EUR", pricing, supplies, tax };
        const sheet = costSheet(
          cloths.map(([toPay, own]) => ({ purchase: paid(toPay, own) })),
          rules,
        );
        const rate = fraction(tax?.rate ?? 0);
        const taxed = plus(whole(1), rate);
        const till = (cost: number) => (tax && !tax.inPrices ? cost + coins(times(whole(cost), rate)) : cost);
        const counted = (cost: number) =>
          tax?.onBags ? cost - coins(over(times(whole(cost), rate), taxed)) : cost;
        const lines = [
          ...cloths.map(([toPay, own]) => counted(toPay + own)),
          ...supplies.map(({ price, perBag, pack }) =>
            counted(
              till(coins(over(times(times(fraction(price), whole(100)), whole(perBag * bags)), whole(pack)))),
            ),
          ),
        ];
        const materials = lines.reduce((sum, line) => sum + line, 0);
        const hundred = (amount: number) => coins(times(fraction(amount), whole(100)));
        const minutes = whole(pricing.minutesPerBag * bags);
        const work =
          hundred(pricing.workPerBag) * bags +
          coins(over(times(times(fraction(pricing.hourlyRate), whole(100)), minutes), whole(60)));
        const overhead =
          hundred(pricing.overheadPerBag) * bags +
          coins(times(whole(materials + work), fraction(pricing.overheadShare)));
        const total = materials + work + overhead;
        expect(sheet).toMatchObject({ work, overhead, total, costPerBag: coins(over(whole(total), whole(bags))) });
        const part = fraction(pricing.share);
        const price =
          pricing.by === "markup"
            ? coins(over(times(whole(total), plus(whole(1), part)), whole(bags)))
            : coins(over(whole(total), times(plus(whole(1), { ...part, top: -part.top }), whole(bags))));
        expect(sheet).toMatchObject({
          pricePerBag: price,
          batchPrice: price * bags,
          batchLeft: price * bags - total,
        });
        expect(sheet.priceWithTax).toBe(tax?.onBags ? price + coins(times(whole(price), rate)) : null);
        const packs = supplies.map(({ price: one, perBag, pack }) =>
          till(hundred(one) * Math.ceil((perBag * bags) / pack)),
        );
        expect(sheet.suppliesToPay).toBe(packs.reduce((sum, each) => sum + each, 0));
      },
    ),
    { numRuns: 400 },
  );
});
