// A batch and a worker over an encrypted line with a password: the program as it is built, a real Redis that answers on
// TLS alone, a certificate that openssl made. What is on the line is looked at on its way: TLS records as RFC 8446
// section 5.1 has them, and nothing in plain sight.
import { spawn } from "node:child_process";
import { once } from "node:events";
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { POUCH_TEMPLATE } from "../tools/pouchTemplate.ts";
import { bytesIn, freshFolder, run } from "../tools/programs.ts";
import { cutLine, redisServer } from "../tools/redisServer.ts";
import { ifInstalled } from "../tools/systemPrograms.ts";

const root = fileURLToPath(new URL("../../", import.meta.url));
const PASSWORD = "harbour-wall-4711";
/** An order's name that is seen at once where a line is not encrypted. */
const ORDER = "Quayside-Lantern";

for (const openssl of ifInstalled("openssl"))
  test("rediss:// with a password: the bytes of a batch alone, none of them to be read on the line", async () => {
    const folder = freshFolder();
    const at = (name: string): string => join(folder, name);
    const [certificate, key] = [at("store.crt"), at("store.key")];
    run(openssl, [
      ...["req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:prime256v1", "-nodes", "-days", "2"],
      ...["-keyout", key, "-out", certificate, "-subj", "/CN=store", "-addext", "subjectAltName=IP:127.0.0.1"],
    ]);
    writeFileSync(at("pouch.json"), JSON.stringify(POUCH_TEMPLATE));
    writeFileSync(at("orders.csv"), `order,height\n${ORDER},\n2,14 cm`);
    const heard: Buffer[] = [];
    const redis = await redisServer({ certificate, key, password: PASSWORD });
    const line = await cutLine(redis.port, (bytes) => void heard.push(bytes));
    const trusting = { ...process.env, NODE_EXTRA_CA_CERTS: certificate };
    const url = (scheme: string, password: string): string => `${scheme}://:${password}@127.0.0.1:${line.port}`;
    const batch = (out: string, queue: string | null, env: NodeJS.ProcessEnv) => {
      const words = ["batch", at("pouch.json"), at("orders.csv"), "--effort", "0.01", "--threads", "1"];
      const more = ["--out", at(out), ...(queue === null ? [] : ["--queue", queue])];
      const child = spawn(process.execPath, ["dist/cli/main.js", ...words, ...more], { cwd: root, env });
      let err = "";
      child.stderr.on("data", (data) => {
        err += data;
      });
      return once(child, "close").then(([code]) => ({ code, err }));
    };
    const worker = spawn(
      process.execPath,
      ["dist/cli/main.js", "worker", "--queue", url("rediss", PASSWORD), "--threads", "1"],
      { cwd: root, env: trusting, stdio: "ignore" },
    );
    try {
      expect((await batch("queued", url("rediss", PASSWORD), trusting)).code).toBe(0);
      const seen = Buffer.concat(heard).toString("latin1");
      expect(seen.length).toBeGreaterThan(4000);
      // Each end begins with a handshake record: type 22, version 3.x.
      expect(heard[0]!.subarray(0, 2)).toEqual(Buffer.from([22, 3]));
      for (const secret of [PASSWORD, ORDER, "laywright", "PING"]) expect(seen).not.toContain(secret);
      expect((await batch("alone", null, process.env)).code).toBe(0);
      expect(bytesIn(at("queued"))).toEqual(bytesIn(at("alone")));
      // Nobody is believed whose certificate nobody vouches for, let in without the password, or answered in the clear.
      const stranger = await batch("stranger", url("rediss", PASSWORD), process.env);
      expect(stranger).toMatchObject({ code: 1, err: expect.stringMatching(/no answer \(.*SELF_SIGNED_CERT/u) });
      const guess = await batch("guess", url("rediss", "harbour-wall-4712"), trusting);
      expect(guess).toMatchObject({ code: 1, err: expect.stringMatching(/no answer \(.*WRONGPASS/u) });
      expect(guess.err).not.toContain("4712");
      expect((await batch("plain", url("redis", PASSWORD), trusting)).code).toBe(1);
      // The line is one that shows what is not encrypted.
      expect(Buffer.concat(heard).toString("latin1")).toContain(PASSWORD);
    } finally {
      worker.kill("SIGKILL");
      await line.close();
      await redis.close();
    }
  }, 360_000);
