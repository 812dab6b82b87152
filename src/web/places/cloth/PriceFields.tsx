import type { ComponentChildren } from "preact";
import type { Price, PriceStep } from "../../../core/materials/price.ts";
import { ChoiceBlank, LengthBlank, MoneyBlank, OptionalLengthBlank } from "../../fields/blanks.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** Ways a price is asked. mm and mm². */
const BASES = {
  metre: { kind: "length", mm: 1000 },
  yard: { kind: "length", mm: 914.4 },
  squareMetre: { kind: "area", mm2: 1_000_000 },
  squareFoot: { kind: "area", mm2: 92_903.04 },
  each: { kind: "each" },
} as const;
type BasisName = keyof typeof BASES;

function basisName({ basis }: Price): BasisName {
  if (basis.kind === "each") return "each";
  if (basis.kind === "area") return basis.mm2 === BASES.squareFoot.mm2 ? "squareFoot" : "squareMetre";
  return basis.mm === BASES.yard.mm ? "yard" : "metre";
}

const SOLD = { minMm: 1, maxMm: 50_000 };
/** As in project files. */
const MOST_STEPS = 20;

interface PriceProps {
  readonly price: Price | null;
  readonly path: string;
  readonly label: string;
  /** What stands where there is no price. */
  readonly empty: string;
  /** Where the currency is chosen beside the amount; else the amount is written with it. */
  readonly currency?: ComponentChildren;
  /** What a new price is for; by length unless told. */
  readonly each?: boolean;
  readonly onPrice: (price: Price | null, label: string, key?: string) => void;
}

/** What something costs, for how much of it, and how it is sold: steps, least length, cheaper from a length on. */
export function PriceFields({ price, path, label, empty, currency, each, onPrice }: PriceProps) {
  const words = useTexts().cloth;
  const { output } = useProject();
  const isInches = output.lengths.startsWith("in");
  const usual: Price =
    each === true
      ? { amount: 0, basis: BASES.each, step: 0 }
      : { amount: 0, basis: isInches ? BASES.yard : BASES.metre, step: isInches ? 228.6 : 100 };
  const amount = (
    <MoneyBlank
      label={label}
      path={`${path}.amount`}
      bare={currency !== undefined}
      value={price?.amount ?? null}
      empty={empty}
      onValue={(value, key) => onPrice(value === null ? null : { ...(price ?? usual), amount: value }, label, key)}
    />
  );
  if (price === null) return <p class="sentence">{words.costsNothingYet(amount)}</p>;
  const basis = (
    <ChoiceBlank<BasisName>
      label={words.basisLabel}
      path={`${path}.basis`}
      value={basisName(price)}
      options={(Object.keys(BASES) as BasisName[]).map((name) => [name, words.bases[name]] as const)}
      onValue={(name) => onPrice({ ...asSold(price, name), basis: BASES[name] }, words.basisLabel)}
    />
  );
  return (
    <>
      <p class="sentence">
        {currency === undefined ? words.costsAlone(amount, basis) : words.costs(amount, currency, basis)}{" "}
        {price.basis.kind === "length" && (
          <>
            {words.soldIn(
              <OptionalLengthBlank
                label={words.stepLabel}
                path={`${path}.step`}
                value={price.step === 0 ? null : price.step}
                empty={words.anyLength}
                range={SOLD}
                onValue={(step, key) => onPrice({ ...price, step: step ?? 0 }, words.stepLabel, key)}
              />,
            )}{" "}
            {words.soldAtLeast(
              <OptionalLengthBlank
                label={words.leastLabel}
                path={`${path}.least`}
                value={price.least ?? null}
                empty={words.anyLength}
                range={SOLD}
                onValue={(least, key) => onPrice({ ...price, least: least ?? undefined }, words.leastLabel, key)}
              />,
            )}
          </>
        )}
      </p>
      {price.basis.kind === "length" && <PriceStepList price={price} path={path} onPrice={onPrice} />}
    </>
  );
}

/** Lengths from which all of it costs less, each with its price. */
function PriceStepList({ price, path, onPrice }: Pick<PriceProps, "path" | "onPrice"> & { price: Price }) {
  const words = useTexts().cloth;
  const steps = price.steps ?? [];
  const put = (next: readonly PriceStep[], label: string, key?: string) =>
    onPrice({ ...price, steps: next.length > 0 ? next : undefined }, label, key);
  const set = (i: number, part: Partial<PriceStep>, label: string, key?: string) =>
    put(steps.with(i, { ...steps[i]!, ...part }), label, key);
  const add = () =>
    put([...steps, { from: (steps.at(-1)?.from ?? 0) + 5000, amount: price.amount }], words.addPriceStep);
  return (
    <>
      {steps.map((step, i) => (
        <p key={String(i)} class="sentence">
          {words.costsFrom(
            <LengthBlank
              label={words.stepFromLabel(i + 1)}
              path={`${path}.steps[${i}].from`}
              value={step.from}
              range={SOLD}
              onValue={(from, key) => set(i, { from }, words.stepFromLabel(i + 1), key)}
            />,
            <MoneyBlank
              label={words.stepPriceLabel(i + 1)}
              path={`${path}.steps[${i}].amount`}
              value={step.amount}
              empty={words.noPrice}
              onValue={(amount, key) => amount !== null && set(i, { amount }, words.stepPriceLabel(i + 1), key)}
            />,
          )}{" "}
          <button
            type="button"
            class="press plain"
            aria-label={words.removePriceStep(i + 1)}
            onClick={() => put(steps.toSpliced(i, 1), words.removePriceStep(i + 1))}
          >
            <Icon name="bin" />
          </button>
        </p>
      ))}
      {steps.length < MOST_STEPS && (
        <div class="row">
          <button type="button" class="press plain" onClick={add}>
            <Icon name="plus" /> {words.addPriceStep}
          </button>
        </div>
      )}
    </>
  );
}

/** Steps and least lengths in mm mean nothing for an area, and the other way round. */
function asSold(price: Price, name: BasisName): Price {
  return BASES[name].kind === price.basis.kind ? price : { amount: price.amount, basis: price.basis, step: 0 };
}
