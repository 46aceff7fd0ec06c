// A wire: where it stands, what it feeds, what it is meant for, and why the engine says what it says of it.
import { useState } from "preact/hooks";
import { LEADS, type Lead, type ProbeTable } from "../core/probe-table.ts";
import { useKeeping, useShared } from "../page/context.ts";
import type { Judgement } from "../page/judgement.ts";
import { circuitEntry, claimEntry, slotOf, wireEntry, withdrawn } from "../page/probe-entries.ts";
import type { NewEntry, OpenJob } from "../page/use-job.ts";
import { named, type Words } from "../words/words.ts";
import { Choice } from "./choice.tsx";
import { Dialog } from "./dialog.tsx";
import { VerdictMark } from "./verdict.tsx";

// two-letter codes of IEC 60757, from memory, unverified
const COLOURS = ["BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK"];

interface NewProps {
  readonly names: readonly string[];
  readonly write: OpenJob["write"];
  readonly onDone: (name: string | null) => void;
}

export function NewWire({ names, write, onDone }: NewProps) {
  const { words } = useShared();
  const keeping = useKeeping();
  const [connector, setConnector] = useState("");
  const [cavity, setCavity] = useState("");
  const [colour, setColour] = useState("");
  const [own, setOwn] = useState<string | null>(null); // a name that was typed; else it is made of the place
  const name = (own ?? [[connector.trim(), cavity.trim()].filter(Boolean).join("/"), colour].filter(Boolean).join(" ")).trim();
  const known = names.includes(name);
  const add = async (): Promise<void> => {
    if (await keeping(() => write([wireEntry({ wire: name, connector: connector.trim(), cavity: cavity.trim(), colour })]))) onDone(name);
  };
  return (
    <Dialog title={words("wire_new")} onClose={() => onDone(null)}>
      <form
        class="lines"
        onSubmit={(event) => {
          event.preventDefault();
          void add();
        }}
      >
        <div class="pair">
          <Line label={words("wire_connector")} value={connector} onInput={setConnector} />
          <Line label={words("wire_cavity")} value={cavity} onInput={setCavity} />
        </div>
        <Choice legend={words("wire_colour")} options={COLOURS.map((value) => ({ value, label: value }))} value={colour} onChange={setColour} kind="strip" />
        <Line label={words("wire_name")} value={name} onInput={setOwn} />
        {known && <p class="notice">{words("wire_known")}</p>}
        <button type="submit" class="main wide" disabled={name === "" || known}>
          {words("wire_add")}
        </button>
      </form>
    </Dialog>
  );
}

function Line({ label, value, onInput }: { label: string; value: string; onInput: (text: string) => void }) {
  return (
    <label>
      {label}
      <input value={value} autoComplete="off" autoCapitalize="characters" spellcheck={false} onInput={(event) => onInput(event.currentTarget.value)} />
    </label>
  );
}

interface SheetProps {
  readonly wire: string;
  readonly table: ProbeTable;
  readonly judged: Judgement | null;
  readonly write: OpenJob["write"];
  readonly onClose: () => void;
}

export function WireSheet({ wire, table, judged, write, onClose }: SheetProps) {
  const facts = table.wires.find((one) => one.name === wire);
  const place = [facts?.connector, facts?.cavity, facts?.colour].filter(Boolean).join(" · ");
  return (
    <Dialog title={wire} onClose={onClose}>
      {place && <p>{place}</p>}
      <Role wire={wire} judged={judged} />
      <Feeds wire={wire} circuits={facts?.circuits ?? []} write={write} />
      <MeantFor wire={wire} table={table} write={write} />
    </Dialog>
  );
}

function Role({ wire, judged }: { wire: string; judged: Judgement | null }) {
  const { words } = useShared();
  const found = judged?.wires.find((one) => one.wire === wire);
  if (!found) return null;
  return (
    <section>
      <p class="role">
        <b>{named(words, "role", found.role)}</b> <VerdictMark verdict={found.verdict} />
      </p>
      {found.tap !== "no" && <p>{named(words, "taps", found.tap)}</p>}
      <h3>{words("why_role")}</h3>
      <ul>
        {found.reasons.map((reason) => (
          <li key={reason}>{reason}</li>
        ))}
      </ul>
    </section>
  );
}

function Feeds({ wire, circuits, write }: { wire: string; circuits: readonly string[]; write: OpenJob["write"] }) {
  const { words } = useShared();
  const keeping = useKeeping();
  const [circuit, setCircuit] = useState("");
  return (
    <form
      class="lines"
      onSubmit={(event) => {
        event.preventDefault();
        void keeping(() => write([circuitEntry(wire, circuit.trim())])).then((well) => well && setCircuit(""));
      }}
    >
      {circuits.map((known) => (
        <p key={known} class="known">
          {known}
        </p>
      ))}
      <label>
        {words("wire_feeds")}
        <input value={circuit} autoComplete="off" onInput={(event) => setCircuit(event.currentTarget.value)} />
      </label>
      <p class="small">{words("wire_feeds_say")}</p>
      <button type="submit" class="wide" disabled={circuit.trim() === ""}>
        {words("save")}
      </button>
    </form>
  );
}

function MeantFor({ wire, table, write }: { wire: string; table: ProbeTable; write: OpenJob["write"] }) {
  const { words } = useShared();
  const keeping = useKeeping();
  const meant = LEADS.find((lead) => table.claims.get(slotOf(lead))?.values.includes(wire)) ?? null;
  const choose = (chosen: Lead | "none"): void => {
    const entries = meantEntries(wire, chosen, table);
    if (entries.length > 0) void keeping(() => write(entries));
  };
  return <Choice legend={words("wire_meant")} options={meantOptions(words)} value={meant} onChange={choose} kind="strip" />;
}

function meantOptions(words: Words): { value: Lead | "none"; label: string }[] {
  return [...LEADS.map((lead) => ({ value: lead, label: words(`wire_meant_${lead}`) })), { value: "none", label: words("wire_meant_none") }];
}

/** The entries by which `wire` is meant for one lead and for no other. */
function meantEntries(wire: string, chosen: Lead | "none", table: ProbeTable): NewEntry[] {
  const given = LEADS.flatMap((lead) => {
    const claim = table.claims.get(slotOf(lead));
    return lead !== chosen && claim?.values.includes(wire) ? [withdrawn(claim.ids)] : [];
  });
  return chosen === "none" ? given : [...given, claimEntry(slotOf(chosen), wire, table.claims.get(slotOf(chosen)))];
}
