import { freshIdIn } from "../../../core/project/edits.ts";
import { PRICED_BY, type Pricing, type SalesTax, type Supply } from "../../../core/project/project.ts";
import { withDecimalSign } from "../../../core/units/numberWords.ts";
import { readMoney } from "../../../core/units/parseNumber.ts";
import { ChoiceBlank, CountBlank, MoneyBlank, ShareBlank, TextBlank, Tick } from "../../fields/blanks.tsx";
import { TypedBlank } from "../../fields/TypedBlank.tsx";
import { Icon } from "../../parts/Icon.tsx";
import { useChange, useProject } from "../../state/workbench.ts";
import { useLanguage, useTexts } from "../../texts/texts.ts";

const UNPRICED: Pricing = { workPerBag: 0, by: "markup", share: 0 };
const UNTAXED: SalesTax = { rate: 0, inPrices: true, onBags: false };

/** Work, overhead, how the price is made, tax and supplies, in sentences. */
export function MoneyWords() {
  const words = useTexts().money;
  const project = useProject();
  const change = useChange();
  const { pricing = UNPRICED, tax = UNTAXED } = project;
  const set = (part: Partial<Pricing>, label: string, key?: string) =>
    change((now) => ({ ...now, pricing: { ...(now.pricing ?? UNPRICED), ...part } }), label, key);
  const setTax = (part: Partial<SalesTax>, label: string, key?: string) =>
    change((now) => ({ ...now, tax: { ...(now.tax ?? UNTAXED), ...part } }), label, key);
  const money = (field: "hourlyRate" | "workPerBag" | "overheadPerBag", label: string) => (
    <MoneyBlank
      label={label}
      path={`pricing.${field}`}
      value={pricing[field] || null}
      empty={words.nothing}
      onValue={(amount, key) => set({ [field]: amount ?? (field === "workPerBag" ? 0 : undefined) }, label, key)}
    />
  );
  return (
    <div class="stack">
      <p class="sentence">
        {words.work(
          <CountBlank
            label={words.minutesLabel}
            path="pricing.minutesPerBag"
            value={pricing.minutesPerBag ?? 0}
            min={0}
            onValue={(minutes, key) => set({ minutesPerBag: minutes || undefined }, words.minutesLabel, key)}
          />,
          money("hourlyRate", words.rateLabel),
          money("workPerBag", words.moreLabel),
        )}{" "}
        {words.overhead(
          <ShareBlank
            label={words.overheadShareLabel}
            path="pricing.overheadShare"
            value={pricing.overheadShare ?? 0}
            max={10}
            onValue={(share, key) => set({ overheadShare: share || undefined }, words.overheadShareLabel, key)}
          />,
          money("overheadPerBag", words.overheadLabel),
        )}{" "}
        {words.price(
          <ChoiceBlank
            label={words.byLabel}
            path="pricing.by"
            value={pricing.by}
            options={PRICED_BY.map((by) => [by, words.by[by]] as const)}
            onValue={(by) =>
              set({ by, share: Math.min(pricing.share, by === "margin" ? MOST_MARGIN : 10) }, words.byLabel)
            }
          />,
          <ShareBlank
            label={words.shareLabel}
            path="pricing.share"
            value={pricing.share}
            max={pricing.by === "margin" ? MOST_MARGIN : 10}
            onValue={(share, key) => set({ share }, words.shareLabel, key)}
          />,
        )}{" "}
        {words.tax(
          <ShareBlank
            label={words.taxLabel}
            path="tax.rate"
            value={tax.rate}
            max={1}
            onValue={(rate, key) => setTax({ rate }, words.taxLabel, key)}
          />,
          <ChoiceBlank<"with" | "without">
            label={words.pricesLabel}
            path="tax.inPrices"
            value={tax.inPrices ? "with" : "without"}
            options={(["with", "without"] as const).map((each) => [each, words.prices[each]] as const)}
            onValue={(prices) => setTax({ inPrices: prices === "with" }, words.pricesLabel)}
          />,
        )}
      </p>
      <Tick
        label={words.onBags}
        path="tax.onBags"
        value={tax.onBags}
        onValue={(onBags) => setTax({ onBags }, words.onBags)}
      />
      <SupplyList />
    </div>
  );
}

/** As in project files: a price of which everything is left has no end. */
const MOST_MARGIN = 0.95;

function SupplyList() {
  const words = useTexts().money;
  const language = useLanguage();
  const project = useProject();
  const change = useChange();
  const supplies = project.supplies ?? [];
  const put = (next: readonly Supply[], label: string, key?: string) =>
    change((now) => ({ ...now, supplies: next.length > 0 ? next : undefined }), label, key);
  const add = () => {
    const id = freshIdIn(project, "supply");
    put([...supplies, { id, name: words.newSupply, perBag: 1, price: null, pack: 1 }], words.addSupply);
  };
  return (
    <>
      <h3>{words.supplies}</h3>
      <ul class="stack">
        {supplies.map((supply, i) => {
          const set = (part: Partial<Supply>, label: string, key?: string) =>
            put(supplies.with(i, { ...supply, ...part }), label, key);
          const path = (field: string) => `supplies[${i}].${field}`;
          return (
            <li key={supply.id} class="row">
              <span class="sentence">
                {words.supply(
                  <TextBlank
                    label={words.supplyName(i + 1)}
                    path={path("name")}
                    value={supply.name}
                    onValue={(name, key) => name.trim() !== "" && set({ name }, words.supplyName(i + 1), key)}
                  />,
                  <TypedBlank
                    label={words.supplyPerBag(i + 1)}
                    path={path("perBag")}
                    inputMode="decimal"
                    written={withDecimalSign(String(supply.perBag), language)}
                    read={(text) => readMoney(text, path("perBag"))}
                    onValue={(perBag, key) => set({ perBag }, words.supplyPerBag(i + 1), key)}
                  />,
                  <MoneyBlank
                    label={words.supplyPrice(i + 1)}
                    path={path("price")}
                    value={supply.price}
                    empty={words.noPrice}
                    onValue={(price, key) => set({ price }, words.supplyPrice(i + 1), key)}
                  />,
                  <CountBlank
                    label={words.supplyPack(i + 1)}
                    path={path("pack")}
                    value={supply.pack}
                    max={1_000_000}
                    onValue={(pack, key) => set({ pack }, words.supplyPack(i + 1), key)}
                  />,
                )}
              </span>
              <button
                type="button"
                class="press plain"
                aria-label={words.removeSupply(supply.name)}
                onClick={() => put(supplies.toSpliced(i, 1), words.removeSupply(supply.name))}
              >
                <Icon name="bin" />
              </button>
            </li>
          );
        })}
      </ul>
      <div class="row">
        <button type="button" class="press" onClick={add}>
          <Icon name="plus" /> {words.addSupply}
        </button>
      </div>
    </>
  );
}
