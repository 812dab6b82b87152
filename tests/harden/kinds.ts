import type { Kind } from "./kind.ts";

/** Every kind of hardening by its name, loaded when it is run, in the order they are run when none is named. */
export const KINDS: Readonly<Record<string, () => Promise<Kind>>> = {
  files: async () => (await import("./hostileFiles.ts")).hostileFiles,
  commands: async () => (await import("./commandLines.ts")).commandLines,
  patterns: async () => (await import("./patternFiles.ts")).patternFiles,
  plans: async () => (await import("./smallProjects.ts")).smallProjects,
  lay: async () => (await import("./hostileLays.ts")).hostileLays,
  kills: async () => (await import("./kills.ts")).killsOf(await built()),
  intoKills: async () => (await import("./kills.ts")).intoKillsOf(await built()),
  batchKills: async () => (await import("./batchKills.ts")).batchKillsOf(await built(), 2),
  cupboardKills: async () => {
    const { BUILT_MODULES, cupboardKillsOf } = await import("./cupboardKills.ts");
    return cupboardKillsOf(BUILT_MODULES);
  },
  pageKills: async () => (await import("./pageKills.ts")).pageKills(),
};

const built = async () => (await import("./batchKills.ts")).BUILT;
