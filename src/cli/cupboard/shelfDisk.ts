import {
  closeSync,
  fsyncSync,
  openSync,
  readdirSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";
import { hostname } from "node:os";

/** What changing one file safely asks of the machine; each throws as the system does. */
export interface ShelfDisk {
  /** Of this machine and this run, for names of passing files. */
  readonly host: string;
  readonly pid: number;
  /** Where a file really lies, when its name is a link; the name itself when there is none yet. */
  real(path: string): string;
  names(folder: string): readonly string[];
  /** Null when there is no such file. */
  read(path: string): string | null;
  /** A new file that stays through a power cut; it is an error when there is one already. */
  write(path: string, text: string): void;
  /** In one step; what stood under the new name is gone. */
  rename(from: string, to: string): void;
  remove(path: string): void;
  /** Names in a folder stay through a power cut. */
  settle(folder: string): void;
  isRunning(pid: number): boolean;
  /** When a file was written, ms, by the clock of the disk it lies on; null when there is no such file. */
  writtenAt(path: string): number | null;
  pause(ms: number): Promise<void>;
}

const isMissing = (error: unknown): boolean => (error as NodeJS.ErrnoException).code === "ENOENT";

function orNull<T>(act: () => T): T | null {
  try {
    return act();
  } catch (error) {
    if (isMissing(error)) return null;
    throw error;
  }
}

/** The real one. */
export const NODE_SHELF: ShelfDisk = {
  host: hostname().replace(/[^\da-z-]/giu, "-") || "here",
  pid: process.pid,
  real: (path) => orNull(() => realpathSync(path)) ?? path,
  names: (folder) => readdirSync(folder),
  read: (path) => orNull(() => readFileSync(path, "utf8")),
  write: (path, text) => {
    const file = openSync(path, "wx");
    try {
      writeFileSync(file, text);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
  },
  rename: renameSync,
  remove: (path) => rmSync(path, { force: true }),
  settle: (folder) => {
    const file = openSync(folder, "r");
    try {
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
  },
  isRunning: (pid) => {
    try {
      process.kill(pid, 0);
      return true;
    } catch (error) {
      return (error as NodeJS.ErrnoException).code === "EPERM";
    }
  },
  writtenAt: (path) => orNull(() => statSync(path).mtimeMs),
  pause: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
};
