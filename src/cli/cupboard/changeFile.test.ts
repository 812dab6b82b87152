import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterAll, beforeEach, describe, expect, test } from "vitest";
import { changeFile, freeFile, StillBusy } from "./changeFile.ts";
import { NODE_SHELF, type ShelfDisk } from "./shelfDisk.ts";

const root = mkdtempSync(join(tmpdir(), "change-file-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));
let folder: string;
let file: string;
beforeEach(() => {
  folder = mkdtempSync(join(root, "case-"));
  file = join(folder, "shelf.json");
  writeFileSync(file, "0");
});

/** Calls of the disk that may fail; looking never does harm. */
const CALLS = ["real", "names", "read", "write", "rename", "remove", "settle"] as const;

/** A disk whose n-th call does what `happens` does, and which counts its calls. */
function shimmed(n: number, happens: () => void): { disk: ShelfDisk; calls: () => number } {
  let calls = 0;
  const disk = { ...NODE_SHELF } as Record<string, unknown>;
  for (const name of CALLS)
    disk[name] = (...words: unknown[]) => {
      if (++calls === n) happens();
      return (NODE_SHELF[name] as (...words: unknown[]) => unknown)(...words);
    };
  return { disk: disk as unknown as ShelfDisk, calls: () => calls };
}

const add = (text: string | null): string => String(Number(text ?? 0) + 1);

test("a change is there, and nothing else", async () => {
  await changeFile(file, add);
  expect(readFileSync(file, "utf8")).toBe("1");
  expect(readdirSync(folder)).toEqual(["shelf.json"]);
});

test("sixty changes from six sides at once are all there", async () => {
  const side = async (): Promise<void> => {
    for (let i = 0; i < 10; i++) await changeFile(file, add);
  };
  await Promise.all(Array.from({ length: 6 }, side));
  expect(readFileSync(file, "utf8")).toBe("60");
  expect(readdirSync(folder)).toEqual(["shelf.json"]);
});

describe.each(["ENOSPC", "EACCES", "EIO"])("when the disk says %s", (code) => {
  test("at any single call, the file is as before or as after, and the next change goes through", async () => {
    const counted = shimmed(0, () => {});
    await changeFile(file, add, counted.disk);
    let failures = 0;
    for (let n = 1; n <= counted.calls(); n++) {
      writeFileSync(file, "0");
      const { disk } = shimmed(n, () => {
        throw Object.assign(new Error(code), { code });
      });
      const told = await changeFile(file, add, disk).then(
        () => true,
        () => false,
      );
      // What was not told as an error is done.
      expect(readFileSync(file, "utf8"), `call ${n}`).toBe(told ? "1" : "0");
      if (!told) failures++;
      await changeFile(file, add);
      expect(readFileSync(file, "utf8"), `call ${n}`).toBe(told ? "2" : "1");
    }
    expect(failures).toBeGreaterThan(3);
  });
});

test("killed at any call, the file is whole and what the dead run left is swept away", async () => {
  const counted = shimmed(0, () => {});
  await changeFile(file, add, counted.disk);
  for (let n = 1; n <= counted.calls(); n++) {
    writeFileSync(file, "0");
    let isDead = false;
    const { disk } = shimmed(n, () => {
      isDead = true;
      throw new Error("killed");
    });
    // A dead process does nothing more: no tidying up either. Its number is one that no process has.
    const dead = Object.fromEntries(
      CALLS.map((name) => [
        name,
        (...words: unknown[]) => {
          if (isDead) throw new Error("dead");
          return (disk[name] as (...words: unknown[]) => unknown)(...words);
        },
      ]),
    );
    await changeFile(file, add, { ...disk, ...dead, pid: 4_000_000 } as ShelfDisk).catch(() => {});
    expect(["0", "1"], `call ${n}`).toContain(readFileSync(file, "utf8"));
    const before = Number(readFileSync(file, "utf8"));
    await changeFile(file, add);
    expect(readFileSync(file, "utf8")).toBe(String(before + 1));
    expect(readdirSync(folder), `call ${n}`).toEqual(["shelf.json"]);
  }
});

test("the flag of another machine is never taken down; after 20 s of waiting it is named", async () => {
  const flag = join(folder, "shelf.json.elsewhere.77.0123456789ab.laywright-busy");
  writeFileSync(flag, "");
  let waited = 0;
  const pause = async (ms: number): Promise<void> => {
    waited += ms;
  };
  const refused = changeFile(file, add, { ...NODE_SHELF, pause });
  await expect(refused).rejects.toThrow(StillBusy);
  await expect(refused).rejects.toMatchObject({ flag: { path: flag, host: "elsewhere", isHere: false, pid: 77 } });
  expect(waited).toBeGreaterThanOrEqual(20_000);
  expect(readFileSync(file, "utf8")).toBe("0");
});

/** A flag of a run as it stands beside the file, raised so many seconds ago by the disk's clock. */
function raised(host: string, seconds: number, pid = 77, kind = "busy"): string {
  const path = join(folder, `shelf.json.${host}.${pid}.0123456789ab.laywright-${kind}`);
  writeFileSync(path, "");
  const then = Date.now() / 1000 - seconds;
  utimesSync(path, then, then);
  return path;
}

describe("a flag that a run on another machine left behind", () => {
  const quick = { ...NODE_SHELF, pause: async () => {} };

  test("is told with its machine and its age", async () => {
    raised("attic", 7300);
    const refused = await changeFile(file, add, quick).catch((error: unknown) => error);
    expect(refused).toBeInstanceOf(StillBusy);
    const { host, isHere, ms } = (refused as StillBusy).flag;
    expect([host, isHere]).toEqual(["attic", false]);
    expect(Math.abs(ms / 1000 - 7300)).toBeLessThan(300);
  });

  test("is taken down when that is asked for, with what the run had begun to write, and changes go through", async () => {
    raised("attic", 7300);
    raised("attic", 7300, 77, "next");
    raised("shed", 600, 8);
    expect(freeFile(file).map(({ host }) => host)).toEqual(["attic", "shed"]);
    expect(readdirSync(folder)).toEqual(["shelf.json"]);
    await changeFile(file, add);
    expect(readFileSync(file, "utf8")).toBe("1");
    expect(freeFile(file)).toEqual([]);
  });

  test("younger than a minute, or of a run of this machine that is at work, it stays, and nothing else is touched", () => {
    const [old, young] = [raised("attic", 7300), raised("shed", 5, 8)];
    expect(() => freeFile(file)).toThrow(StillBusy);
    rmSync(young);
    const own = raised(NODE_SHELF.host, 7300, process.pid);
    expect(() => freeFile(file)).toThrow(StillBusy);
    expect(readdirSync(folder).sort()).toEqual([own, old, file].map((path) => basename(path)).sort());
    rmSync(own);
    expect(freeFile(file)).toHaveLength(1);
  });
});

test("what the change itself throws changes nothing; a link stays a link", async () => {
  const link = join(folder, "link.json");
  symlinkSync(file, link);
  await changeFile(link, add);
  expect(readFileSync(file, "utf8")).toBe("1");
  const refused = changeFile(link, () => {
    throw new RangeError("no");
  });
  await expect(refused).rejects.toThrow(RangeError);
  expect(readdirSync(folder).sort()).toEqual(["link.json", "shelf.json"]);
});
