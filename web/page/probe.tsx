// The wires under the probe: what to measure next, on which wire, at which position of the key, and the figure.
import { useMemo, useState } from "preact/hooks";
import { likelyFigures } from "../core/likely-figures.ts";
import { batteryFigure, probeTable, type Key } from "../core/probe-table.ts";
import { Keypad } from "../parts/keypad.tsx";
import { LampChoice } from "../parts/lamp-choice.tsx";
import { LeadWires } from "../parts/lead-wires.tsx";
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
import { useLamp } from "./use-lamp.ts";
import { taking, useLeadWires } from "./use-lead-wires.ts";
import { useMeter } from "./use-meter.ts";

const MOST_V: Readonly<Record<number, number>> = { 12: 18, 24: 36 }; // ISO 16750-2 long-term overvoltage, as the engine's limit has it

type Sheet = { readonly name: "none" | "new" } | { readonly name: "wire"; readonly wire: string };

export function Probe({ id }: { id: string }) {
  const { words } = useShared();
  const open = useJob(id);
  const table = useMemo(() => probeTable(open.said), [open.said]);
  const judged = open.judgement?.ok ? open.judgement : null;
  const [typing, setTyping] = useState(false);
  const names = useMemo(() => namesOf(table.wires, judged?.wires ?? []), [table, judged]);
  const next = judged?.next_reading ?? null;
  const lamp = useLamp(table);
  const selection = useSelection(next, { names, behind: open.behind, typing, lamp: lamp.amperes });
  const [sheet, setSheet] = useState<Sheet>({ name: "none" });
  const [said, setSaid] = useState("");
  const meter = useMeter(table);
  const leads = useLeadWires(open, table);
  const keeping = useKeeping();
  const { wire, key, load } = selection;
  const keyWord = (one: Key): string => words(`key_${one}`);
  const system_V = judged?.setup.system_V ?? 12;

  const keep = async (volts: string): Promise<boolean> => {
    if (wire === null || key === null) return false;
    const entry = readingEntry({ wire, key, volts, capture: selection.capture, load });
    const well = await keeping(() => open.write([...meter.claim(), ...lamp.without, entry]));
    if (well) {
      setSaid(words("kept_reading", { wire, key: keyWord(key), volts }));
      selection.follow();
      if (figureFirst) scrollTo({ top: 0 }); // where the next wire, the display and all keys are in sight
    }
    return well;
  };

  const begun = table.readings.length > 0;
  const quick = key !== "crank" && key !== "charging";
  const label = wire === null || key === null ? "–" : words(load ? "figure_under_lamp" : "figure_of", { wire, key: keyWord(key), load });
  const keypad = (
    <Keypad
      label={label}
      battery={key === null || load ? null : batteryFigure(table.readings, key, system_V)}
      quick={quick}
      likely={wire === null || key === null ? [] : likelyFigures(table.readings, { wire, key, load }, system_V)}
      most={MOST_V[system_V] ?? Infinity}
      ready={wire !== null && key !== null && selection.steady}
      onTyping={setTyping}
      onKeep={keep}
    />
  );
  const which = (
    <>
      <WireStrip names={names} judged={judged} value={wire} onChange={selection.setWire} onAdd={() => setSheet({ name: "new" })} onAbout={(name) => setSheet({ name: "wire", wire: name })} />
      <KeyChoice keys={judged?.setup.keys ?? null} absent={table.absent} value={key} onChange={selection.setKey} />
    </>
  );
  const inSight = key === "crank" || selection.capture !== "display"; // elsewhere the keys come first
  const how = <More open={open} selection={selection} captures={judged?.setup.captures ?? null} />;
  const isLed = leads?.isKnown === true; // the page leads through both wires
  const figureFirst = isLed || begun; // what is chosen by itself then stands beneath the figure

  return (
    <>
      <Top title={open.job ? `${vehicleName(open.job)} · ${words("probe_title")}` : words("loading")} back={{ name: "job", job: id }} />
      <main class={isLed ? "probe led" : "probe"}>
        <Troubles />
        {leads?.offered && <LeadWires wires={leads.offered.wires} from={leads.offered.from} onTake={() => void keeping(() => open.write(taking(leads.offered?.wires ?? [], table)))} />}
        {leads && leads.own.length > 0 && !begun && <LeadWires wires={leads.own} from={null} />}
        {meter.unknown && <MeterChoice onChange={meter.choose} />}
        {next?.loaded && lamp.unknown && <LampChoice onChange={lamp.choose} />}
        <NextReadingCard open={open} lamp={lamp.amperes} key={open.job?.id} />
        {!begun && <p class="caution">{words("caution_probe")}</p>}
        {!figureFirst && which}
        {key === "crank" && !table.readings.some((one) => one.key === "crank") && <p class="caution">{words("caution_crank")}</p>}
        {key === "isolated" && <p class="caution">{words("caution_isolated")}</p>}
        {inSight && !figureFirst && how}
        {keypad}
        {!figureFirst && !inSight && how}
        <p class="said" role="status" aria-live="polite">
          {said}
        </p>
        {figureFirst && which}
        {figureFirst && how}
        {leads && leads.own.length > 0 && begun && <LeadWires wires={leads.own} from={null} />}
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
