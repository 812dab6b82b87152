import { expect, test } from "vitest";
import { runCli } from "../../../tests/tools/runCli.ts";

interface BagDocument {
  readonly project: {
    readonly name: string;
    readonly measures: readonly { id: string; length: number | string }[];
  };
  readonly pieces: readonly unknown[];
}

test("a starter needs no measures; those that are given change it", async () => {
  const made = async (...more: string[]) =>
    JSON.parse((await runCli("bag", "--starter", "tote", "--json", ...more)).out) as BagDocument;
  const tote = await made();
  const higher = await made("--height", "40 cm");
  expect(tote.project.name).toBe("Tote");
  expect(tote.pieces.length).toBeGreaterThan(6);
  const height = ({ project }: BagDocument) => project.measures.find(({ id }) => id === "height")?.length;
  expect(height(tote)).toBe(360);
  expect(height(higher)).toBe(400);
  expect((await runCli("bag", "--starter", "sack")).code).toBe(2);
});
