import { expect, test } from "vitest";
import { distinctStems, fileStem } from "./fileStem.ts";

test("names become stems that cannot leave the folder", () => {
  expect(fileStem("Oilskin, 0.9 mm", "x")).toBe("oilskin-0-9-mm");
  expect(fileStem("../../etc/passwd", "x")).toBe("etc-passwd");
  expect(fileStem("<script>alert(1)</script>", "x")).toBe("script-alert-1-script");
  expect(fileStem("-rf /", "x")).toBe("rf");
  expect(fileStem("\u0000\u202e", "cloth")).toBe("cloth");
  expect(fileStem("CON", "cloth")).toBe("cloth");
  expect(fileStem("帆布", "cloth")).toBe("帆布");
  expect([...fileStem("a".repeat(200), "x")]).toHaveLength(60);
});

test("equal stems get a number", () => {
  expect(distinctStems(["Felt", "felt!", "Felt 2", "…"], "cloth")).toEqual(["felt", "felt-2", "felt-2-2", "cloth"]);
});
