import { useContext, useId, useState } from "preact/hooks";
import { PIECE_GRAINS, type PieceGrain } from "../../core/materials/cutPiece.ts";
import { ok, type Problem, type Result } from "../../core/problems/problem.ts";
import { writeLength } from "../../core/units/formatLength.ts";
import type { Language } from "../../core/units/language.ts";
import type { LengthUnit } from "../../core/units/lengthWords.ts";
import { withDecimalSign } from "../../core/units/numberWords.ts";
import { ANY_LENGTH, checkLength, type LengthRange, parseLength } from "../../core/units/parseLength.ts";
import { readCount, readMoney, readShare } from "../../core/units/parseNumber.ts";
import { readThickness } from "../../core/units/parseThickness.ts";
import { priceText } from "../../export/cutsheet/moneyText.ts";
import { useProject, useRefusal } from "../state/workbench.ts";
import { useLanguage, useTexts } from "../texts/texts.ts";
import { type BlankProps, Refusal, TypedBlank } from "./TypedBlank.tsx";
import { UnitsContext, useLengths } from "./units.ts";

interface ValueProps<T> extends BlankProps {
  readonly value: T;
  readonly onValue: (value: T, joinKey: string) => void;
}

/** A length, typed in any unit and shown in the project's. */
export function LengthBlank(props: ValueProps<number> & { range?: LengthRange; fine?: boolean; cloth?: boolean }) {
  const { unit } = useContext(UnitsContext);
  const words = useLengths();
  const language = useLanguage();
  // Thickness is spoken of in mm whatever the cloth is measured in.
  const typed = props.fine ? "mm" : unit;
  const shown = props.fine ? fineText(props.value, language) : words.size(props.value);
  return (
    <TypedBlank
      {...props}
      written={exactText(props.value, typed, language)}
      shown={props.cloth ? words.cloth(props.value) : shown}
      read={(text) => parseLength(text, typed, props.path, props.range ?? ANY_LENGTH)}
    />
  );
}

/** The thickness of one layer: mm whatever the cloth is measured in; leather also in its ounces. */
export function ThicknessBlank(props: ValueProps<number> & { isLeather: boolean }) {
  const language = useLanguage();
  const read = (text: string): Result<number> => {
    const thickness = readThickness(text, "mm", props.path, props.isLeather);
    return thickness.ok ? checkLength(thickness.value, props.path, LAYER, text) : thickness;
  };
  return (
    <TypedBlank
      {...props}
      fine
      written={exactText(props.value, "mm", language)}
      shown={fineText(props.value, language)}
      read={read}
    />
  );
}

/** Thickness of one layer, mm. */
const LAYER: LengthRange = { minMm: 0.01, maxMm: 25 };

/** To a thousandth: what is stored exactly, such as 5/64 in, is seen in full when the blank is entered. */
function fineText(mm: number, language: Language): string {
  return withDecimalSign(`${Number(mm.toFixed(3))} mm`, language);
}

/** A length that reads back to the same number, with the language's decimal sign unless that could be misread: 1,234 mm. */
function exactText(mm: number, unit: LengthUnit, language: Language): string {
  const text = writeLength(mm, unit);
  const signed = withDecimalSign(text, language);
  const read = parseLength(signed, unit, "", { minMm: -Infinity, maxMm: Infinity });
  return read.ok && read.value === mm ? signed : text;
}

/** A length that may be left to the program: an empty blank is `null`. */
export function OptionalLengthBlank(
  props: ValueProps<number | null> & { empty: string; range?: LengthRange; fine?: boolean },
) {
  const { unit } = useContext(UnitsContext);
  const words = useLengths();
  const language = useLanguage();
  const typed = props.fine ? "mm" : unit;
  const read = (text: string): Result<number | null> =>
    text.trim() === "" || text === props.empty
      ? ok(null)
      : parseLength(text, typed, props.path, props.range ?? ANY_LENGTH);
  const { value } = props;
  const written = value === null ? "" : exactText(value, typed, language);
  return (
    <TypedBlank
      {...props}
      written={written}
      shown={value === null ? props.empty : props.fine ? fineText(value, language) : words.size(value)}
      placeholder={props.empty}
      read={read}
    />
  );
}

