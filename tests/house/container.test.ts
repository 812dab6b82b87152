// The image and the compose file are read by parsers of others (dockerfile-utils, yaml), and the command lines in them by
// the program's own. Building them needs an engine, which is not everywhere.
import { existsSync, readFileSync } from "node:fs";
import { DockerfileParser } from "dockerfile-ast";
import { validate } from "dockerfile-utils";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { COMMANDS } from "../../src/cli/commands.ts";
import { parseCommandLine } from "../../src/cli/options/parseCommandLine.ts";

const root = new URL("../../", import.meta.url);
const read = (path: string): string => readFileSync(new URL(path, root), "utf8");
const image = read("docs/container/Dockerfile");

interface Service {
  readonly command: readonly string[];
  readonly ports?: readonly string[];
  readonly read_only?: boolean;
  readonly cap_drop?: readonly string[];
  readonly depends_on?: Readonly<Record<string, unknown>>;
}

const compose: {
  readonly services: Readonly<Record<string, Service>>;
  readonly volumes: object;
  readonly secrets: object;
} = parse(read("docs/container/compose.yaml"), { merge: true });

test("the image is sound, of two stages, and runs the program as nobody in particular", () => {
  expect(validate(image)).toEqual([]);
  const file = DockerfileParser.parse(image);
  expect(file.getFROMs().map((from) => from.getBuildStage())).toEqual(["build", null]);
  const last = image.slice(image.lastIndexOf("FROM"));
  expect(last).toContain("USER node");
  expect(last).not.toMatch(/^(?:EXPOSE|ADD|RUN)/mu);
  const [entry] = file.getENTRYPOINTs();
  expect(JSON.parse(entry!.getArgumentsContent()!)).toEqual(["node", "/laywright/dist/cli/main.js"]);
  // What the package says is given out is what goes into the image, and what it needs besides.
  const { files, bin } = JSON.parse(read("package.json"));
  for (const folder of files.filter((name: string) => !name.startsWith("!"))) expect(last).toContain(`/${folder} `);
  expect(entry!.getArgumentsContent()).toContain(bin.laywright);
});

test("what the last stage copies is in the sources, or is made by installing", () => {
  const copied = DockerfileParser.parse(image)
    .getCOPYs()
    .filter((copy) => copy.getFlags().some((flag) => flag.getName() === "from"))
    .flatMap((copy) => copy.getArguments().slice(0, -1))
    .map((source) => source.getValue().replace(/^\/laywright\//u, ""));
  expect(copied).toContain("package.json");
  const made = ["dist", "node_modules"];
  for (const path of copied) if (!made.includes(path)) expect(existsSync(new URL(path, root)), path).toBe(true);
});

test("a store, workers, a batch and the service; no port but the service's, on this machine alone", () => {
  const { services } = compose;
  expect(Object.keys(services)).toEqual(["store", "worker", "batch", "serve"]);
  const ports = Object.entries(services).flatMap(([name, { ports = [] }]) =>
    ports.map((port) => `${name} ${port}`),
  );
  expect(ports).toEqual(["serve 127.0.0.1:4180:4180"]);
  for (const name of ["worker", "batch", "serve"])
    expect(services[name]).toMatchObject({ read_only: true, cap_drop: ["ALL"] });
  expect(services["store"]!.command).toContain("--requirepass");
  for (const name of ["worker", "batch"]) expect(services[name]!.depends_on).toHaveProperty("store");
  expect(Object.keys(compose.volumes)).toEqual(["store"]);
  expect(Object.keys(compose.secrets)).toEqual(["token"]);
});

test.each(["worker", "batch", "serve"])("the command line of %s is one that the program takes", async (name) => {
  const [command, ...words] = compose.services[name]!.command;
  const listed = COMMANDS.find((one) => one.name === command);
  const { values, operands } = parseCommandLine(await listed!.load(), words);
  if (name !== "serve") expect(URL.canParse(values.get("queue")!.replace(/\$\{\w+\}/u, "x"))).toBe(true);
  expect(operands).toEqual(name === "batch" ? ["template.json", "orders.csv"] : []);
});
