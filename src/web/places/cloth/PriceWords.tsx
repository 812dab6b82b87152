import type { Material } from "../../../core/materials/material.ts";
import type { Price } from "../../../core/materials/price.ts";
import { ChoiceBlank, MoneyBlank, OptionalLengthBlank, TextBlank } from "../../fields/blanks.tsx";
import { useChange, useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";

/** How the sentences about a material change it. */
export type SetMaterial = (part: Partial<Material>, label: string, key?: string) => void;

/** What the sentences about a material share. */
export interface MaterialBlanks {
  readonly material: Material;
  readonly path: (field: string) => string;
  readonly set: SetMaterial;
}

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

/** What it costs, and the steps it is sold in. */
export function PriceWords({ material, path, set }: MaterialBlanks) {
  const words = useTexts().cloth;
  const { currency, output } = useProject();
  const change = useChange();
  const { price } = material;
  const usual: Price = {
    amount: 0,
    basis: output.lengths.startsWith("in") ? BASES.yard : BASES.metre,
    step: output.lengths.startsWith("in") ? 228.6 : 100,
  };
  const amount = (
    <MoneyBlank
      label={words.priceLabel}
      path={path("price.amount")}
      value={price?.amount ?? null}
      empty={words.noPrice}
      onValue={(value, key) =>
        set({ price: value === null ? null : { ...(price ?? usual), amount: value } }, words.priceLabel, key)
      }
    />
  );
  if (price === null) return <p class="sentence">{words.costsNothingYet(amount)}</p>;
  return (
    <p class="sentence">
      {words.costs(
        amount,
        <TextBlank
          label={words.currencyLabel}
          path="currency"
          value={currency}
          max={6}
          onValue={(next, key) =>
            next.trim() !== "" && change((now) => ({ ...now, currency: next }), words.currencyLabel, key)
          }
        />,
        <ChoiceBlank<BasisName>
          label={words.basisLabel}
          path={path("price.basis")}
          value={basisName(price)}
          options={(Object.keys(BASES) as BasisName[]).map((name) => [name, words.bases[name]] as const)}
          onValue={(name) =>
            set({ price: { ...price, basis: BASES[name], step: stepFor(price, name) } }, words.basisLabel)
          }
        />,
      )}{" "}
      {price.basis.kind === "length" &&
        words.soldIn(
          <OptionalLengthBlank
            label={words.stepLabel}
            path={path("price.step")}
            value={price.step === 0 ? null : price.step}
            empty={words.anyLength}
            range={{ minMm: 1, maxMm: 50_000 }}
            onValue={(step, key) => set({ price: { ...price, step: step ?? 0 } }, words.stepLabel, key)}
          />,
        )}
    </p>
  );
}

/** A step in mm means nothing for an area, and the other way round. */
function stepFor(price: Price, name: BasisName): number {
  return BASES[name].kind === price.basis.kind ? price.step : 0;
}
