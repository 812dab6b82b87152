import { expect, test } from "vitest";
import { cutListOf } from "../cutList.ts";
import { readProject } from "./readProject.ts";
import { isWorkshop, readWorkshop, withWorkshop } from "./workshop.ts";
import { writeProject } from "./writeProject.ts";

const SHOP = JSON.stringify({
  laywrightWorkshop: 1,
  name: "Quay workshop",
  unit: "in",
  sewingMachine: {
    footLift: 0.5,
    maxThickness: "10 mm",
    needles: [{ kind: "vinyl", needle: "100/16", thread: "polyester 40" }],
  },
  materials: [
    {
      ...{ id: "black", name: "Black vinyl", kind: "vinyl", thickness: "0.95 mm", backing: "woven" },
      shrinkage: { lengthwise: "1 %" },
      stock: [{ kind: "roll", id: "roll", width: "54 in" }],
    },
  ],
});
const project = (more: object = {}, material: object = { id: "outer", from: "black" }) =>
  JSON.stringify({
    ...{ laywright: 1, name: "Sling", workshop: "quay.json", materials: [material], ...more },
    straps: [
      {
        ...{ id: "sling", construction: "fourfold", width: "25 mm", length: "1 m" },
        materials: { outer: "outer" },
        ends: [{ style: "fold-back" }, { style: "fold-back" }],
      },
    ],
  });
const shop = (name: string) => (name === "quay.json" ? SHOP : null);
const opened = (text: string) => {
  const whole = withWorkshop(text, shop);
  if (!whole.ok) throw new Error(JSON.stringify(whole.problems));
  const read = readProject(whole.value);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
};

test("a project that names a workshop takes over its machine and its materials; its own word stands", () => {
  const taken = opened(project());
  expect(taken.materials[0]).toMatchObject({ id: "outer", name: "Black vinyl", kind: "vinyl", thickness: 0.95 });
  expect(taken.materials[0]!.shrinkage.lengthwise).toBeCloseTo(0.01, 9);
  // Bare numbers of an inch file are inches: 54 in, half an inch under the foot.
  expect(taken.materials[0]!.stock[0]).toMatchObject({ width: 54 * 25.4 });
  expect(taken.sewingMachine).toMatchObject({ footLift: 12.7, maxThickness: 10 });
  const own = opened(
    project({ sewingMachine: { maxThickness: 5 } }, { id: "outer", from: "black", thickness: 1.2 }),
  );
  expect(own.materials[0]!.thickness).toBe(1.2);
  expect(own.sewingMachine).toEqual({ maxThickness: 5 });
  const written = readProject(writeProject(taken));
  expect(written.ok && written.value).toEqual(taken);
});

test("her machine replaces the home machine in every strap, and its needle is told", () => {
  const codes = (text: string) => {
    const list = cutListOf(opened(text));
    if (!list.ok) throw new Error("no list");
    return list.value.straps[0]!;
  };
  // Eight layers of 0.95 mm are 7.6 mm: more than a home machine, less than hers.
  expect(codes(project()).warnings.map(({ code }) => code)).not.toContain("home-machine");
  expect(codes(project()).sewnWith).toMatchObject({ needle: "100/16" });
  const low = codes(project({ sewingMachine: { maxThickness: 20, footLift: 7 } }));
  expect(low.warnings.find(({ code }) => code === "machine-thickness")?.lengths).toMatchObject({ limit: 7 });
  expect(codes(project({ sewingMachine: {} })).warnings.map(({ code }) => code)).toContain("home-machine");
});

test("a workshop that is missing, unsound or without the material is told; other texts come back as they are", () => {
  const problems = (text: string, name = shop) => {
    const read = withWorkshop(text, name);
    return read.ok ? [] : read.problems;
  };
  expect(problems(project({ workshop: "away.json" }))).toMatchObject([
    { code: "workshop-missing", name: "away.json" },
  ]);
  expect(problems(project({}, { id: "outer", from: "blue" }))).toMatchObject([
    { code: "workshop-material-unknown", path: "materials[0].from", id: "blue", known: ["black"] },
  ]);
  expect(problems(project(), () => '{"laywrightWorkshop": 1}')[0]?.path).toContain("quay.json: ");
  expect(problems(project(), () => "{")).toMatchObject([{ code: "file-not-json" }]);
  for (const text of ["", "{", "[]", '{"workshop": 3}', '{"name": "no workshop"}'])
    expect(withWorkshop(text, shop)).toEqual({ ok: true, value: text });
  expect([isWorkshop(SHOP), isWorkshop(project()), isWorkshop("{")]).toEqual([true, false, false]);
  expect(readWorkshop(SHOP).ok).toBe(true);
});
