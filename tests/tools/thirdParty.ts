// `npm run notices`: writes THIRD-PARTY.txt, the notices of every library and font that the package, the page and its
// PDFs carry. The list is the lock file's: what is installed with the package, nothing that only builds or tests it.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { standardLicence } from "./standardLicences.ts";

const root = new URL("../../", import.meta.url);

/** A library as its notice names it. */
export interface Notice {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** What its authors ask to be passed on, in their words. */
  readonly text: string;
}

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  /** Only on some systems, installed beside us by npm and never carried by us. */
  readonly optional?: boolean;
}

/** Notices of everything in the lock file that is not for building and testing alone, by name. */
export function notices(): Notice[] {
  const lock: { packages: Record<string, Locked> } = JSON.parse(
    readFileSync(new URL("package-lock.json", root), "utf8"),
  );
  return Object.entries(lock.packages)
    .filter(([path, { dev, devOptional, optional }]) => path !== "" && !dev && !devOptional && !optional)
    .map(([path, { version = "", license = "" }]) => ({
      name: path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length),
      version,
      licence: license,
      text: noticeText(new URL(`${path}/`, root), license),
    }))
    .sort((a, b) => (a.name < b.name ? -1 : 1));
}

/** The licence files of a package; the standard text with its authors where it brings none. */
function noticeText(folder: URL, licence: string): string {
  const files = readdirSync(folder).filter((name) => /^(?:licen[cs]e|copying|notice|copyright)/iu.test(name));
  if (files.length > 0) return files.map((name) => readFileSync(new URL(name, folder), "utf8").trim()).join("\n\n");
  const { author, contributors } = JSON.parse(readFileSync(new URL("package.json", folder), "utf8"));
  const people = [author, ...(contributors ?? [])]
    .flat()
    .filter((one) => one !== undefined)
    .map((one) => (typeof one === "string" ? one : one.name))
    .map((one) => one.replace(/\s*[<(](?:[^>)]*@|http)[^>)]*[>)]/gu, ""));
  return standardLicence(licence, people);
}

const LINE = "=".repeat(100);

/** The whole file. */
export function noticesText(list: readonly Notice[]): string {
  const head = "Laywright contains the following libraries and fonts, each under its own licence.";
  const toc = list.map(({ name, version, licence }) => `  ${name} ${version} (${licence})`);
  const parts = list.map(({ name, version, licence, text }) => [LINE, `${name} ${version}: ${licence}`, "", text]);
  return `${[head, "", ...toc, "", ...parts.flatMap((part) => [...part, ""])].join("\n").replaceAll("\r", "")}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const target = fileURLToPath(new URL("dist/THIRD-PARTY.txt", root));
  mkdirSync(dirname(target), { recursive: true });
  writeFileSync(target, noticesText(notices()));
}
