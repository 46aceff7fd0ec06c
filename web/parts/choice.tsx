// One of several, as large targets; radio buttons underneath, so that keys and screen readers know what it is.
import { useId } from "preact/hooks";

export interface Option<T extends string> {
  readonly value: T;
  readonly label: string;
  readonly note?: string | undefined;
}

interface Props<T extends string> {
  readonly legend: string;
  readonly options: readonly Option<T>[];
  readonly value: T | null;
  readonly onChange: (value: T) => void;
  readonly kind?: "grid" | "strip" | "list" | "pair";
  readonly hidden?: boolean; // the legend is for screen readers alone
}

export function Choice<T extends string>({ legend, options, value, onChange, kind = "grid", hidden = false }: Props<T>) {
  const name = useId();
  return (
    <fieldset class={`choice ${kind}`}>
      <legend class={hidden ? "unseen" : ""}>{legend}</legend>
      <div class="options">
        {options.map((option) => (
          <label key={option.value} class={option.value === value ? "chosen" : ""}>
            <input type="radio" name={name} value={option.value} checked={option.value === value} onChange={() => onChange(option.value)} />
            <span class="label">{option.label}</span>
            {option.note && <span class="note">{option.note}</span>}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
