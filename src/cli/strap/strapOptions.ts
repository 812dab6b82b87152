import { BACKINGS, type MaterialKind } from "../../core/materials/material.ts";
import { USUAL_MATERIALS, USUAL_NAMES, type UsualMaterialName } from "../../core/materials/usualMaterials.ts";
import type { Problem } from "../../core/problems/problem.ts";
import {
  CONSTRUCTION_IDS,
  END_WISHES,
  type EndWish,
  type HardwareWish,
  type LengthWish,
  type SewingMachine,
  STITCH_TYPES,
  STRAP_CHOICES,
  type StrapMaterial,
  type StrapWish,
  type WidthWish,
} from "../../core/straps/wish/strapWish.ts";
import type { Language } from "../../core/units/language.ts";
import { type LengthRange, parseLength } from "../../core/units/parseLength.ts";
import { readThickness } from "../../core/units/parseThickness.ts";
import { STRAP_WORDS } from "../../core/words/words.ts";
import { type ParsedArgs, UsageError } from "../command.ts";
import { inputProblem } from "../inOut/toldProblem.ts";
import { numberOption, partsBy, requiredOption, wordOption } from "../options/optionValues.ts";
import { CLI_TEXTS } from "../words/words.ts";
import { readPreset } from "./readNamed.ts";

/** Kinds that a strap is made of outside. */
const isOuter = (name: UsualMaterialName): boolean =>
  ["woven", "vinyl", "leather", "cork", "felt"].includes(USUAL_MATERIALS[name].kind);

const WIDTHS: LengthRange = { minMm: 1, maxMm: 2000 };
const LENGTHS: LengthRange = { minMm: 1, maxMm: 100_000 };
const SMALL: LengthRange = { minMm: 0, maxMm: 200 };

/** Reads lengths out of the options and keeps every problem until all are read. */
export class LengthReader {
  readonly problems: Problem[] = [];
  readonly #args: ParsedArgs;

  constructor(args: ParsedArgs) {
    this.#args = args;
  }

  /** An optional length; undefined when absent or unreadable (the problem is kept). */
  length(name: string, range: LengthRange = SMALL): number | undefined {
    const text = this.#args.values.get(name);
    return text === undefined ? undefined : this.text(text, `--${name}`, range);
  }

  /** A length out of a text that is part of an option. */
  text(text: string, path: string, range: LengthRange): number | undefined {
    const read = parseLength(text, "mm", path, range);
    if (read.ok) return read.value;
    this.problems.push(...read.problems);
    return undefined;
  }

  /** Thickness of a layer; leather may be given in its ounces. */
  thickness(name: string, kind: MaterialKind): number | undefined {
    const text = this.#args.values.get(name);
    if (text === undefined) return undefined;
    const read = readThickness(text, "mm", `--${name}`, kind === "leather");
    if (read.ok) return read.value;
    this.problems.push(...read.problems);
    return undefined;
  }

  /** Two lengths with an "x" between, as `38 mm x 2 mm`; the second may be left out. */
  pair(name: string): readonly [number | undefined, number | undefined] {
    const text = this.#args.values.get(name);
    if (text === undefined) return [undefined, undefined];
    const [first = "", second] = partsBy(text);
    return [
      this.text(first, `--${name}`, WIDTHS),
      second === undefined ? undefined : this.text(second, `--${name}`, SMALL),
    ];
  }

  /** Ends the command with everything that could not be read. */
  check(): void {
    if (this.problems.length > 0) throw inputProblem(this.problems);
  }
}

/** A kind of material in the language of the run; as typed where that is the word. */
function materialWord(typed: string | undefined, language: Language): string {
  const { cloth, materials } = CLI_TEXTS[language].strap;
  return typed === undefined ? cloth : (materials[typed.toLowerCase().replaceAll(" ", "-")] ?? typed);
}

