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
  readonly ready: boolean;
  readonly onTyping: (typing: boolean) => void; // while a figure stands there, nothing else may be chosen for it
  readonly onKeep: (volts: string) => Promise<boolean>;
}

export function Keypad({ label, battery, quick, ready, onTyping, onKeep }: Props) {
  const { words } = useShared();
  const [shown, setShown] = useState("");
  useEffect(() => onTyping(shown !== ""), [shown !== ""]);
  const press = (key: string): void => setShown((before) => typed(before, key) ?? before);
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
      {quick && <OneTouch battery={battery} ready={ready} onTouch={(volts) => void keep(volts)} />}
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

/** The two figures that most wires show, to a tenth of a volt: a touch says that the meter shows this. */
function OneTouch({ battery, ready, onTouch }: { battery: string | null; ready: boolean; onTouch: (volts: string) => void }) {
  const { words } = useShared();
  return (
    <div class="one-touch">
      <button type="button" disabled={!ready} onClick={() => onTouch("0.0")}>
        <b>0.0 V</b> <span>{words("dead")}</span>
      </button>
      <button type="button" disabled={!ready || battery === null} onClick={() => battery && onTouch(battery)}>
        {battery === null ? (
          <span>{words("battery_first")}</span>
        ) : (
          <>
            <b>{battery} V</b> <span>{words("as_battery")}</span>
          </>
        )}
      </button>
    </div>
  );
}
