// Two workers and a batch, each the program as it is built, over a real Redis, with plans in a folder that they share.
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect, test } from "vitest";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";
import { bytesIn, freshFolder } from "../tools/programs.ts";
import { redisServer } from "../tools/redisServer.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const running: ChildProcess[] = [];
afterAll(() => {
  for (const child of running) if (child.exitCode === null) child.kill("SIGKILL");
});

function program(...words: string[]): { readonly child: ChildProcess; said(): string } {
  const child = spawn(process.execPath, ["dist/cli/main.js", ...words], { cwd: root });
  running.push(child);
  let said = "";
  for (const stream of [child.stdout, child.stderr])
    stream.on("data", (data) => {
      said += data;
    });
  return { child, said: () => said };
}

test("plans go through the shared folder, the bytes are those of one machine; a folder that is not shared is told", async () => {
  const folder = freshFolder();
  const at = (name: string): string => join(folder, name);
  writeFileSync(at("pouch.json"), JSON.stringify(POUCH_TEMPLATE));
  writeFileSync(at("orders.csv"), "order,height\n1,\n2,14 cm\n3,12 cm\n4,11 cm\n5,9 cm\n6,8 cm");
  const redis = await redisServer();
  const batch = async (out: string, ...more: string[]): Promise<{ code: number; said: string }> => {
    const words = ["batch", at("pouch.json"), at("orders.csv"), "--effort", "0.01", "--threads", "1"];
    const { child, said } = program(...words, "--out", at(out), ...more);
    const [code] = await once(child, "close");
    return { code, said: said() };
  };
  const queue = ["--queue", redis.url];
  const worker = (plans: string) => program("worker", ...queue, "--threads", "1", "--plans", at(plans));
  try {
    const both = [worker("plans"), worker("plans")];
    expect((await batch("shared", ...queue, "--plans", at("plans"))).code).toBe(0);
    expect((await batch("alone")).code).toBe(0);
    expect(bytesIn(at("shared"))).toEqual(bytesIn(at("alone")));
    const kept = readdirSync(at("plans"), { recursive: true, encoding: "utf8" }).filter((name) =>
      name.includes("."),
    );
    expect(kept).toHaveLength(6);
    for (const name of kept) expect(name).toMatch(/[0-9a-f]{64}\.json$/u);
    // What went through the store to disk has where the lays are from, and no plan.
    const log = readdirSync(redis.folder, { recursive: true, encoding: "utf8" }).filter((name) =>
      name.endsWith(".aof"),
    );
    const stored = log.map((name) => readFileSync(join(redis.folder, name), "latin1")).join("");
    expect(stored).toContain("loop");
    expect(stored).toContain("returnvalue");
    expect(stored).not.toContain("placements");
    // A batch that has no folder gets its plans through the store from the same workers.
    expect((await batch("stored", ...queue)).code).toBe(0);
    expect(bytesIn(at("stored"))).toEqual(bytesIn(at("alone")));
    for (const { child } of both) {
      child.kill("SIGTERM");
      await once(child, "close");
    }
    for (const { said } of both) expect(said()).toMatch(/lays? done/u);
    worker("elsewhere");
    const apart = await batch("apart", ...queue, "--plans", at("not shared"));
    expect(apart.code).toBe(1);
    expect(apart.said).toContain("is not in the folder of --plans");
  } finally {
    for (const child of running) if (child.exitCode === null) child.kill("SIGKILL");
    await redis.close();
  }
}, 400_000);