/** What the strap is made of, as named on the command line. */
export function readMaterials(args: ParsedArgs, lengths: LengthReader, language: Language): StrapMaterial[] {
  const named = (option: string, fallback: string) => {
    const word = args.values.get(option) ?? fallback;
    const known = USUAL_NAMES.find((name) => name === word.toLowerCase().replaceAll(" ", "-"));
    if (known) return { name: word, ...USUAL_MATERIALS[known] };
    throw new UsageError((say) => say.oneOf(option, USUAL_NAMES.filter(isOuter), word));
  };
  const outer = named("material", "woven");
  const neutral = numberOption(args, "neutral", { least: 0, most: 1 }, undefined);
  const backing = wordOption(args, "backing", BACKINGS, "unknown");
  const materials: StrapMaterial[] = [
    {
      id: "outer",
      name: materialWord(args.values.get("material"), language),
      kind: outer.kind,
      thickness: lengths.thickness("thickness", outer.kind) ?? outer.thickness,
      backing,
      fold: { neutral },
      usableWidth: lengths.length("stock-width", LENGTHS),
      longestPiece: lengths.length("stock-length", LENGTHS),
    },
  ];
  const add = (
    id: "facing" | "interfacing" | "padding",
    one: { kind: MaterialKind; thickness: number },
    option: string,
  ): void => {
    const thickness = lengths.thickness(option, one.kind) ?? one.thickness;
    const name = STRAP_WORDS[language].parts[id];
    materials.push({ id, name, kind: one.kind, thickness, backing: "unknown", fold: {} });
  };
  if (args.values.has("facing") || args.values.has("facing-thickness")) {
    add("facing", named("facing", "woven"), "facing-thickness");
  }
  if ((args.values.get("interfacing") ?? "none") !== "none") {
    add("interfacing", USUAL_MATERIALS.interfacing, "interfacing-thickness");
  }
  if (args.values.has("padding")) add("padding", USUAL_MATERIALS.padding, "padding");
  return materials;
}

function readWidth(lengths: LengthReader): WidthWish | undefined {
  const finished = lengths.length("width", WIDTHS);
  const cut = lengths.length("cut-width", WIDTHS);
  if (finished !== undefined && cut !== undefined) throw new UsageError((say) => say.either("width", "cut-width"));
  if (cut !== undefined) return { kind: "cut", mm: cut };
  return finished === undefined ? undefined : { kind: "finished", mm: finished };
}

function readLengthWish(lengths: LengthReader, args: ParsedArgs, usual: LengthWish | undefined): LengthWish {
  const options = [
    ["length", "finished"],
    ["cut-length", "cut"],
    ["drop", "drop"],
    ["worn", "worn"],
  ] as const;
  const given = options.filter(([name]) => args.values.has(name));
  if (given.length === 0 && usual !== undefined) return usual;
  if (given.length !== 1) throw new UsageError((say) => say.oneOfThese(options.map(([name]) => name)));
  const [name, kind] = given[0]!;
  return { kind, mm: lengths.length(name, LENGTHS) ?? 0 };
}

function readEnds(args: ParsedArgs, lengths: LengthReader): readonly [EndWish, EndWish] | undefined {
  const text = args.values.get("ends");
  if (text === undefined) return undefined;
  const ends = text.split(",").map((part): EndWish => {
    const [style = "", allowance] = part.trim().split(/\s+(.*)/u);
    const known = END_WISHES.find((word) => word === style);
    if (!known) throw new UsageError((say) => say.oneOf("ends", END_WISHES, style));
    return { style: known, allowance: allowance ? lengths.text(allowance, "--ends", LENGTHS) : undefined };
  });
  if (ends.length > 2) throw new UsageError((say) => say.tooManyEnds);
  return [ends[0]!, ends[1] ?? ends[0]!];
}

function readHardware(args: ParsedArgs, lengths: LengthReader): HardwareWish[] {
  const out: HardwareWish[] = [];
  for (const kind of STRAP_CHOICES.hardware) {
    if (!args.values.has(kind)) continue;
    const [innerWidth = 0, second] = lengths.pair(kind);
    const fixedBar = kind === "slider" && args.switches.has("fixed-bar");
    out.push({ kind, innerWidth, ...(kind === "slider" ? { opening: second } : { length: second }), fixedBar });
  }
  return out;
}

/** Options by the place in a wish that they fill, where the two are not called alike. */
const OPTIONS: Readonly<Record<string, string>> = {
  "core.cordDiameter": "cord",
  "core.webbingWidth": "webbing",
  "core.webbingThickness": "webbing",
  "materials.outer": "thickness",
  "materials.facing": "facing",
  "materials.padding": "padding",
  "folds.seamAllowance": "seam",
  "folds.paddingPressed": "padding-pressed",
  "folds.edgeGap": "edge-gap",
  "folds.turnedThickness": "turned-thickness",
  "stitch.fromEdge": "topstitch",
  "stitch.length": "stitch-length",
  "stitch.extraRows": "extra-rows",
  "machine.maxThickness": "machine-thickness",
  shortPart: "short-part",
  endThickness: "end-thickness",
  edgeFinish: "edge",
  cutBy: "trade",
  adjustment: "adjust",
};

