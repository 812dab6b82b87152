import { endAllowance } from "../../../core/straps/build/strapLengths.ts";
import { doublesEnds, rebuiltAs } from "../../../core/straps/build/unusedChoices.ts";
import { unsaidEndStyle, usualEndStyle } from "../../../core/straps/build/usualEnds.ts";
import { CONSTRUCTIONS } from "../../../core/straps/constructions/catalogue.ts";
import {
  type Adjustment,
  END_WISHES,
  type EndWish,
  type HardwareWish,
  type SewingMachine,
  STRAP_CHOICES,
  type StrapWish,
} from "../../../core/straps/wish/strapWish.ts";
import { ChoiceBlank, LengthBlank, OptionalLengthBlank, Tick } from "../../fields/blanks.tsx";
import { useLengths } from "../../fields/units.ts";
import { Icon } from "../../parts/Icon.tsx";
import { Term } from "../../parts/Term.tsx";
import { useChange, useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import type { StrapBlanks } from "./StrapCore.tsx";
import { StrapFolds } from "./StrapFolds.tsx";

/** Ends, slider and rings, grain, joins, edges and the machine: what a strap also may say. */
export function StrapMore(shared: StrapBlanks) {
  const texts = useTexts();
  return (
    <details class="more">
      <summary>{texts.bag.strap.more}</summary>
      <Ends {...shared} />
      <StrapFolds {...shared} />
      <Hardware {...shared} />
      <GrainAndJoins {...shared} />
      <Machine {...shared} />
    </details>
  );
}

function Ends({ strap, path, set }: StrapBlanks) {
  const texts = useTexts();
  const words = texts.bag.strap;
  const lengths = useLengths();
  const outer = useProject().materials.find(({ id }) => id === strap.materials.outer);
  const adds = (style: EndWish["style"]) => {
    const mm = endAllowance(strap, { style }, outer?.kind ?? "woven");
    const word = style === "usual" ? words.endUsual(words.ends[usualEndStyle(strap)]) : words.ends[style];
    return mm > 0 ? words.endAdds(word, lengths.size(mm)) : word;
  };
  const end = (index: 0 | 1) => (
    <ChoiceBlank<EndWish["style"]>
      label={words.endLabel(index + 1)}
      path={path(`ends[${index}].style`)}
      value={strap.ends?.[index].style ?? unsaidEndStyle(strap)}
      options={END_WISHES.map((style) => [style, adds(style)] as const)}
      onValue={(style) => set({ ends: endsWith(strap, index, style) }, words.endLabel(index + 1))}
    />
  );
  return (
    <p class="sentence">
      {words.adjusted(
        <ChoiceBlank<Adjustment>
          label={words.adjustmentLabel}
          path={path("adjustment")}
          value={strap.adjustment ?? "fixed"}
          options={STRAP_CHOICES.adjustment.map((choice) => [choice, words.adjustments[choice]] as const)}
          onValue={(adjustment) =>
            set(rebuiltAs({ ...strap, adjustment }, strap.construction), words.adjustmentLabel)
          }
        />,
      )}{" "}
      {words.endsAre(end(0), end(1))}{" "}
      {(strap.adjustment === "two-part" || strap.shortPart !== undefined) &&
        words.shortPart(
          <OptionalLengthBlank
            label={words.shortPartLabel}
            path={path("shortPart")}
            value={strap.shortPart ?? null}
            empty={words.asUsual}
            range={{ minMm: 10, maxMm: 10_000 }}
            onValue={(mm, key) => set({ shortPart: mm ?? undefined }, words.shortPartLabel, key)}
          />,
        )}{" "}
      {(doublesEnds(strap) || strap.endThickness !== undefined) &&
        words.endThickness(
          <OptionalLengthBlank
            label={words.endThicknessLabel}
            path={path("endThickness")}
            value={strap.endThickness ?? null}
            empty={words.asThick}
            fine
            range={{ minMm: 0.1, maxMm: 50 }}
            onValue={(mm, key) => set({ endThickness: mm ?? undefined }, words.endThicknessLabel, key)}
          />,
        )}
    </p>
  );
}

/** The ends with one of them changed; the other stays what it is, said or not. */
function endsWith(strap: StrapWish, index: 0 | 1, style: EndWish["style"]): StrapWish["ends"] {
  const unsaid: EndWish = { style: unsaidEndStyle(strap) };
  const [first, second] = strap.ends ?? [unsaid, unsaid];
  return index === 0 ? [{ style }, second] : [first, { style }];
}

function Hardware({ strap, path, set }: StrapBlanks) {
  const texts = useTexts();
  const words = texts.bag.strap;
  const hardware = strap.hardware ?? [];
  const put = (next: readonly HardwareWish[], key?: string) => set({ hardware: next }, words.hardwareLabel, key);
  return (
    <>
      {hardware.map((item, i) => (
        <p class="sentence" key={i}>
          {words.hardware(
            <ChoiceBlank<HardwareWish["kind"]>
              label={words.hardwareLabel}
              path={path(`hardware[${i}].kind`)}
              value={item.kind}
              options={STRAP_CHOICES.hardware.map((choice) => [choice, words.hardwareKinds[choice]] as const)}
              onValue={(kind) => put(hardware.with(i, { kind, innerWidth: item.innerWidth }))}
            />,
            <LengthBlank
              label={words.innerWidth}
              path={path(`hardware[${i}].innerWidth`)}
              value={item.innerWidth}
              range={{ minMm: 3, maxMm: 200 }}
              onValue={(innerWidth, key) => put(hardware.with(i, { ...item, innerWidth }), key)}
            />,
          )}{" "}
          {item.kind !== "slider" &&
            words.hardwareLength(
              <OptionalLengthBlank
                label={words.hardwareLengthLabel}
                path={path(`hardware[${i}].length`)}
                value={item.length ?? null}
                empty={words.notMeasured}
                range={{ minMm: 1, maxMm: 300 }}
                onValue={(length, key) => put(hardware.with(i, { ...item, length: length ?? undefined }), key)}
              />,
            )}
          {item.kind === "slider" &&
            words.opening(
              <OptionalLengthBlank
                label={words.openingLabel}
                path={path(`hardware[${i}].opening`)}
                value={item.opening ?? null}
                empty={words.notMeasured}
                fine
                range={{ minMm: 1, maxMm: 100 }}
                onValue={(opening, key) => put(hardware.with(i, { ...item, opening: opening ?? undefined }), key)}
              />,
            )}{" "}
          <button
            type="button"
            class="press plain"
            aria-label={words.removeHardware(words.hardwareKinds[item.kind])}
            onClick={() => put(hardware.filter((_, j) => j !== i))}
          >
            <Icon name="bin" />
          </button>
        </p>
      ))}
      <button
        type="button"
        class="press"
        onClick={() => put([...hardware, { kind: "ring", innerWidth: strap.width?.mm ?? 25 }])}
      >
        <Icon name="plus" /> {words.addHardware}
      </button>
    </>
  );
}

function GrainAndJoins({ strap, path, set }: StrapBlanks) {
  const texts = useTexts();
  const words = texts.bag.strap;
  return (
    <>
      <p class="sentence">
        {words.grain(
          <Term id="grain" />,
          <ChoiceBlank<NonNullable<StrapWish["grain"]>>
            label={words.grainLabel}
            path={path("grain")}
            value={strap.grain ?? "either"}
            options={STRAP_CHOICES.grain.map((choice) => [choice, texts.grains[choice]] as const)}
            onValue={(grain) => set({ grain }, words.grainLabel)}
          />,
        )}{" "}
        {(CONSTRUCTIONS[strap.construction].visibleEdges(strap.folds ?? {}) > 0 || strap.edgeFinish) &&
          words.edges(
            <ChoiceBlank<NonNullable<StrapWish["edgeFinish"]>>
              label={words.edgesLabel}
              path={path("edgeFinish")}
              value={strap.edgeFinish ?? "as-cut"}
              options={STRAP_CHOICES.edgeFinish.map((choice) => [choice, words.edgeFinishes[choice]] as const)}
              onValue={(edgeFinish) => set({ edgeFinish }, words.edgesLabel)}
            />,
          )}{" "}
        {words.cutBy(
          <ChoiceBlank<NonNullable<StrapWish["cutBy"]>>
            label={words.cutByLabel}
            path={path("cutBy")}
            value={strap.cutBy ?? "fold"}
            options={STRAP_CHOICES.cutBy.map((choice) => [choice, words.cutBys[choice]] as const)}
            onValue={(cutBy) => set({ cutBy }, words.cutByLabel)}
          />,
        )}
      </p>
      <Tick
        label={words.joins}
        path={path("joins.allowed")}
        value={strap.joins?.allowed ?? false}
        onValue={(allowed) => set({ joins: { ...strap.joins, allowed } }, words.joins)}
      />
      {strap.joins?.allowed && <p class="caution">{words.joinCaution}</p>}
    </>
  );
}

/** What the maker's machine takes, for every strap of the project; what one strap says of it stands before that. */
function Machine({ strap, path, set }: StrapBlanks) {
  const words = useTexts().bag.strap;
  const { sewingMachine } = useProject();
  const change = useChange();
  const put = (part: SewingMachine, label: string, key: string) =>
    change((now) => ({ ...now, sewingMachine: { ...now.sewingMachine, ...part } }), label, key);
  const own = strap.machine?.maxThickness;
  return (
    <p class="sentence">
      {words.machine(
        <OptionalLengthBlank
          label={words.machineLabel}
          path="sewingMachine.maxThickness"
          value={sewingMachine?.maxThickness ?? null}
          empty={words.notSaid}
          fine
          range={{ minMm: 1, maxMm: 40 }}
          onValue={(mm, key) => put({ maxThickness: mm ?? undefined }, words.machineLabel, key)}
        />,
        <OptionalLengthBlank
          label={words.footLiftLabel}
          path="sewingMachine.footLift"
          value={sewingMachine?.footLift ?? null}
          empty={words.notSaid}
          fine
          range={{ minMm: 1, maxMm: 40 }}
          onValue={(mm, key) => put({ footLift: mm ?? undefined }, words.footLiftLabel, key)}
        />,
      )}{" "}
      {own !== undefined &&
        words.machineHere(
          <OptionalLengthBlank
            label={words.machineHereLabel}
            path={path("machine.maxThickness")}
            value={own}
            empty={words.notSaid}
            fine
            range={{ minMm: 1, maxMm: 40 }}
            onValue={(mm, key) =>
              set({ machine: { ...strap.machine, maxThickness: mm ?? undefined } }, words.machineHereLabel, key)
            }
          />,
        )}
    </p>
  );
}
