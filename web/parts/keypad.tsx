// A figure by large keys, by one touch, or by the keyboard.
import { useEffect, useState } from "preact/hooks";
import { finished, typed } from "../core/figures.ts";
import { useShared } from "../page/context.ts";

const ROWS = ["7", "8", "9", "erase", "4", "5", "6", "0", "1", "2", "3", "."] as const;
const ONLY_FIGURES = /^\d{0,3}([.,]\d{0,3})?$/;

interface Props {
  readonly label: string; // what the figure is of
  readonly battery: string | null; // the battery's figure, for one touch; null where none is known
  readonly quick: boolean; // whether one touch is offered
  readonly likely: readonly string[]; // figures that one touch keeps as they stand there
  readonly most: number; // no meter shows more here [V]
  readonly ready: boolean;
  readonly onTyping: (typing: boolean) => void; // while a figure stands there, nothing else may be chosen for it
  readonly onKeep: (volts: string) => Promise<boolean>;
}

export function Keypad({ label, battery, quick, likely, most, ready, onTyping, onKeep }: Props) {
  const { words } = useShared();
  const [shown, setShown] = useState("");
  useEffect(() => onTyping(shown !== ""), [shown !== ""]);
  const press = (key: string): void => setShown((before) => typed(before, key, most) ?? before);
  const keep = async (volts: string | null): Promise<void> => {
    if (volts !== null && ready && (await onKeep(volts))) setShown("");
  };
  return (
    <form
      class="keypad"
      onSubmit={(event) => {
        event.preventDefault();
        void keep(finished(shown));
      }}
    >
      <div class="entry">
        <label class="shown">
          <span class="of">{label}</span>
          <span class="value">
            <input
              aria-label={`${words("figure")}: ${label}`}
              inputMode="none"
              autoComplete="off"
              value={shown}
              onInput={(event) => ONLY_FIGURES.test(event.currentTarget.value) ? setShown(event.currentTarget.value) : (event.currentTarget.value = shown)}
            />
            <span class="unit">V</span>
          </span>
        </label>
        <button type="submit" class="main" disabled={!ready || finished(shown) === null}>
          {words("keep")}
        </button>
      </div>
      {quick && <OneTouch battery={battery} isFirst={battery === null && likely.length === 0} ready={ready} onTouch={(volts) => void keep(volts)} />}
      {likely.length > 0 && <Likely figures={likely} ready={ready} onTouch={(volts) => void keep(volts)} />}
      <div class="keys">
        {ROWS.map((key) =>
          key === "erase" ? (
            <button type="button" key={key} aria-label={words("erase")} onClick={() => setShown(shown.slice(0, -1))}>
              ⌫
            </button>
          ) : (
            <button type="button" key={key} aria-label={key === "." ? words("point") : undefined} onClick={() => press(key)}>
              {key}
            </button>
          ),
        )}
      </div>
    </form>
  );
}

interface OneTouchProps {
  readonly battery: string | null;
  readonly isFirst: boolean; // no live figure is known yet: the first is typed
  readonly ready: boolean;
  readonly onTouch: (volts: string) => void;
}

/** The two figures that most wires show, to a tenth of a volt: a touch says that the meter shows this. */
function OneTouch({ battery, isFirst, ready, onTouch }: OneTouchProps) {
  const { words } = useShared();
  return (
    <div class="one-touch">
      <button type="button" disabled={!ready} onClick={() => onTouch("0.0")}>
        <b>0.0 V</b> <span>{words("dead")}</span>
      </button>
      {battery !== null && (
        <button type="button" disabled={!ready} onClick={() => onTouch(battery)}>
          <b>{battery} V</b> <span>{words("as_battery")}</span>
        </button>
      )}
      {isFirst && <p class="say">{words("battery_first")}</p>}
    </div>
  );
}

/** Figures that the meter is likely to show, each kept as it stands there. */
function Likely({ figures, ready, onTouch }: { figures: readonly string[]; ready: boolean; onTouch: (volts: string) => void }) {
  const { words } = useShared();
  return (
    <div class="likely" role="group" aria-label={words("likely")}>
      {figures.map((volts) => (
        <button type="button" key={volts} aria-label={`${volts} V`} disabled={!ready} onClick={() => onTouch(volts)}>
          {volts}
        </button>
      ))}
    </div>
  );
}
