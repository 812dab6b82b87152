import { randomBytes, randomInt } from "node:crypto";
import { basename, dirname, join } from "node:path";
import { NODE_SHELF, type ShelfDisk } from "./shelfDisk.ts";

/** A flag says that its run is about to change the file; a part is the new text on its way. */
const FLAG = ".laywright-busy";
const PART = ".laywright-next";
/** Longest wait for another run, ms: a change takes some hundredths of a second. */
const LONGEST_WAIT = 20_000;
const LONGEST_PAUSE = 200;

/** Another run's flag that did not go away. */
export class StillBusy extends Error {
  readonly flag: string;

  constructor(flag: string) {
    super(`still busy: ${flag}`);
    this.flag = flag;
  }
}

/**
 * Changes a file so that it is whole whatever happens, and so that of two runs at once neither undoes what the other
 * did. `change` gets the text, null where there is no file, and gives the new one; what it throws changes nothing.
 *
 * Each run raises a flag of its own beside the file and only then looks for others: of two runs at least one sees the
 * other's, takes its own down, waits and begins again. So no two are ever past this point together, and no flag is
 * ever taken over: one whose run has ended does not count and is swept away. The new text is written beside the file,
 * forced to the disk and renamed over it in one step.
 *
 * Errors: as the disk has them; `StillBusy` when another run holds the file for 20 s, or one of another machine that
 * may have ended: whether it did is not known here.
 */
export async function changeFile(
  path: string,
  change: (text: string | null) => string,
  disk: ShelfDisk = NODE_SHELF,
): Promise<void> {
  const file = disk.real(path);
  const folder = dirname(file);
  const own = `${basename(file)}.${disk.host}.${disk.pid}.${randomBytes(6).toString("hex")}`;
  const flag = join(folder, own + FLAG);
  const part = join(folder, own + PART);
  try {
    await raiseFlag(file, flag, disk);
    const text = change(disk.read(file));
    disk.write(part, text);
    disk.rename(part, file);
    attempt(() => disk.settle(folder));
  } finally {
    // Twice: a flag that stays up would hold off every other run until this one ends.
    for (const passing of [part, flag]) attempt(() => disk.remove(passing)) || attempt(() => disk.remove(passing));
  }
}

/** Returns once our flag is up and no other run's is. */
async function raiseFlag(file: string, flag: string, disk: ShelfDisk): Promise<void> {
  let waited = 0;
  for (let pause = 4; ; pause = Math.min(2 * pause, LONGEST_PAUSE)) {
    disk.write(flag, "");
    const other = othersFlag(file, flag, disk);
    if (other === null) return;
    disk.remove(flag);
    if (waited >= LONGEST_WAIT) throw new StillBusy(other);
    // Not all alike, or two would go on meeting.
    const wait = 1 + randomInt(pause);
    await disk.pause(wait);
    waited += wait;
  }
}

/** The flag of another run that is still at work, or null; what ended runs left is swept away. */
function othersFlag(file: string, own: string, disk: ShelfDisk): string | null {
  const folder = dirname(file);
  const before = `${basename(file)}.`;
  let found: string | null = null;
  for (const name of disk.names(folder)) {
    const path = join(folder, name);
    if (path === own || !name.startsWith(before)) continue;
    const [, host, pid, kind] =
      /^([^.]+)\.(\d+)\.[\da-f]+(\.laywright-(?:busy|next))$/u.exec(name.slice(before.length)) ?? [];
    if (kind === undefined) continue;
    const isOver = host === disk.host && !disk.isRunning(Number(pid));
    if (isOver) attempt(() => disk.remove(path));
    else if (kind === FLAG) found = path;
  }
  return found;
}

/** Whether it went well; what stays is swept away another time. */
function attempt(act: () => void): boolean {
  try {
    act();
    return true;
  } catch {
    return false;
  }
}