/** A whole number of things. */
export function CountBlank(props: ValueProps<number> & { min?: number; max?: number }) {
  return (
    <TypedBlank
      {...props}
      inputMode="numeric"
      written={String(props.value)}
      read={(text) => readCount(text, props.path, props.min ?? 1, props.max ?? 9999)}
    />
  );
}

/** A share of the whole, in per cent. */
export function ShareBlank(props: ValueProps<number> & { max?: number }) {
  return (
    <TypedBlank
      {...props}
      inputMode="decimal"
      written={withDecimalSign(`${Number((props.value * 100).toFixed(6))} %`, useLanguage())}
      read={(text) => readShare(text, props.path, 0, props.max ?? 0.5)}
    />
  );
}

/** An amount of money, or none, as the language writes it; `bare` where the currency stands beside it. */
export function MoneyBlank(props: ValueProps<number | null> & { empty: string; bare?: boolean }) {
  const language = useLanguage();
  const { currency } = useProject();
  return (
    <TypedBlank
      {...props}
      inputMode="decimal"
      written={props.value === null ? "" : withDecimalSign(String(props.value), language)}
      shown={props.value === null ? props.empty : priceText(props.value, currency, language, props.bare)}
      placeholder={props.empty}
      read={(text): Result<number | null> => (text.trim() === "" ? ok(null) : readMoney(text, props.path))}
    />
  );
}

/** A name or a note. */
export function TextBlank(props: ValueProps<string> & { max?: number; placeholder?: string }) {
  return <TypedBlank {...props} written={props.value} read={(text) => ok(text.slice(0, props.max ?? 120))} />;
}

/** One of a few. `null` as a value is offered as the option `empty`. */
export function ChoiceBlank<T extends string>(
  props: BlankProps & {
    value: T;
    options: readonly (readonly [T, string])[];
    onValue: (value: T) => void;
  },
) {
  const id = useId();
  const takeRefusal = useRefusal();
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  return (
    <span class={props.labelled ? "labelled" : "blank"}>
      {props.labelled && <label for={id}>{props.label}</label>}
      <select
        id={id}
        aria-label={props.labelled ? undefined : props.label}
        data-path={props.path}
        value={props.value}
        aria-invalid={refused.length > 0}
        aria-describedby={refused.length > 0 ? `${id}-why` : undefined}
        onChange={(event) => {
          props.onValue(event.currentTarget.value as T);
          setRefused(takeRefusal());
        }}
      >
        {props.options.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </select>
      <Refusal id={`${id}-why`} problems={refused} />
    </span>
  );
}

/** Yes or no. `name` is what screen readers say where the label alone could be any of several. */
export function Tick(props: {
  label: string;
  name?: string;
  path: string;
  value: boolean;
  onValue: (value: boolean) => void;
}) {
  const takeRefusal = useRefusal();
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  return (
    <span class="ticked">
      <label class="tick">
        <input
          type="checkbox"
          aria-label={props.name}
          data-path={props.path}
          checked={props.value}
          onChange={(event) => {
            props.onValue(event.currentTarget.checked);
            setRefused(takeRefusal());
          }}
        />
        <span>{props.label}</span>
      </label>
      <Refusal problems={refused} />
    </span>
  );
}

/** The direction that a panel or a material keeps. */
export function GrainBlank(props: {
  label: string;
  path: string;
  value: PieceGrain;
  onValue: (grain: PieceGrain) => void;
}) {
  const { grains } = useTexts();
  return (
    <ChoiceBlank<PieceGrain> {...props} options={PIECE_GRAINS.map((grain) => [grain, grains[grain]] as const)} />
  );
}
