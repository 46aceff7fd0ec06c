// The wires under the probe: what to measure next, on which wire, at which position of the key, and the figure.
import { useMemo, useState } from "preact/hooks";
import { batteryFigure, probeTable, type Key } from "../core/probe-table.ts";
import { Keypad } from "../parts/keypad.tsx";
import { OpenFile } from "../parts/open-file.tsx";
import { Pictures } from "../parts/pictures.tsx";
import { Top, Troubles } from "../parts/top.tsx";
import { KeyChoice, More, WireStrip } from "../parts/probe-choices.tsx";
import { NextReadingCard } from "../parts/next-reading.tsx";
import { Readings } from "../parts/readings.tsx";
import { WireSheet, NewWire } from "../parts/wire-sheet.tsx";
import { MeterChoice } from "../parts/meter-choice.tsx";
import { useKeeping, useShared } from "./context.ts";
import { readingEntry } from "./probe-entries.ts";
import { useSelection } from "./use-selection.ts";
import { NextStage } from "./next-stage.tsx";
import { vehicleName } from "./today.tsx";
import { useJob } from "./use-job.ts";
import { useMeter } from "./use-meter.ts";

type Sheet = { readonly name: "none" | "new" } | { readonly name: "wire"; readonly wire: string };

export function Probe({ id }: { id: string }) {
  const { words } = useShared();
  const open = useJob(id);
  const table = useMemo(() => probeTable(open.said), [open.said]);
  const judged = open.judgement?.ok ? open.judgement : null;
  const [typing, setTyping] = useState(false);
  const names = useMemo(() => namesOf(table.wires, judged?.wires ?? []), [table, judged]);
  const selection = useSelection(judged?.next_reading ?? null, { names, behind: open.behind, typing });
  const [sheet, setSheet] = useState<Sheet>({ name: "none" });
  const [said, setSaid] = useState("");
  const meter = useMeter(table);
  const keeping = useKeeping();
  const { wire, key } = selection;
  const keyWord = (one: Key): string => words(`key_${one}`);
  const system_V = judged?.setup.system_V ?? 12;

  const keep = async (volts: string): Promise<boolean> => {
    if (wire === null || key === null) return false;
    const entry = readingEntry({ wire, key, volts, capture: selection.capture, load: selection.load });
    const well = await keeping(() => open.write([...meter.claim(), entry]));
    if (well) {
      setSaid(words("kept_reading", { wire, key: keyWord(key), volts }));
      selection.follow();
    }
    return well;
  };

  const inSight = key === "crank" || selection.capture !== "display"; // elsewhere the keys come first
  const how = <More open={open} selection={selection} captures={judged?.setup.captures ?? null} />;

  return (
    <>
      <Top title={open.job ? `${vehicleName(open.job)} · ${words("probe_title")}` : words("loading")} back={{ name: "job", job: id }} />
      <main class="probe">
        <Troubles />
        {meter.unknown && <MeterChoice onChange={meter.choose} />}
        <NextReadingCard open={open} key={open.job?.id} />
        {table.readings.length === 0 && <p class="caution">{words("caution_probe")}</p>}
        <WireStrip names={names} judged={judged} value={wire} onChange={selection.setWire} onAdd={() => setSheet({ name: "new" })} onAbout={(name) => setSheet({ name: "wire", wire: name })} />
        <KeyChoice keys={judged?.setup.keys ?? null} absent={table.absent} value={key} onChange={selection.setKey} />
        {key === "crank" && !table.readings.some((one) => one.key === "crank") && <p class="caution">{words("caution_crank")}</p>}
        {key === "isolated" && <p class="caution">{words("caution_isolated")}</p>}
        {inSight && how}
        <Keypad
          label={wire !== null && key !== null ? words("figure_of", { wire, key: keyWord(key) }) : "–"}
          battery={key === null ? null : batteryFigure(table.readings, key, system_V)}
          quick={key !== "crank" && key !== "charging" && selection.load === ""}
          ready={wire !== null && key !== null && selection.steady}
          onTyping={setTyping}
          onKeep={keep}
        />
        {!inSight && how}
        <p class="said" role="status" aria-live="polite">
          {said}
        </p>
        <Readings table={table} open={open} onSaid={setSaid} />
        <OpenFile kind="recording" open={open} />
        <Pictures open={open} names={["crank"]} />
        <NextStage open={open} id={id} stage="probe" />
      </main>
      {sheet.name === "new" && <NewWire names={names} write={open.write} onDone={(name) => (name && selection.setWire(name), setSheet({ name: "none" }))} />}
      {sheet.name === "wire" && <WireSheet wire={sheet.wire} table={table} judged={judged} write={open.write} onClose={() => setSheet({ name: "none" })} />}
    </>
  );
}

/** The names of all wires: those of the journal first, then those that the job sheet names. */
function namesOf(wires: readonly { readonly name: string }[], judged: readonly { readonly wire: string }[]): string[] {
  return [...new Set([...wires.map((one) => one.name), ...judged.map((one) => one.wire)])];
}
