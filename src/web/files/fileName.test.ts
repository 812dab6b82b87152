import { expect, test } from "vitest";
import { fileNameOf } from "./projectFiles.ts";

test("file names keep what every system takes", () => {
  expect(fileNameOf("Harbour bags, spring", ".pdf")).toBe("harbour-bags-spring.pdf");
  expect(fileNameOf("Überseekoffer Größe 2", ".pdf")).toBe("uberseekoffer-große-2.pdf");
  expect(fileNameOf("///", ".pdf")).toBe("project.pdf");
});
