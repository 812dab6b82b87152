import type { Material } from "../../../core/materials/material.ts";
import { TextBlank } from "../../fields/blanks.tsx";
import { useChange, useProject } from "../../state/workbench.ts";
import { useTexts } from "../../texts/texts.ts";
import { PriceFields } from "./PriceFields.tsx";

/** How the sentences about a material change it. */
export type SetMaterial = (part: Partial<Material>, label: string, key?: string) => void;

/** What the sentences about a material share. */
export interface MaterialBlanks {
  readonly material: Material;
  readonly path: (field: string) => string;
  readonly set: SetMaterial;
}

/** What it costs, and the steps it is sold in. */
export function PriceWords({ material, path, set }: MaterialBlanks) {
  const words = useTexts().cloth;
  const { currency } = useProject();
  const change = useChange();
  return (
    <PriceFields
      price={material.price}
      path={path("price")}
      label={words.priceLabel}
      empty={words.noPrice}
      currency={
        <TextBlank
          label={words.currencyLabel}
          path="currency"
          value={currency}
          max={6}
          onValue={(next, key) =>
            next.trim() !== "" && change((now) => ({ ...now, currency: next }), words.currencyLabel, key)
          }
        />
      }
      onPrice={(price, label, key) => set({ price }, label, key)}
    />
  );
}
