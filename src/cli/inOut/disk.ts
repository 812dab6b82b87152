import {
  copyFileSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from "node:fs";

/** What writing files asks of the disk; each throws as the system does. */
export interface Disk {
  exists(path: string): boolean;
  isFolder(path: string): boolean;
  /** Names in a folder; none when there is no such folder. */
  names(folder: string): readonly string[];
  /** Makes a folder and those above it; the first one made, if any. */
  makeFolder(path: string): string | undefined;
  /** A new file; it is an error when there is one already. */
  write(path: string, data: string | Uint8Array): void;
  /** The file under a second name as well. */
  keep(path: string, second: string): void;
  /** In one step; what stood under the new name is gone. */
  rename(from: string, to: string): void;
  remove(path: string): void;
  removeFolder(path: string): void;
  /** Whether a process of another run is still at work. */
  isRunning(pid: number): boolean;
}

/** The real one. */
export const NODE_DISK: Disk = {
  exists: existsSync,
  isFolder: (path) => statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false,
  names: (folder) => {
    // existsSync says no where the way leads through a file.
    const isThere = existsSync(folder) && statSync(folder).isDirectory();
    return isThere ? readdirSync(folder) : [];
  },
  makeFolder: (path) => mkdirSync(path, { recursive: true }),
  write: (path, data) => writeFileSync(path, data, { flag: "wx" }),
  keep: (path, second) => {
    try {
      linkSync(path, second);
    } catch {
      // Some file systems have no second names.
      copyFileSync(path, second);
    }
  },
  rename: (from, to) => {
    renameSync(from, to);
    // POSIX: between two names of one file, rename does nothing and both stay.
    rmSync(from, { force: true });
  },
  remove: (path) => rmSync(path, { force: true }),
  removeFolder: (path) => rmSync(path, { recursive: true, force: true }),
  isRunning: (pid) => {
    if (pid === process.pid) return false;
    try {
      process.kill(pid, 0);
      return true;
    } catch (error) {
      return (error as NodeJS.ErrnoException).code === "EPERM";
    }
  },
};
