// A line to type in.
import { useEffect, useRef, useState } from "preact/hooks";

const PAUSE_MS = 1_200; // after which what is being typed is kept, too

interface TypedProps {
  readonly label: string;
  readonly figure: boolean;
  readonly value: string;
  readonly onTyped: (text: string) => void;
}

/** A line to type in: kept when it is left, and after a pause. */
export function Typed({ label, figure, value, onTyped }: TypedProps) {
  const [shown, setShown] = useState(value);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  const last = useRef(value);
  useEffect(() => {
    if (document.activeElement?.getAttribute("data-typed") !== label) setShown(value);
    last.current = value;
  }, [value]);
  const keep = (text: string): void => {
    clearTimeout(timer.current);
    if (text === last.current) return;
    last.current = text;
    onTyped(text);
  };
  return (
    <label class="typed">
      {label}
      <input
        data-typed={label}
        value={shown}
        inputMode={figure ? "decimal" : "text"}
        autoComplete="off"
        onInput={(event) => {
          const text = event.currentTarget.value;
          setShown(text);
          clearTimeout(timer.current);
          timer.current = setTimeout(() => keep(text), PAUSE_MS);
        }}
        onBlur={(event) => keep(event.currentTarget.value)}
      />
    </label>
  );
}
