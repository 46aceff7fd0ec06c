// What was read so far, by wire; each figure can be put right or taken back.
import { useState } from "preact/hooks";
import { finished } from "../core/figures.ts";
import type { ProbeTable, Reading } from "../core/probe-table.ts";
import { useKeeping, useShared } from "../page/context.ts";
import { correctedReading, withdrawn } from "../page/probe-entries.ts";
import type { OpenJob } from "../page/use-job.ts";
import { Dialog } from "./dialog.tsx";

interface Props {
  readonly table: ProbeTable;
  readonly open: OpenJob;
  readonly onSaid: (sentence: string) => void;
}

export function Readings({ table, open, onSaid }: Props) {
  const { words } = useShared();
  const [chosen, setChosen] = useState<Reading | null>(null);
  if (table.readings.length === 0) return <p class="say">{words("readings_none")}</p>;
  const read = table.wires.map((wire) => ({ wire, readings: table.readings.filter((one) => one.wire === wire.name) }));
  return (
    <details class="readings">
      <summary>
        <b>{words("readings")}</b> <span>{table.readings.length}</span>
      </summary>
      {read
        .filter(({ readings }) => readings.length > 0)
        .map(({ wire, readings }) => (
          <div key={wire.name} class="wire">
            <h3>{wire.name}</h3>
            <ul>
              {readings.map((reading) => (
                <li key={reading.id}>
                  <button type="button" onClick={() => setChosen(reading)}>
                    <span>{words(`key_${reading.key}`)}</span> <b>{reading.volts} V</b>
                    <ReadingNote reading={reading} />
                  </button>
                </li>
              ))}
            </ul>
          </div>
        ))}
      {chosen && <Correct reading={chosen} open={open} onSaid={onSaid} onClose={() => setChosen(null)} />}
    </details>
  );
}

function ReadingNote({ reading }: { reading: Reading }) {
  const { words } = useShared();
  const notes = [
    reading.capture === "display" ? "" : words(`capture_${reading.capture}`),
    reading.load && `${reading.load} A`,
    reading.disputed ? words("disputed") : "",
  ].filter(Boolean);
  return notes.length > 0 ? <small>{notes.join(", ")}</small> : null;
}

interface CorrectProps {
  readonly reading: Reading;
  readonly open: OpenJob;
  readonly onSaid: (sentence: string) => void;
  readonly onClose: () => void;
}

function Correct({ reading, open, onSaid, onClose }: CorrectProps) {
  const { words } = useShared();
  const keeping = useKeeping();
  const [shown, setShown] = useState(reading.volts);
  const about = { wire: reading.wire, key: words(`key_${reading.key}`) };
  const volts = finished(shown);
  const change = async (): Promise<void> => {
    if (volts === null || !(await keeping(() => open.write([correctedReading(reading, volts)])))) return;
    onSaid(words("kept_reading", { ...about, volts }));
    onClose();
  };
  const takeBack = async (): Promise<void> => {
    if (!(await keeping(() => open.write([withdrawn([reading.id])])))) return;
    onSaid(words("taken_back", { ...about, volts: reading.volts }));
    onClose();
  };
  return (
    <Dialog title={words("correct_title", { ...about, volts: reading.volts })} onClose={onClose}>
      <form
        class="lines"
        onSubmit={(event) => {
          event.preventDefault();
          void change();
        }}
      >
        <label>
          {words("correct_figure")}
          <input inputMode="decimal" autoComplete="off" value={shown} onInput={(event) => setShown(event.currentTarget.value)} />
        </label>
        <button type="submit" class="main wide" disabled={volts === null || volts === reading.volts}>
          {words("change")}
        </button>
        <button type="button" class="wide" onClick={() => void takeBack()}>
          {words("take_back")}
        </button>
      </form>
    </Dialog>
  );
}
