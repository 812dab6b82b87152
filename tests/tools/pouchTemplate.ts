/** A small bag of our own scenario, quickly laid: one cloth off an open roll, a leftover of it, a strap, two panels. */
export const POUCH_TEMPLATE = {
  laywright: 1,
  name: "Quay pouch",
  unit: "mm",
  bags: 1,
  currency: "EUR",
  measures: [{ id: "height", name: "Height of the bag", length: 120 }],
  materials: [
    {
      id: "canvas",
      name: "Canvas",
      kind: "woven",
      thickness: 0.5,
      price: { amount: 12, per: "m" },
      stock: [
        { kind: "roll", id: "roll", width: 500 },
        { kind: "remnant", id: "leftover", shape: { kind: "rectangle", along: 300, across: 150 } },
      ],
    },
  ],
  straps: [
    {
      id: "loop",
      name: "Wrist loop",
      construction: "fourfold",
      width: "15 mm",
      length: "30 cm",
      materials: { outer: "canvas" },
    },
  ],
  panels: [
    {
      id: "front",
      name: "Front",
      material: "canvas",
      count: 2,
      shape: { kind: "rectangle", along: [{ measure: "height" }], across: 180 },
      seamAllowance: 10,
    },
  ],
};
