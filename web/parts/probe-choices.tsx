// Which wire, which position of the key, and how the meter held the figure.
import { CAPTURES, KEYS, type Capture, type Key } from "../core/probe-table.ts";
import { useKeeping, useShared } from "../page/context.ts";
import type { Judgement } from "../page/judgement.ts";
import { absentEntry } from "../page/probe-entries.ts";
import type { OpenJob } from "../page/use-job.ts";
import { LAMPS } from "../page/use-lamp.ts";
import type { Selection } from "../page/use-selection.ts";
import { named } from "../words/words.ts";
import { Choice } from "./choice.tsx";

const USUAL: readonly Key[] = ["off", "accessory", "on", "crank", "running", "after"]; // until the engine says which there are
const MAY_BE_ABSENT: readonly Key[] = ["accessory"];
const LOADS = ["", ...LAMPS] as const;

interface Strip {
  readonly names: readonly string[];
  readonly judged: Judgement | null;
  readonly value: string | null;
  readonly onChange: (wire: string) => void;
  readonly onAdd: () => void;
  readonly onAbout: (wire: string) => void;
}

export function WireStrip({ names, judged, value, onChange, onAdd, onAbout }: Strip) {
  const { words } = useShared();
  const role = (name: string): string => named(words, "role", judged?.wires.find((one) => one.wire === name)?.role ?? "unknown");
  return (
    <div class="wires">
      {names.length === 0 && <p class="say">{words("wires_none")}</p>}
      {names.length > 0 && (
        <Choice legend={words("wires")} hidden kind="pair" options={names.map((name) => ({ value: name, label: name, note: role(name) }))} value={value} onChange={onChange} />
      )}
      <div class="row">
        <button type="button" onClick={onAdd}>
          {words("wire_add")}
        </button>
        {value !== null && (
          <button type="button" onClick={() => onAbout(value)}>
            {words("wire_about", { wire: value })}
          </button>
        )}
      </div>
    </div>
  );
}

interface KeyProps {
  readonly keys: readonly Key[] | null;
  readonly absent: ReadonlySet<string>;
  readonly value: Key | null;
  readonly onChange: (key: Key) => void;
}

export function KeyChoice({ keys, absent, value, onChange }: KeyProps) {
  const { words } = useShared();
  const shown = KEYS.filter((key) => (keys ?? USUAL).includes(key) && !absent.has(key));
  return <Choice legend={words("key")} hidden options={shown.map((key) => ({ value: key, label: words(`key_${key}`) }))} value={value} onChange={onChange} />;
}

/** How the meter held it, and under which load: in sight where it matters, folded away elsewhere. */
export function More({ open, selection, captures }: { open: OpenJob; selection: Selection; captures: readonly Capture[] | null }) {
  const { words } = useShared();
  const keeping = useKeeping();
  const { key, capture, load } = selection;
  const offered = CAPTURES.filter((one) => (captures ?? CAPTURES).includes(one));
  const absent = key !== null && MAY_BE_ABSENT.includes(key) ? key : null;
  return (
    <details class="how" open={key === "crank" || capture !== "display" || load !== ""}>
      <summary>
        {words("capture")}: {words(`capture_${capture}`)}
        {load && `, ${load} A`}
      </summary>
      <Choice legend={words("capture")} hidden kind="strip" options={offered.map((one) => ({ value: one, label: words(`capture_${one}`) }))} value={capture} onChange={selection.setCapture} />
      {key !== "crank" && (
        <Choice legend={words("load_say")} kind="strip" options={LOADS.map((one) => ({ value: one, label: one === "" ? words("load_none") : `${one} A` }))} value={load as (typeof LOADS)[number]} onChange={selection.setLoad} />
      )}
      {absent && (
        <button type="button" onClick={() => void keeping(() => open.write([absentEntry(absent)])).then(() => selection.setKey("on"))}>
          {words("key_absent", { key: words(`key_${absent}`) })}
        </button>
      )}
    </details>
  );
}
