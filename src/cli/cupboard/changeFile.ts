import { randomBytes, randomInt } from "node:crypto";
import { basename, dirname, join } from "node:path";
import { NODE_SHELF, type ShelfDisk } from "./shelfDisk.ts";

/** A flag says that its run is about to change the file; a part is the new text on its way. */
const FLAG = ".laywright-busy";
const PART = ".laywright-next";
/** Longest wait for another run, ms: a change takes some hundredths of a second. */
const LONGEST_WAIT = 20_000;
const LONGEST_PAUSE = 200;

/** A flag of another machine that stands so long is left by a run that ended, ms: a run takes its own down after hundredths of a second. */
const LEFT_BEHIND = 60_000;

/** Another run's flag: on which machine it runs, and how long the flag has stood. */
export interface Flag {
  readonly path: string;
  readonly host: string;
  readonly isHere: boolean;
  readonly pid: number;
  readonly ms: number;
}

/** Another run's flag that did not go away. */
export class StillBusy extends Error {
  readonly flag: Flag;

  constructor(flag: Flag) {
    super(`still busy: ${flag.path}`);
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
 * Errors: as the disk has them; `StillBusy` when another run holds the file for 20 s, and at once when one of another
 * machine has held it for a minute: it seems to have ended, but whether it did is not known here (`freeFile`).
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
    const other = othersFlags(file, flag, disk)[0] ?? null;
    if (other === null) return;
    disk.remove(flag);
    const isLeft = !other.isHere && other.ms >= LEFT_BEHIND;
    if (isLeft || waited >= LONGEST_WAIT) throw new StillBusy(other);
    // Not all alike, or two would go on meeting.
    const wait = 1 + randomInt(pause);
    await disk.pause(wait);
    waited += wait;
  }
}

/** Flags of other runs that may still be at work; what ended runs of this machine left is swept away. */
function othersFlags(file: string, own: string, disk: ShelfDisk): Flag[] {
  const folder = dirname(file);
  const before = `${basename(file)}.`;
  // Both times are the disk's own, which may be on a machine whose clock goes otherwise.
  const now = disk.writtenAt(own) ?? 0;
  return disk.names(folder).flatMap((name): Flag[] => {
    const path = join(folder, name);
    if (path === own || !name.startsWith(before)) return [];
    const [, host, pid, kind] = PASSING.exec(name.slice(before.length)) ?? [];
    if (host === undefined || kind === undefined) return [];
    const isHere = host === disk.host;
    if (isHere && !disk.isRunning(Number(pid))) attempt(() => disk.remove(path));
    else if (kind === FLAG) {
      const ms = Math.max(0, now - (disk.writtenAt(path) ?? now));
      return [{ path, host, isHere, pid: Number(pid), ms }];
    }
    return [];
  });
}

/** Names of flags and parts behind the file's own: machine, process, chance. */
const PASSING = /^([^.]+)\.(\d+)\.[\da-f]+(\.laywright-(?:busy|next))$/u;

/**
 * Takes down the flags of other machines that have stood for a minute or longer, with what those runs had begun to write,
 * and gives them. Only to be done where whoever asks knows that no run is at work there: from here that cannot be seen.
 *
 * Errors: as the disk has them; `StillBusy` when a flag is younger, or a run of this machine holds the file.
 */
export function freeFile(path: string, disk: ShelfDisk = NODE_SHELF): readonly Flag[] {
  const file = disk.real(path);
  const folder = dirname(file);
  const own = join(folder, `${basename(file)}.${disk.host}.${disk.pid}.${randomBytes(6).toString("hex")}${PART}`);
  // Not a flag: it holds nobody off, and only says what time it is there.
  disk.write(own, "");
  try {
    const flags = othersFlags(file, own, disk);
    const fresh = flags.find(({ isHere, ms }) => isHere || ms < LEFT_BEHIND);
    if (fresh !== undefined) throw new StillBusy(fresh);
    for (const flag of flags)
      for (const left of [flag.path, flag.path.slice(0, -FLAG.length) + PART]) disk.remove(left);
    return flags;
  } finally {
    attempt(() => disk.remove(own));
  }
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
