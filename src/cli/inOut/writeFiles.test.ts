import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { undoUnfinished, writtenFile } from "../lay/earlierFiles.ts";
import { type Disk, NODE_DISK } from "./disk.ts";
import { type OutFile, writeFiles } from "./writeFiles.ts";

const LIST = "plan.json";

/** A plan's files with the list that names them first, as `lay` writes them. */
function planOf(texts: Readonly<Record<string, string>>): OutFile[] {
  const files = Object.entries(texts).map(([name, data]) => ({ name, data }));
  return [{ name: LIST, data: JSON.stringify({ files: files.map(writtenFile) }) }, ...files];
}

const OLD = planOf({ "a.svg": "old a", "b.svg": "old b", "same.txt": "same", "ruler.pdf": "old cuts" });
const NEW = planOf({ "a.svg": "new a", "b.svg": "new b", "same.txt": "same", "c.svg": "new c" });
const HERS = { name: "hers.txt", data: "her own" };

function folderWith(files: readonly OutFile[]): string {
  const folder = mkdtempSync(join(tmpdir(), "laywright-kill-"));
  for (const { name, data } of files) writeFileSync(join(folder, name), data);
  return folder;
}

/** The n-th call that changes the disk fails; `kill`: so do all after it, as for a program that is gone. */
function failingDisk(nth: number, code: string, kill: boolean): { disk: Disk; calls: () => number } {
  let calls = 0;
  const counted =
    <A extends unknown[], R>(work: (...args: A) => R) =>
    (...args: A): R => {
      calls++;
      if (calls === nth || (kill && calls > nth))
        throw Object.assign(new Error(code), { code, path: String(args[0]) });
      return work(...args);
    };
  const { makeFolder, write, keep, rename, remove, removeFolder } = NODE_DISK;
  const disk = {
    ...NODE_DISK,
    makeFolder: counted(makeFolder),
    write: counted(write),
    keep: counted(keep),
    rename: counted(rename),
    remove: counted(remove),
    removeFolder: counted(removeFolder),
  };
  return { disk, calls: () => calls };
}

/** What only the earlier plan has. */
const outlivedIn = (before: readonly OutFile[]): string[] => (before.includes(OLD[0]!) ? ["ruler.pdf"] : []);

/** Name → text of every file in a folder. */
const contentOf = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder)
      .sort()
      .map((name) => [name, readFileSync(join(folder, name), "utf8")]),
  );
const asContent = (files: readonly OutFile[]): Record<string, string> =>
  Object.fromEntries(files.map(({ name, data }) => [name, String(data)]).sort());

/** Every file the list in the folder names is there with the bytes it says. */
function expectListTrue(folder: string, told: string): void {
  const content = contentOf(folder);
  if (content[LIST] === undefined) return;
  for (const { name, sha256 } of JSON.parse(content[LIST]).files)
    expect(
      createHash("sha256")
        .update(content[name] ?? "")
        .digest("hex"),
      `${told}: ${name}`,
    ).toBe(sha256);
}

/** How many calls a run without faults makes. */
function allCalls(before: readonly OutFile[]): number {
  const { disk, calls } = failingDisk(Infinity, "", false);
  const folder = folderWith(before);
  writeFiles(folder, NEW, outlivedIn(before), disk);
  expect(contentOf(folder)).toEqual(asContent([...NEW, HERS]));
  return calls();
}

test.each([
  ["over an earlier plan", [...OLD, HERS]],
  ["into a folder without a plan", [HERS]],
])(
  "killed at every call, %s: each file is whole, the list never stands beside others, and all is put right",
  (_, before) => {
    const most = allCalls(before);
    expect(most).toBeGreaterThan(10);
    let isOld = 0;
    for (let nth = 1; nth <= most; nth++) {
      const folder = folderWith(before);
      try {
        writeFiles(folder, NEW, outlivedIn(before), failingDisk(nth, "KILLED", true).disk);
      } catch {
        // Gone.
      }
      const told = `call ${nth}`;
      expectListTrue(folder, told);
      const texts = [...before, ...NEW].map(({ name, data }) => `${name}: ${data}`);
      for (const [name, text] of Object.entries(contentOf(folder)))
        if (!name.includes(".laywright-")) expect(texts, told).toContain(`${name}: ${text}`);
      for (const { name } of before)
        if (name !== LIST && !outlivedIn(before).includes(name)) expect(readdirSync(folder), told).toContain(name);
      undoUnfinished(folder, LIST);
      const now = contentOf(folder);
      const isNew = JSON.stringify(now) === JSON.stringify(contentOf(folderWith([...NEW, HERS])));
      if (!isNew) {
        expect(now, told).toEqual(asContent(before));
        isOld++;
      }
      // And a run after it finds nothing in its way.
      writeFiles(
        folder,
        NEW,
        outlivedIn(before).filter((name) => readdirSync(folder).includes(name)),
      );
      expect(contentOf(folder), told).toEqual(asContent([...NEW, HERS]));
    }
    expect(isOld).toBeGreaterThan(5);
    expect(isOld).toBeLessThan(most);
  },
);

test.each(["ENOSPC", "EACCES", "EIO", "EPERM"])(
  "%s at every call: told, and the folder is as it was or as it should be",
  (code) => {
    const before = [...OLD, HERS];
    const most = allCalls(before);
    let failed = 0;
    for (let nth = 1; nth <= most; nth++) {
      const folder = folderWith(before);
      let told: unknown = null;
      try {
        writeFiles(folder, NEW, outlivedIn(before), failingDisk(nth, code, false).disk);
      } catch (error) {
        told = error;
      }
      if (told !== null) {
        failed++;
        expect(String(told)).toContain("Nothing was written");
        expect(contentOf(folder), `call ${nth}`).toEqual(asContent(before));
      } else {
        undoUnfinished(folder, LIST);
        expect(contentOf(folder), `call ${nth}`).toEqual(asContent([...NEW, HERS]));
      }
    }
    expect(failed).toBeGreaterThan(10);
  },
);

test("one file alone is replaced in one step: whole and there at every moment", () => {
  const hers = [{ name: "bag.json", data: "before" }];
  for (let nth = 1; nth <= 4; nth++) {
    const folder = folderWith(hers);
    try {
      writeFiles(folder, [{ name: "bag.json", data: "after" }], [], failingDisk(nth, "KILLED", true).disk);
    } catch {
      // Gone.
    }
    expect(["before", "after"]).toContain(readFileSync(join(folder, "bag.json"), "utf8"));
  }
});

test("her own files with like names stay", () => {
  const own = [HERS, { name: "notes.2024.part", data: "n" }, { name: "plan.json.1.before", data: "p" }];
  const folder = folderWith(own);
  undoUnfinished(folder, LIST);
  expect(contentOf(folder)).toEqual(asContent(own));
});