/** A wish's problems at the options that spell it out. */
export function atOptions(problems: readonly Problem[], { hardware = [], width, length }: StrapWish): Problem[] {
  const optionOf = (path: string): string => {
    if (path === "width" && width?.kind === "cut") return "cut-width";
    if (path === "length" && length.kind !== "finished") return length.kind === "cut" ? "cut-length" : length.kind;
    const part = /^hardware\[(\d+)\]/u.exec(path)?.[1];
    if (path.endsWith(".fixedBar")) return "fixed-bar";
    if (part !== undefined) return hardware[Number(part)]!.kind;
    return OPTIONS[path] ?? path.replace(/^folds\.|\[\d+\].*$/gu, "");
  };
  return problems.map((problem) => ({ ...problem, path: `--${optionOf(problem.path)}` }));
}

/** The machine of a workshop file, with what the options say of it. */
function machineOf(args: ParsedArgs, lengths: LengthReader, own: SewingMachine): SewingMachine {
  const maxThickness = lengths.length("machine-thickness");
  const maxLayers = numberOption(args, "machine-layers", { least: 1, most: 100, whole: true }, undefined);
  return {
    ...own,
    ...(maxThickness === undefined ? {} : { maxThickness }),
    ...(maxLayers === undefined ? {} : { maxLayers }),
  };
}

/** The wish that the options of `laywright strap` spell out, and its materials. Throws on wrong usage and bad lengths. */
export function readStrap(
  args: ParsedArgs,
  language: Language,
  machine: SewingMachine = {},
): { wish: StrapWish; materials: StrapMaterial[] } {
  if (!args.values.has("compare")) requiredOption(args, "construction");
  const lengths = new LengthReader(args);
  const preset = readPreset(args);
  const materials = readMaterials(args, lengths, language);
  const ids = new Set(materials.map((one) => one.id));
  const role = (id: string): string | undefined => (ids.has(id) ? id : undefined);
  const [webbingWidth, webbingThickness] = lengths.pair("webbing");
  if (args.values.get("grain") === "bias") throw inputProblem([{ code: "strap-on-bias", path: "--grain" }]);
  const join = wordOption(args, "join", ["none", ...STRAP_CHOICES.joinSeam], "none");
  const wish: StrapWish = {
    id: "strap",
    name: args.values.get("name") ?? CLI_TEXTS[language].strap.name,
    construction: wordOption(args, "construction", CONSTRUCTION_IDS, "fourfold"),
    count: numberOption(args, "count", { least: 1, most: 1000, whole: true }, preset?.count ?? 1),
    width: readWidth(lengths) ?? preset?.width,
    length: readLengthWish(lengths, args, preset?.length),
    materials: {
      outer: "outer",
      facing: role("facing"),
      interfacing: role("interfacing"),
      padding: role("padding"),
    },
    grain: args.values.has("grain") ? wordOption(args, "grain", STRAP_CHOICES.grain, "either") : undefined,
    adjustment: wordOption(args, "adjust", STRAP_CHOICES.adjustment, preset?.adjustment ?? "fixed"),
    shortPart: lengths.length("short-part", LENGTHS),
    ends: readEnds(args, lengths),
    endThickness: lengths.length("end-thickness"),
    interfacing: wordOption(args, "interfacing", STRAP_CHOICES.interfacing, "none"),
    core: { webbingWidth, webbingThickness, cordDiameter: lengths.length("cord") },
    hardware: readHardware(args, lengths),
    machine: machineOf(args, lengths, machine),
    folds: {
      crease: args.values.has("crease") ? wordOption(args, "crease", STRAP_CHOICES.crease, "hard") : undefined,
      clearance: numberOption(args, "clearance", { least: 0, most: 1 }, undefined),
      edgeGap: lengths.length("edge-gap"),
      setback: lengths.length("setback"),
      hem: lengths.length("hem"),
      reveal: lengths.length("reveal"),
      seamAllowance: lengths.length("seam"),
      margin: lengths.length("margin"),
      turn: lengths.length("turn"),
      trim: lengths.length("trim"),
      turnedThickness: lengths.length("turned-thickness"),
      paddingPressed: numberOption(args, "padding-pressed", { least: 0.05, most: 1 }, undefined),
      layers: numberOption(args, "layers", { least: 1, most: 3, whole: true }, undefined),
    },
    stitch: {
      fromEdge: lengths.length("topstitch"),
      extraRows: numberOption(args, "extra-rows", { least: 0, most: 20, whole: true }, undefined),
      length: lengths.length("stitch-length"),
      type: STITCH_TYPES.find(
        (type) => String(type) === wordOption(args, "stitch-type", STITCH_TYPES.map(String), "301"),
      ),
    },
    joins: { allowed: join !== "none", seam: join === "none" ? undefined : join },
    edgeFinish: args.values.has("edge") ? wordOption(args, "edge", STRAP_CHOICES.edgeFinish, "as-cut") : undefined,
    cutBy: args.switches.has("trade") ? "trade" : "fold",
  };
  lengths.check();
  return { wish, materials };
}
